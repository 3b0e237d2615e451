import type { TermId } from '../../words/en/glossary.ts';
import { words } from '../../words/full.ts';
import { parseNumber, unitIn, writeNumber } from '../../words/number.ts';
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
  /** What may stand behind the figure, and what it counts in; the label ends with it unless it is told here. */
  unit?: string | null;
}

/** A number within bounds, as its language writes it, with its unit behind it or without. */
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
  unit = unitIn(label),
}: NumberFieldProps) {
  const draft = useDraft<number | null>(
    value === null ? '' : writeNumber(value),
    (text) => {
      if (mayBeEmpty && text.trim() === '') return { ok: true, value: null };
      const read = parseNumber(text, min, max, { unit });
      if (read.ok) return read;
      const { numberProblem, inDoubt, kept, noneKept } = words.fields;
      const error =
        read.problem === 'inDoubt'
          ? inDoubt(label, text.trim(), writeNumber(read.readings[0]), writeNumber(read.readings[1]))
          : numberProblem(read.problem, label, writeNumber(min), writeNumber(max), unit ?? '');
      return { ok: false, error: `${error} ${value === null ? noneKept : kept}` };
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
