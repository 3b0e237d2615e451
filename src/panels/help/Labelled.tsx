import type { ReactNode } from 'react';
import type { TermId } from '../../words/en/glossary.ts';
import { Term, TermNote } from './Term.tsx';
import { useTerm } from './useTerm.ts';

/** A label as it is, or with help on its trade word behind it, unfolded below. */
export function Labelled(props: { term: TermId | undefined; word: string; children: ReactNode }) {
  const { term, word, children } = props;
  const help = useTerm();
  if (term === undefined) return children;
  return (
    <>
      <span className="term-label">
        {children}
        <Term id={term} help={help} word={word} isSign />
      </span>
      <TermNote help={help} />
    </>
  );
}
