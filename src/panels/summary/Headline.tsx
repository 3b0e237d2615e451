import './summary.css';
import { useEffect, useState } from 'react';
import { headlineOf, notCheckedOf, notToldOf, words } from '../../words/answer.ts';
import { SeverityMark } from '../severity/SeverityMark.tsx';
import { useAnswer, useDesk, usePlan } from '../useDesk.ts';

/** The mark that goes with each kind of verdict. */
export const VERDICT_SEVERITY = { stop: 'stop', fix: 'fix', provisional: 'note', nothing: null, empty: null } as const;

/** The verdict, and always under it what was not told and what was not checked. */
export function Headline() {
  const answer = useAnswer();
  const text = headlineOf(answer, usePlan());
  const severity = VERDICT_SEVERITY[answer.headline.kind];
  const notTold = notToldOf(answer);
  const notChecked = notCheckedOf(answer);
  const isProposed = useDesk((state) => state.proposal.length > 0);
  return (
    <header className={`headline headline-${answer.headline.kind}`}>
      <h2 data-figure="headline">
        {severity === null ? null : <SeverityMark severity={severity} wordless />}
        <span>{text}</span>
      </h2>
      {isProposed ? <p className="as-proposed">{words.asProposed}</p> : null}
      {answer.headline.kind === 'empty' ? <p>{words.headline.headlineEmptyHint}</p> : null}
      {answer.headline.kind === 'empty' ? null : (
        <p className="headline-brief">{words.headline.brief(answer.notTold.length, answer.rulesNotChecked.length)}</p>
      )}
      {notTold === '' ? null : (
        <p className="not-told">
          <b>{words.headline.notToldLabel}</b> {notTold}.
        </p>
      )}
      {notChecked === '' ? null : (
        <p className="not-checked">
          <b>{words.headline.notCheckedLabel}</b> {notChecked}.
        </p>
      )}
      <Announcer text={text} />
    </header>
  );
}

/** Says the verdict when it has changed and the hand is still: a drag does not chatter. */
function Announcer({ text }: { text: string }) {
  const isDragging = useDesk((state) => state.draft !== null);
  const [said, setSaid] = useState('');
  useEffect(() => {
    if (!isDragging) setSaid(text);
  }, [isDragging, text]);
  return (
    <span className="sr-only" role="status" aria-live="polite">
      {said}
    </span>
  );
}
