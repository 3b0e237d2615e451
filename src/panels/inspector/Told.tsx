/** Fields of a fitting or run that may be assumed, or not told at all; each with its one line of help. */
import { commit } from '../../desk/edit.ts';
import { setInput } from '../../plan/edits/setInput.ts';
import { KNOWN_GAUGES } from '../../plan/gauges.ts';
import type { Input } from '../../plan/schema.ts';
import type { TermId } from '../../words/en/glossary.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { inputBounds } from '../inputs.ts';
import { LengthField } from '../keypad/LengthField.tsx';
import { useDesk, useDeskStore, useUnits } from '../useDesk.ts';

/** What a field is called, and its one line of help. */
interface FieldText {
  label: string;
  hint?: string;
  /** A trade word in it that can be asked about. */
  term?: TermId;
}

/** Shown in thousandths: milliohm. */
export const MILLI = 1000;
/** Digits kept when a shown figure is taken back: enough that 0.7 mohm is 0.0007 ohm and not a neighbour of it. */
const DIGITS = 12;

/** '(assumed)' behind a label. */
const markOf = (input: Pick<Input<unknown>, 'origin'> | null): string =>
  words.inspector.origin(input === null ? words.inspector.notTold : words.fittings.origins[input.origin]);

interface InputFieldProps {
  /** The fitting or run, and what it is: for its bounds. */
  ownerId: string;
  part: string;
  /** Within it: 'ratedA', 'cable.areaMm2'. */
  path: string;
  input: Input<number> | null;
  text: FieldText;
  /** Shown figure over kept figure. */
  factor?: number;
  /** Where it may be left empty: what then becomes of it. */
  onClear?: () => void;
}

/** A value that may be assumed: typing it makes it told. */
export function InputField({ ownerId, part, path, input, text, factor = 1, onClear }: InputFieldProps) {
  const desk = useDeskStore();
  const { min, max } = inputBounds(`${part}.${path}`);
  return (
    <NumberField
      {...text}
      value={input === null ? null : scaled(input.value, factor)}
      min={scaled(min, factor)}
      max={scaled(max, factor)}
      mayBeEmpty={onClear !== undefined}
      mark={markOf(input)}
      onTake={(shown) => {
        if (shown === null) onClear?.();
        else commit(desk, 'input', (plan) => setInput(plan, `${ownerId}.${path}`, scaled(shown, 1 / factor), 'told'));
      }}
    />
  );
}

const scaled = (value: number, factor: number): number => Number((value * factor).toPrecision(DIGITS));

/** The same for a length. */
export function LengthInput({ ownerId, part, path, input, text }: InputFieldProps & { input: Input<number> }) {
  const desk = useDeskStore();
  const { min, max } = inputBounds(`${part}.${path}`);
  return (
    <LengthField
      {...text}
      valueM={input.value}
      minM={min}
      maxM={max}
      mark={markOf(input)}
      onTake={(m) => m !== null && commit(desk, 'input', (plan) => setInput(plan, `${ownerId}.${path}`, m, 'told'))}
    />
  );
}

interface MaybeFieldProps {
  /** 'relay.ratedA': for its bounds. */
  path: string;
  value: number | null;
  text: FieldText;
  factor?: number;
  onTake: (value: number | null) => void;
}

/** A figure that is told or left out. */
export function MaybeField({ path, value, text, factor = 1, onTake }: MaybeFieldProps) {
  const { min, max } = inputBounds(path);
  return (
    <NumberField
      {...text}
      value={value === null ? null : scaled(value, factor)}
      min={scaled(min, factor)}
      max={scaled(max, factor)}
      mayBeEmpty
      {...(value === null ? { mark: markOf(null) } : {})}
      onTake={(shown) => onTake(shown === null ? null : scaled(shown, 1 / factor))}
    />
  );
}

const ANSWERS = { notTold: null, yes: true, no: false } as const;

/** Yes, no, or nobody has looked. */
export function MaybeChoice(props: {
  text: FieldText;
  value: boolean | null;
  onTake: (value: boolean | null) => void;
}) {
  const { text, value, onTake } = props;
  return (
    <Choice
      {...text}
      value={value === null ? 'notTold' : value ? 'yes' : 'no'}
      options={(['notTold', 'yes', 'no'] as const).map((one) => ({ value: one, text: words.fieldLabels[one] }))}
      onTake={(one) => onTake(ANSWERS[one])}
    />
  );
}

const NOT_TOLD = '';

/** A size of conductor that is told or left out. */
export function MaybeGauge(props: { text: FieldText; value: string | null; onTake: (gauge: string | null) => void }) {
  const { text, value, onTake } = props;
  const units = useUnits();
  const system = useDesk((state) => state.plan.settings.sizeSystem);
  const sizes = KNOWN_GAUGES.filter((id) => id.startsWith(`${system}:`) || id === value);
  return (
    <Choice
      {...text}
      value={value ?? NOT_TOLD}
      options={[
        { value: NOT_TOLD, text: words.fieldLabels.notTold },
        ...sizes.map((id) => ({ value: id, text: units.gauge(id) })),
      ]}
      onTake={(gauge) => onTake(gauge === NOT_TOLD ? null : gauge)}
    />
  );
}
