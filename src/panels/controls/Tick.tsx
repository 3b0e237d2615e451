import { useId } from 'react';

interface TickProps {
  label: string;
  checked: boolean;
  onTake: (checked: boolean) => void;
  hint?: string;
  disabled?: boolean;
}

/** Yes or no; the whole line is the target. */
export function Tick({ label, checked, onTake, hint, disabled = false }: TickProps) {
  const id = useId();
  return (
    <div className="tick">
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
      {hint === undefined ? null : (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
    </div>
  );
}
