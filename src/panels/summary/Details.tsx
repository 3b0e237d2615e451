import { useRef } from 'react';
import { useAnswer, useDesk, usePlan } from '../useDesk.ts';
import { AmplifierTable } from './AmplifierTable.tsx';
import { Assumptions } from './Assumptions.tsx';
import { FuseTable } from './FuseTable.tsx';
import { RunTable } from './RunTable.tsx';
import { ShortTable } from './ShortTable.tsx';
import { SupplyList } from './SupplyList.tsx';
import { useSeen } from './useSeen.ts';
import './details.css';

/** So many runs take longer than a frame to be looked through, even out of sight. */
const LONG = 100;

/** Amplifier by amplifier, fuse by fuse, run by run, and what was assumed: below the figures and findings. */
export default function Details() {
  const place = useRef<HTMLDivElement>(null);
  const isSeen = useSeen(place);
  const isDragging = useDesk((state) => state.draft !== null);
  const now = { plan: usePlan(), answer: useAnswer() };
  const shown = useRef(now);
  // long tables that nobody sees wait until the finger lifts: writing them takes longer than a frame
  if (isSeen || !isDragging) shown.current = now;
  const { plan, answer } = shown.current;
  return (
    <div className={answer.runs.length > LONG ? 'details details-long' : 'details'} ref={place}>
      <div className="detail">
        <AmplifierTable amplifiers={answer.amplifiers} plan={plan} />
      </div>
      <div className="detail">
        <FuseTable fuses={answer.fuses} plan={plan} />
      </div>
      <div className="detail">
        <RunTable runs={answer.runs} plan={plan} />
      </div>
      <div className="detail">
        <ShortTable shorts={answer.shorts} plan={plan} />
      </div>
      <div className="detail">
        <SupplyList supply={answer.supply} plan={plan} />
      </div>
      <div className="detail">
        <Assumptions answer={answer} plan={plan} />
      </div>
    </div>
  );
}
