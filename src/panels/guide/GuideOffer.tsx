import './offer.css';
import { useState } from 'react';
import { choose } from '../../look/choices.ts';
import { words } from '../../words/answer.ts';
import { useChoice } from '../useChoice.ts';
import { useDesk } from '../useDesk.ts';

/** On the very first visit, until it is answered: one quiet line that offers the guided first plan. */
export function GuideOffer() {
  const isOffered = useChoice('guide') === 'offered';
  // the guide walks through the tools, which the other faces do not show
  const isWork = useChoice('face') === 'work';
  const isExample = useDesk((state) => state.isExample);
  // it stays when the example is touched: nothing moves under a finger
  const [isFirstVisit] = useState(isExample);
  if (!isOffered || !isFirstVisit || !isWork) return null;
  const { guideOffer } = words;
  return (
    <section className="guide-offer" aria-label={guideOffer.label}>
      <p>{guideOffer.text}</p>
      <button type="button" onClick={() => choose('guide', 'open')}>
        {guideOffer.start}
      </button>
      <button type="button" onClick={() => choose('guide', 'left')}>
        {guideOffer.refuse}
      </button>
    </section>
  );
}
