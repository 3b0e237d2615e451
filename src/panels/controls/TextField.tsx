import { Field } from './Field.tsx';
import { useDraft } from './useDraft.ts';

interface TextFieldProps {
  label: string;
  value: string;
  maxLength: number;
  onTake: (value: string) => void;
  hint?: string;
}

/** A line of text; outer spaces are taken off. */
export function TextField({ label, value, maxLength, onTake, hint }: TextFieldProps) {
  const draft = useDraft<string>(value, (text) => ({ ok: true, value: text.trim().slice(0, maxLength) }), onTake);
  return <Field label={label} draft={draft} maxLength={maxLength} {...(hint === undefined ? {} : { hint })} />;
}
