import type { TermId } from '../../words/en/glossary.ts';
import { words } from '../../words/full.ts';

/** A trade word and what it means. */
export default function TermText({ id }: { id: TermId }) {
  const { word, means } = words.glossary[id];
  return (
    <p>
      <b>{word}</b>: {means}
    </p>
  );
}
