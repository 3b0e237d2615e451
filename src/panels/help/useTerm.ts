import { type KeyboardEvent, useId, useState } from 'react';
import type { TermId } from '../../words/en/glossary.ts';

/** Which of several trade words beside each other is explained now. */
export interface TermHelp {
  readonly open: TermId | null;
  readonly noteId: string;
  toggle(id: TermId): void;
  /** Escape closes, and nothing behind it hears of it. */
  onKeyDown(event: KeyboardEvent): void;
}

export function useTerm(): TermHelp {
  const noteId = useId();
  const [open, setOpen] = useState<TermId | null>(null);
  return {
    open,
    noteId,
    toggle: (id) => setOpen((before) => (before === id ? null : id)),
    onKeyDown: (event) => {
      if (event.key !== 'Escape' || open === null) return;
      event.stopPropagation();
      setOpen(null);
    },
  };
}
