import { useEffect, useId, useRef } from 'react';
import { MAX_NAME } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';

interface RenameFormProps {
  name: string;
  /** The new name, or the old one where nothing was typed. */
  onKeep: (name: string) => void;
  /** Goes, with the focus back where it came from. */
  onLeave: () => void;
}

/** The name under the fingers at once: Enter, Done or leaving the field keeps it, Escape does not. */
export function RenameForm({ name, onKeep, onLeave }: RenameFormProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  // what goes away while it has the focus is left too, which keeps nothing then
  const isOver = useRef(false);
  useEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, []);
  const keep = () => {
    if (isOver.current) return;
    isOver.current = true;
    onKeep(field.current?.value.trim() ?? '');
  };
  return (
    <form
      className="rename"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
        onLeave();
      }}
    >
      <div className="field">
        <label htmlFor={id}>{words.openDialog.newName}</label>
        <input
          ref={field}
          id={id}
          type="text"
          autoComplete="off"
          spellCheck={false}
          maxLength={MAX_NAME}
          defaultValue={name}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            // the dialog stays
            event.preventDefault();
            isOver.current = true;
            onLeave();
          }}
        />
      </div>
      <button type="submit" className="strong" onPointerDown={(event) => event.preventDefault()}>
        {words.openDialog.nameDone}
      </button>
    </form>
  );
}
