import { useCallback } from 'react';
import type { Assessment } from '../../assess/answer.ts';
import { answerOf } from '../../desk/answer.ts';
import { answeredPlan } from '../../desk/desk.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/answer.ts';
import { Term, TermNote } from '../help/Term.tsx';
import { useTerm } from '../help/useTerm.ts';
import { useDeskStore } from '../useDesk.ts';
import { useOpenWhy } from '../why/useWhy.ts';
import { Glance, useGlance } from './glance.tsx';
import { governsOf, LARGE_FIGURES, type LargeFigureId, valueSaid } from './largeFigures.ts';

const TERMS = {
  feed: 'conductor',
  mainFuse: 'mainFuse',
  worstDrop: 'drop',
  unprotected: 'unprotectedLength',
} as const;

/** Signs that have room beside one another in the large type: '12.34 m', and not '12 ft 11 1/8 in'. */
const SHORT = 9;

/** Its label says what the word means, its value why it is what it is. */
function LargeFigure({ id }: { id: LargeFigureId }) {
  const openWhy = useOpenWhy();
  const help = useTerm();
  const desk = useDeskStore();
  const hasWhy = useGlance(({ figures }) => figures[id].why !== null);
  const isHazard = useGlance(({ figures }) => id === 'unprotected' && Number(figures[id].value) > 0);
  const sayValue = useCallback((answer: Assessment, plan: Plan) => valueSaid(id, answer, plan), [id]);
  const sayGoverns = useCallback((answer: Assessment, plan: Plan) => governsOf(id, answer, plan), [id]);
  const label = words.summary[id];
  // which reason it is changes under a finger, and matters when it is asked for
  const ask = () => {
    const { why } = answerOf(answeredPlan(desk.getState())).figures[id];
    if (why !== null) openWhy(why, label);
  };
  return (
    <li className={isHazard ? 'figure-hazard' : undefined}>
      <div className="figure-label">
        <Term id={TERMS[id]} help={help} word={label} />
      </div>
      <TermNote help={help} />
      <button type="button" className="figure-large" disabled={!hasWhy} onClick={ask}>
        <span className="sr-only">{label}</span>
        <Glance className="figure-value" figure={id} say={sayValue} roomFor={SHORT} />
        <Glance className="figure-governs" say={sayGoverns} />
      </button>
    </li>
  );
}

/** The four large figures, each with what governs it. */
export const Figures = () => (
  <ul className="figures" aria-label={words.summary.figures}>
    {LARGE_FIGURES.map((id) => (
      <LargeFigure key={id} id={id} />
    ))}
  </ul>
);
