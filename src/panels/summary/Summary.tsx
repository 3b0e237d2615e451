import { lazy, Suspense } from 'react';
import { words } from '../../words/answer.ts';
import { Answered } from '../Answered.tsx';
import { GuideOffer } from '../guide/GuideOffer.tsx';
import { useAnswer, usePlan } from '../useDesk.ts';
import { Figures } from './Figures.tsx';
import { Findings } from './Findings.tsx';

// below what the first look needs
const Details = lazy(() => import('./Details.tsx'));

const Found = () => <Findings findings={useAnswer().findings} plan={usePlan()} />;

/** Under the headline: figures, then what to stop for and fix, then run by run. Live while a finger drags. */
export const Summary = () => (
  <div className="summary">
    <Figures />
    <GuideOffer />
    <Answered pace="findings">
      <Found />
    </Answered>
    <Suspense fallback={null}>
      <Answered pace="fields">
        <Details />
      </Answered>
    </Suspense>
    <p className="caution">{words.cautions.plan}</p>
    <p className="caution">{words.cautions.beforeWork}</p>
  </div>
);
