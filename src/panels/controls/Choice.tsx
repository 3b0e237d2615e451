import { useId } from 'react';
import type { TermId } from '../../words/en/glossary.ts';
import { Labelled } from '../help/Labelled.tsx';

interface ChoiceProps<T extends string> {
  label: string;
  value: T;
  options: readonly { value: T; text: string }[];
  onTake: (value: T) => void;
  mark?: string;
  hint?: string;
  /** A trade word in the label that can be asked about. */
  term?: TermId | undefined;
}

/** One of several, from a list. */
export function Choice<T extends string>({ label, value, options, onTake, mark, hint, term }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className="field">
      <Labelled term={term} word={label}>
        <label htmlFor={id}>
          {label}
          {mark === undefined ? null : <span className="mark"> {mark}</span>}
        </label>
      </Labelled>
      <select
        id={id}
        value={value}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => {
          const chosen = options.find((option) => option.value === event.target.value);
          if (chosen !== undefined) onTake(chosen.value);
        }}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.text}
          </option>
        ))}
      </select>
      {hint === undefined ? null : (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}
