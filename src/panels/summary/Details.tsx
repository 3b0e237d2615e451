import { useAnswer, usePlan } from '../useDesk.ts';
import { AmplifierTable } from './AmplifierTable.tsx';
import { Assumptions } from './Assumptions.tsx';
import { FuseTable } from './FuseTable.tsx';
import { RunTable } from './RunTable.tsx';
import './details.css';

/** Amplifier by amplifier, fuse by fuse, run by run, and what was assumed: below the figures and findings. */
export default function Details() {
  const plan = usePlan();
  const answer = useAnswer();
  return (
    <>
      <AmplifierTable amplifiers={answer.amplifiers} plan={plan} />
      <FuseTable fuses={answer.fuses} plan={plan} />
      <RunTable runs={answer.runs} plan={plan} />
      <Assumptions answer={answer} plan={plan} />
    </>
  );
}
