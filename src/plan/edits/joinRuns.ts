import { runsAt } from '../byId.ts';
import { roundM } from '../round.ts';
import type { Fitting, Plan, Run } from '../schema.ts';
import { inlineTerminals } from '../terminals.ts';
import { acceptRun } from './accept.ts';
import { bendsOf, cableThrough } from './cable.ts';

/**
 * The one run that the two runs at a fitting make when the fitting goes; null when they cannot be one: of unlike kinds,
 * both ends of one at the fitting, or ending at the same terminal. Id, name, direction and properties are the first
 * run's; the conductor, one all the way, is that of the run which comes in ('in', 'wide'). Lengths are never lost: rises add, taped lengths add when both are taped, and the greater slack holds. Either
 * lock, a loom or a carpet of either holds; a sheath holds only when both have it; the greater bundle and the tighter
 * bend hold; joints measured at the far ends stay, those at the fitting go with it.
 */
export function joinRuns(plan: Plan, fitting: Fitting, first: Run, second: Run): Run | null {
  const cable = cableThrough(plan, fitting, first, second);
  if (cable === null || first.kind !== second.kind) return null;
  const bends = bendsOf(cable.points);
  const way =
    first.to.fittingId === fitting.id
      ? { from: cable.from, to: cable.to, bends }
      : { from: cable.to, to: cable.from, bends: bends.toReversed() };
  return acceptRun(
    {
      ...first,
      ...way,
      riseM: roundM(first.riseM + second.riseM),
      ...joinedTape(plan, fitting, first, second),
      slackPercent: Math.max(first.slackPercent, second.slackPercent),
      sheathed: first.sheathed && second.sheathed,
      inLoom: first.inLoom || second.inLoom,
      underCarpet: first.underCarpet || second.underCarpet,
      bundled: Math.max(first.bundled, second.bundled),
      bendRadiusMm: tightest(first.bendRadiusMm, second.bendRadiusMm),
      ...jointsOf(fitting, first, second),
      conductor: comesIn(fitting, second) && !comesIn(fitting, first) ? second.conductor : first.conductor,
      locked: first.locked || second.locked,
    },
    plan.fittings,
  );
}

/**
 * What is measured of the joined run: the whole again when its shares have come together, a share as long as another of
 * them lies at its ends.
 */
function joinedTape(plan: Plan, { id }: Fitting, first: Run, second: Run): Pick<Run, 'tapedM' | 'tapedAs'> {
  if (first.tapedM === null || second.tapedM === null) return { tapedM: null, tapedAs: 'run' };
  const tapedM = roundM(first.tapedM + second.tapedM);
  const both = [first.tapedAs, second.tapedAs];
  if (both.includes('outdated')) return { tapedM, tapedAs: 'outdated' };
  if (!both.includes('share')) return { tapedM, tapedAs: 'run' };
  const ends = [first, second].flatMap(({ from, to }) => [from, to]).filter(({ fittingId }) => fittingId !== id);
  const goesOn = ends.some(({ fittingId }) =>
    runsAt(plan, fittingId).some((run) => run !== first && run !== second && run.tapedAs === 'share'),
  );
  return { tapedM, tapedAs: goesOn || both.includes('run') ? 'share' : 'run' };
}

/** Whether a run ends where a cable that is split comes in to the fitting; both do at a pass-through. */
function comesIn({ id, kind }: Fitting, { from, to }: Run): boolean {
  const [into] = inlineTerminals(kind);
  return [from, to].some(({ fittingId, terminal }) => fittingId === id && terminal === into);
}

const tightest = (one: number | null, other: number | null): number | null =>
  one === null || other === null ? (one ?? other) : Math.min(one, other);

/** Joints measured at the far ends; the ends at the fitting are gone. In the first run's direction. */
function jointsOf({ id }: Fitting, first: Run, second: Run): Pick<Run, 'fromJointOhm' | 'toJointOhm'> {
  const farOhm = ({ to, fromJointOhm, toJointOhm }: Run): number | null =>
    to.fittingId === id ? fromJointOhm : toJointOhm;
  return first.to.fittingId === id
    ? { fromJointOhm: farOhm(first), toJointOhm: farOhm(second) }
    : { fromJointOhm: farOhm(second), toJointOhm: farOhm(first) };
}
