import './term.css';
import { lazy, Suspense } from 'react';
import { words } from '../../words/answer.ts';
import type { TermId } from '../../words/en/glossary.ts';
import type { TermHelp } from './useTerm.ts';

// the explanations are many, and most are never asked for
const TermText = lazy(() => import('./TermText.tsx'));

interface TermProps {
  id: TermId;
  help: TermHelp;
  /** As it stands there. */
  word: string;
  /** A question mark behind a label that is something else already. */
  isSign?: boolean;
  /** The name of a table or of a column, which it keeps when it is read out. */
  isName?: boolean;
}

/** A trade word that can be asked what it means. */
export function Term({ id, help, word, isSign = false, isName = false }: TermProps) {
  const isOpen = help.open === id;
  return (
    <button
      type="button"
      className={isSign ? 'term term-sign' : 'term'}
      aria-label={isName ? undefined : words.summary.helpOn(word)}
      aria-expanded={isOpen}
      aria-controls={isOpen ? help.noteId : undefined}
      data-term={id}
      onClick={() => help.toggle(id)}
      onKeyDown={help.onKeyDown}
    >
      <span aria-hidden={!isName}>{isSign ? '?' : word}</span>
    </button>
  );
}

/** The explanation asked for, unfolded in place. */
export function TermNote({ help }: { help: TermHelp }) {
  if (help.open === null) return null;
  return (
    <div className="term-note" id={help.noteId} role="note">
      <Suspense fallback={null}>
        <TermText id={help.open} />
      </Suspense>
    </div>
  );
}
