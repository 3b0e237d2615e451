import './dialog.css';
import './choices.css';
import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { choice } from '../../look/choices.ts';
import { words } from '../../words/index.ts';

interface DialogProps {
  title: string;
  onClose: () => void;
  children: ReactNode;
  /** Stands beside the answer, so that its figures stay in view. */
  beside?: boolean;
  /** A sheet at the edge with no veil, so that what it changes is seen as it changes: over one column, or from below. */
  over?: 'tools' | 'answer';
}

/**
 * The platform's own dialog: it keeps the focus inside, closes on Escape and gives the focus back to what opened it.
 * Nothing behind it moves.
 */
export function Dialog({ title, onClose, children, beside = false, over }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  // chosen once: a sheet in which the hand is changed does not jump from under the finger
  const [side] = useState(() => choice('side'));
  const titleId = useId();
  const classes = ['dialog', beside && 'dialog-beside', over && `dialog-sheet dialog-over-${over} dialog-${side}`];
  useEffect(() => {
    const dialog = ref.current;
    const opener = document.activeElement;
    if (dialog !== null && !dialog.open) dialog.showModal();
    return () => {
      dialog?.close();
      if (opener instanceof HTMLElement && opener.isConnected) opener.focus({ preventScroll: true });
    };
  }, []);
  return (
    <dialog
      ref={ref}
      className={classes.filter(Boolean).join(' ')}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        // a press on the backdrop has the dialog itself as its target
        if (event.target === ref.current) onClose();
      }}
      onKeyDown={(event) => event.stopPropagation()}
    >
      <div className="dialog-body">
        <header className="dialog-head">
          <h2 id={titleId}>{title}</h2>
          <button type="button" onClick={onClose}>
            {words.topbar.close}
          </button>
        </header>
        {children}
      </div>
    </dialog>
  );
}
