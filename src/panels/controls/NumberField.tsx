import type { TermId } from '../../words/en/glossary.ts';
import { words } from '../../words/full.ts';
import { parseNumber } from '../../words/length.ts';
import { Field } from './Field.tsx';
import { useDraft } from './useDraft.ts';

interface NumberFieldProps {
  label: string;
  /** null shows an empty field. */
  value: number | null;
  min: number;
  max: number;
  /** null only where `mayBeEmpty`. */
  onTake: (value: number | null) => void;
  mayBeEmpty?: boolean;
  hint?: string;
  mark?: string;
  term?: TermId;
}

const shownOf = (value: number | null): string => (value === null ? '' : String(Number(value.toPrecision(9))));

/** A plain number with either decimal sign, within bounds. */
export function NumberField({
  label,
  value,
  min,
  max,
  onTake,
  mayBeEmpty = false,
  hint,
  mark,
  term,
}: NumberFieldProps) {
  const draft = useDraft<number | null>(
    shownOf(value),
    (text) => {
      if (mayBeEmpty && text.trim() === '') return { ok: true, value: null };
      const read = parseNumber(text, min, max);
      if (read.ok) return read;
      const { numberProblem, kept } = words.fields;
      return { ok: false, error: `${numberProblem(read.problem, label, String(min), String(max))} ${kept}` };
    },
    onTake,
  );
  return (
    <Field
      label={label}
      draft={draft}
      inputMode="decimal"
      {...(hint === undefined ? {} : { hint })}
      {...(mark === undefined ? {} : { mark })}
      {...(term === undefined ? {} : { term })}
    />
  );
}
