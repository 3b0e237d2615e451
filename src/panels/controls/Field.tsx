import { type InputHTMLAttributes, type ReactNode, useId } from 'react';
import type { TermId } from '../../words/en/glossary.ts';
import { Labelled } from '../help/Labelled.tsx';
import type { Draft } from './useDraft.ts';

interface FieldProps {
  label: string;
  draft: Draft;
  hint?: string;
  /** Where the value comes from, when it may be assumed. */
  mark?: string;
  inputMode?: InputHTMLAttributes<HTMLInputElement>['inputMode'];
  onFocus?: () => void;
  /** The focus has gone, to where. */
  onLeave?: (to: EventTarget | null) => void;
  /** What stands behind the input, in its row. */
  behind?: ReactNode;
  /** What stands under it, its hint and what is wrong with it. */
  below?: ReactNode;
  maxLength?: number;
  /** A trade word in the label that can be asked about. */
  term?: TermId;
}

/** One labelled text field. Enter or leaving it settles what was typed, Escape forgets it. */
export function Field({
  label,
  draft,
  hint,
  mark,
  inputMode = 'text',
  onFocus,
  onLeave,
  behind,
  below,
  maxLength,
  term,
}: FieldProps) {
  const id = useId();
  const about = [hint === undefined ? '' : `${id}-hint`, draft.error === null ? '' : `${id}-error`].filter(
    (part) => part !== '',
  );
  return (
    <div className="field">
      <Labelled term={term} word={label}>
        <label htmlFor={id}>
          {label}
          {mark === undefined ? null : <span className="mark"> {mark}</span>}
        </label>
      </Labelled>
      <span className="field-row">
        <input
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          inputMode={inputMode}
          maxLength={maxLength}
          value={draft.text}
          aria-invalid={draft.error !== null}
          aria-describedby={about.length === 0 ? undefined : about.join(' ')}
          onChange={(event) => draft.change(event.target.value)}
          onFocus={onFocus}
          onBlur={(event) => {
            draft.settle();
            onLeave?.(event.relatedTarget);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') {
              event.preventDefault();
              draft.settle();
            }
            if (event.key === 'Escape') {
              event.stopPropagation();
              draft.drop();
            }
          }}
        />
        {behind}
      </span>
      {hint === undefined ? null : (
        <span className="hint" id={`${id}-hint`}>
          {hint}
        </span>
      )}
      {draft.error === null ? null : (
        <span className="error" id={`${id}-error`} role="alert">
          {draft.error}
        </span>
      )}
      {below}
    </div>
  );
}
