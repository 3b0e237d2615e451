import { useId } from 'react';
import type { TermId } from '../../words/en/glossary.ts';
import { Labelled } from '../help/Labelled.tsx';

interface TickProps {
  label: string;
  checked: boolean;
  onTake: (checked: boolean) => void;
  hint?: string;
  disabled?: boolean;
  /** A trade word in the label that can be asked about. */
  term?: TermId;
}

/** Yes or no; the whole line is the target. */
export function Tick({ label, checked, onTake, hint, disabled = false, term }: TickProps) {
  const id = useId();
  return (
    <div className="tick">
      <Labelled term={term} word={label}>
        <label htmlFor={id}>
          <input
            id={id}
            type="checkbox"
            checked={checked}
            disabled={disabled}
            aria-describedby={hint === undefined ? undefined : `${id}-hint`}
            onChange={(event) => onTake(event.target.checked)}
          />
          <span>{label}</span>
        </label>
      </Labelled>
      {hint === undefined ? null : (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}
