import { memo, type ReactNode, useRef } from 'react';
import type { Finding } from '../../assess/answer.ts';
import type { Desk, Selection } from '../../desk/desk.ts';
import { select } from '../../desk/selection.ts';
import type { Plan } from '../../plan/schema.ts';
import { bareSentenceOf, qualifierOf, remedyOf, words } from '../../words/answer.ts';
import { useFirst } from '../controls/useFirst.tsx';
import { SeverityMark } from '../severity/SeverityMark.tsx';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { Figure } from '../why/Figure.tsx';

/** Marks the finding's places on the sketch and selects the first; pressed again it lets go. */
function look(desk: Desk, finding: Finding): void {
  if (desk.getState().findingId === finding.id) {
    desk.setState({ findingId: null });
    return;
  }
  const [place] = finding.places;
  const selection: Selection | null = place === undefined ? null : { kind: place.kind, id: place.id };
  desk.setState({ findingId: finding.id });
  select(desk, selection);
}

/** Whether the finding is about what is selected. */
const isAbout = (finding: Finding, selectedId: string | null): boolean =>
  selectedId !== null && finding.places.some(({ id }) => id === selectedId);

interface FindingItemProps {
  finding: Finding;
  sentence: string;
  qualifier: string;
  remedy: string;
  isLooked: boolean;
  /** It is about what is selected. */
  isHere: boolean;
}

const FindingItem = memo(function FindingItem(props: FindingItemProps) {
  const { finding, sentence, qualifier, remedy, isLooked, isHere } = props;
  const desk = useDeskStore();
  return (
    <li
      className={`finding finding-${finding.severity}${isHere ? ' finding-here' : ''}`}
      data-finding={finding.rule}
      data-severity={finding.severity}
    >
      <button type="button" className="finding-press" aria-pressed={isLooked} onClick={() => look(desk, finding)}>
        <SeverityMark severity={finding.severity} />
        <span className="finding-text">
          <span className="finding-sentence">{sentence}</span>
          {qualifier === '' ? null : <span className="finding-qualifier">{qualifier}</span>}
          <span className="finding-remedy">{remedy}</span>
        </span>
      </button>
      <div className="finding-foot">
        <span className="hint">
          {words.summary.source} {words.sourceLine(finding.source)}
        </span>
        {finding.why === null ? null : (
          <Figure why={finding.why} title={words.headline.rules[finding.rule]}>
            {words.summary.why}
          </Figure>
        )}
      </div>
    </li>
  );
});

interface Said {
  sentence: string;
  qualifier: string;
  remedy: string;
}

/** What findings say. A finger that drags renames nothing: what reads the same then is not worded anew. */
function useSaid(plan: Plan): (finding: Finding) => Said {
  const known = useRef(new WeakMap<Finding, Said>());
  const isDragging = useDesk((state) => state.draft !== null);
  return (finding) => {
    const before = isDragging ? known.current.get(finding) : undefined;
    if (before !== undefined) return before;
    const said = {
      sentence: bareSentenceOf(finding, plan),
      qualifier: qualifierOf(finding, plan),
      remedy: remedyOf(finding, plan),
    };
    known.current.set(finding, said);
    return said;
  };
}

interface FindingListProps {
  findings: readonly Finding[];
  itemOf: (finding: Finding) => ReactNode;
  /** The finding looked at. */
  lookedId: string | null;
}

/** The first of them are the gravest. */
function FindingList({ findings, itemOf, lookedId }: FindingListProps) {
  const { shown, more } = useFirst(findings, ({ id }) => id === lookedId);
  return (
    <>
      <ul>{shown.map(itemOf)}</ul>
      {more}
    </>
  );
}

/** Stops and fixes open, notes folded to a count. */
export const Findings = memo(function Findings({ findings, plan }: { findings: readonly Finding[]; plan: Plan }) {
  const lookedId = useDesk((state) => state.findingId);
  const selectedId = useDesk((state) => state.selection?.id ?? null);
  const say = useSaid(plan);
  const itemOf = (finding: Finding) => (
    <FindingItem
      key={finding.id}
      finding={finding}
      {...say(finding)}
      isLooked={finding.id === lookedId}
      isHere={isAbout(finding, selectedId)}
    />
  );
  const urgent = findings.filter(({ severity }) => severity !== 'note');
  const notes = findings.filter(({ severity }) => severity === 'note');
  if (findings.length === 0) return null;
  return (
    <section aria-label={words.summary.findings} className="findings">
      <FindingList findings={urgent} itemOf={itemOf} lookedId={lookedId} />
      {notes.length === 0 ? null : (
        <details className="fold">
          <summary>
            <SeverityMark severity="note" wordless />
            {words.headline.notesCount(notes.length)}
          </summary>
          <FindingList findings={notes} itemOf={itemOf} lookedId={lookedId} />
        </details>
      )}
    </section>
  );
});
