import { lazy, Suspense } from 'react';
import { answerOf } from '../../desk/answer.ts';
import { words } from '../../words/answer.ts';
import { Answered, usePaced } from '../Answered.tsx';
import { GuideOffer } from '../guide/GuideOffer.tsx';
import { Figures } from './Figures.tsx';
import { Findings } from './Findings.tsx';

// below what the first look needs
const Details = lazy(() => import('./Details.tsx'));

function Found() {
  const plan = usePaced('findings');
  return <Findings findings={answerOf(plan).findings} plan={plan} />;
}

/** Under the headline: figures, then what to stop for and fix, then run by run. Live while a finger drags. */
export const Summary = () => (
  <div className="summary">
    <Figures />
    <GuideOffer />
    <Found />
    <Suspense fallback={null}>
      <Answered pace="fields">
        <Details />
      </Answered>
    </Suspense>
    <p className="caution">{words.cautions.plan}</p>
    <p className="caution">{words.cautions.beforeWork}</p>
  </div>
);
