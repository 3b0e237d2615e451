import { distance } from '../../geom/point.ts';
import { fittingById } from '../../plan/byId.ts';
import { drawnUncertaintyM, isTaped, sheetOf } from '../../plan/drawnLength.ts';
import { placeOn } from '../../plan/runs.ts';
import type { Plan, Run } from '../../plan/schema.ts';
import type { Facts } from '../facts.ts';
import { finding, type Rule } from './rule.ts';

/** No cable of a feed goes that many times round a vehicle. Source: our choice. */
const MOST_TIMES_OUTLINE = 1.5;

/** A tape that many times shorter than the straight line is a slip. Source: our choice. */
const SLIP_TIMES = 5;

interface Doubt {
  readonly id: string;
  readonly tapedM: number;
  /** Between its ends in a straight line, or the most that is believed, m. */
  readonly againstM: number;
  readonly what: 'short' | 'long';
}

function doubtOf(plan: Plan, run: Run): Doubt[] {
  const { id, tapedM, sheetId } = run;
  const sheet = sheetOf(plan, sheetId);
  // what is laid out on a board need not be where it is drawn
  if (tapedM === null || !isTaped(run) || sheet === undefined || sheet.outline.kind === 'bench') return [];
  const [from, to] = [run.from, run.to].map(({ fittingId }) => {
    const fitting = fittingById(plan, fittingId);
    return fitting === undefined ? null : placeOn(fitting, sheetId);
  });
  if (from == null || to == null) return [];
  const straightM = distance(from, to) * sheet.scale.value;
  if (tapedM < straightM - drawnUncertaintyM(straightM)) return [{ id, tapedM, againstM: straightM, what: 'short' }];
  const roundM = 2 * (sheet.outline.lengthM + sheet.outline.widthM) * sheet.scale.value;
  const mostM = MOST_TIMES_OUTLINE * roundM;
  return tapedM > mostM ? [{ id, tapedM, againstM: mostM, what: 'long' }] : [];
}

const timesOff = ({ tapedM, againstM }: Doubt): number => Math.max(tapedM / againstM, againstM / tapedM);

/** Whether a length ahead of a first fuse goes by a slip: that may be all that keeps it within its limit. */
function slipsAhead({ model, unprotected }: Facts, doubts: readonly Doubt[]): boolean {
  const slips = new Set(
    doubts.filter((one) => one.what === 'short' && timesOff(one) >= SLIP_TIMES).map(({ id }) => id),
  );
  return unprotected.some(({ ways }) =>
    ways.some(({ cables }) => cables.some((cable) => slips.has(model.circuit.cables[cable]?.run.id ?? ''))),
  );
}

/**
 * A tape that the drawing speaks against: shorter than the straight line between the ends by more than a drawing may be
 * off, or longer than any way in that vehicle. The tape counts; a note asks to look at it again, one for all such runs.
 * By a slip ahead of a first fuse the verdict is provisional.
 */
export const tapeDoubtful: Rule = {
  id: 'tape-doubtful',
  sensitive: false,
  check: (facts) => {
    const { plan } = facts.model;
    const doubts = plan.runs.flatMap((run) => doubtOf(plan, run)).sort((one, other) => timesOff(other) - timesOff(one));
    const [worst, ...others] = doubts;
    if (worst === undefined) return [];
    const { tapedM, againstM, what } = worst;
    return [
      finding('tape-doubtful', {
        severity: 'note',
        places: [{ kind: 'run', id: worst.id }, ...others.map(({ id }) => ({ kind: 'run' as const, id }))],
        params: { what, tapedM, againstM, runs: doubts.length },
        source: 'feedrunRules',
        provisional: slipsAhead(facts, doubts),
      }),
    ];
  },
};
