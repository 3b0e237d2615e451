import './summary.css';
import { useEffect, useState } from 'react';
import { answerOf } from '../../desk/answer.ts';
import { answeredPlan } from '../../desk/desk.ts';
import { headlineOf, notCheckedOf, notToldOf, words } from '../../words/answer.ts';
import { SeverityMark } from '../severity/SeverityMark.tsx';
import { useDesk } from '../useDesk.ts';
import { Glance, useGlance } from './glance.tsx';

/** The mark that goes with each kind of verdict. */
export const VERDICT_SEVERITY = { stop: 'stop', fix: 'fix', provisional: 'note', nothing: null, empty: null } as const;

/** The verdict, and always under it what was not told and what was not checked. */
export function Headline() {
  const kind = useGlance(({ headline }) => headline.kind);
  const notTold = useGlance(notToldOf);
  const notChecked = useGlance(notCheckedOf);
  const brief = useGlance(({ notTold, rulesNotChecked }) =>
    words.headline.brief(notTold.length, rulesNotChecked.length),
  );
  const severity = VERDICT_SEVERITY[kind];
  const isProposed = useDesk((state) => state.proposal.length > 0);
  return (
    <header className={`headline headline-${kind}`}>
      <h2 data-figure="headline">
        {severity === null ? null : <SeverityMark severity={severity} wordless />}
        <Glance say={headlineOf} />
      </h2>
      {isProposed ? <p className="as-proposed">{words.asProposed}</p> : null}
      {kind === 'empty' ? <p>{words.headline.headlineEmptyHint}</p> : <p className="headline-brief">{brief}</p>}
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
      <Announcer />
    </header>
  );
}

/** Says the verdict when it has changed and the hand is still: a drag does not chatter. */
function Announcer() {
  const text = useDesk((state) => {
    const plan = answeredPlan(state);
    return state.draft === null ? headlineOf(answerOf(plan), plan) : null;
  });
  const [said, setSaid] = useState('');
  useEffect(() => {
    if (text !== null) setSaid(text);
  }, [text]);
  return (
    <span className="sr-only" role="status" aria-live="polite">
      {said}
    </span>
  );
}
