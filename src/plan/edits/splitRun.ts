import { polylineLength } from '../../geom/polyline.ts';
import { runById } from '../byId.ts';
import { isIdUsed } from '../ids.ts';
import { shareOf, splitLength, splitTaped } from '../lengths.ts';
import { runPoints } from '../runs.ts';
import { type Fitting, MAX_ITEMS, type Plan, type Point, type Run } from '../schema.ts';
import { INLINE_KINDS, inlineTerminals } from '../terminals.ts';
import { acceptRun } from './accept.ts';
import { addFitting } from './addFitting.ts';
import { bendsOf, type Cut, cutNearest } from './cable.ts';

/**
 * Puts a fuse, a pass-through or another inline fitting into a run, at the run's nearest point to `at`. The part towards
 * the run's `from` keeps id and name and ends at the fuse's 'in', a reducer's 'wide'; the rest is a new run beside it.
 * Bends are divided; a taped length and the rise are shared by what is drawn; joints measured stay at the far ends;
 * everything else is copied. `removeFitting` gives the one run back.
 */
export function splitRun(plan: Plan, runId: string, at: Point, fitting: Fitting, newRunId: string): Plan {
  const run = runById(plan, runId);
  if (run === undefined || !INLINE_KINDS.has(fitting.kind) || plan.runs.length >= MAX_ITEMS) return plan;
  const cut = cutNearest(runPoints(plan, run), at);
  if (cut === null || newRunId === fitting.id || isIdUsed(plan, newRunId)) return plan;
  const placed = addFitting(plan, { ...fitting, at: cut.at, sheetId: run.sheetId });
  if (placed === plan) return plan;
  const parts = partsOf(run, cut, fitting, newRunId)
    .map((part) => acceptRun(part, placed.fittings))
    .filter((part) => part !== null);
  if (parts.length < 2) return plan;
  return { ...placed, runs: placed.runs.flatMap((other) => (other === run ? parts : [other])) };
}

function partsOf(run: Run, cut: Cut, fitting: Fitting, newRunId: string): [before: Run, after: Run] {
  const share = shareOf(polylineLength(cut.before), polylineLength(cut.after));
  const tapedM = run.tapedM === null ? [null, null] : splitTaped(run.tapedM, share);
  // where the cut lies is drawn, not measured
  const tapedAs = run.tapedM !== null && run.tapedAs === 'run' ? 'share' : run.tapedAs;
  const riseM = splitLength(run.riseM, share);
  const [into, outOf] = inlineTerminals(fitting.kind);
  return [
    {
      ...run,
      to: { fittingId: fitting.id, terminal: into },
      bends: bendsOf(cut.before),
      tapedM: tapedM[0] ?? null,
      tapedAs,
      riseM: riseM[0],
      toJointOhm: null,
    },
    {
      ...run,
      id: newRunId,
      from: { fittingId: fitting.id, terminal: outOf },
      bends: bendsOf(cut.after),
      tapedM: tapedM[1] ?? null,
      tapedAs,
      riseM: riseM[1],
      fromJointOhm: null,
    },
  ];
}
