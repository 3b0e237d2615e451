import type { Assessment } from '../../assess/answer.ts';
import type { Plan } from '../../plan/schema.ts';
import { bareSentenceOf, words } from '../../words/answer.ts';
import { words as full } from '../../words/full.ts';
import { SeverityMark } from '../severity/SeverityMark.tsx';

/** What is found in one answer and not in another; notes as a count, as everywhere. */
export function FindingChanges({ from, to, plan }: { from: Assessment; to: Assessment; plan: Plan }) {
  const before = new Map(from.findings.map(({ id, severity }) => [id, severity]));
  // the same matter, graver or milder, is a change too
  const fresh = to.findings.filter(({ id, severity }) => before.get(id) !== severity);
  const urgent = fresh.filter(({ severity }) => severity !== 'note');
  const notes = fresh.length - urgent.length;
  if (fresh.length === 0) return <span className="same">{full.alternatives.nothing}</span>;
  return (
    <ul className="alternatives-findings">
      {urgent.map((finding) => (
        <li key={finding.id} data-severity={finding.severity}>
          <SeverityMark severity={finding.severity} />
          <span>{bareSentenceOf(finding, plan)}</span>
        </li>
      ))}
      {notes === 0 ? null : <li>{words.headline.notesCount(notes)}</li>}
    </ul>
  );
}
