import { lazy, Suspense } from 'react';
import { words } from '../../words/answer.ts';
import { Answered } from '../Answered.tsx';
import { GuideOffer } from '../guide/GuideOffer.tsx';
import { useAnswer, usePlan } from '../useDesk.ts';
import { Figures } from './Figures.tsx';
import { Findings } from './Findings.tsx';

// below what the first look needs
const Details = lazy(() => import('./Details.tsx'));

function First() {
  const plan = usePlan();
  const answer = useAnswer();
  return (
    <>
      <Figures answer={answer} />
      <GuideOffer />
      <Findings findings={answer.findings} plan={plan} />
    </>
  );
}

/** Under the headline: figures, then what to stop for and fix, then run by run. Live while a finger drags. */
export const Summary = () => (
  <div className="summary">
    <Answered pace="figures">
      <First />
    </Answered>
    <Suspense fallback={null}>
      <Details />
    </Suspense>
    <p className="caution">{words.cautions.plan}</p>
    <p className="caution">{words.cautions.beforeWork}</p>
  </div>
);
