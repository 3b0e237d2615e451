import { distance } from '../../geom/point.ts';
import { fittingById } from '../../plan/byId.ts';
import { drawnUncertaintyM, isTaped, sheetOf } from '../../plan/drawnLength.ts';
import { placeOn } from '../../plan/runs.ts';
import type { Plan, Run } from '../../plan/schema.ts';
import { finding, type Rule } from './rule.ts';

/** No cable of a feed goes that many times round a vehicle. Source: our choice. */
const MOST_TIMES_OUTLINE = 1.5;

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

/**
 * A tape that the drawing speaks against: shorter than the straight line between the ends by more than a drawing may be
 * off, or longer than any way in that vehicle. The tape counts; a note asks to look at it again, one for all such runs.
 */
export const tapeDoubtful: Rule = {
  id: 'tape-doubtful',
  sensitive: false,
  check: ({ model }) => {
    const doubts = model.plan.runs
      .flatMap((run) => doubtOf(model.plan, run))
      .sort((one, other) => timesOff(other) - timesOff(one));
    const [worst, ...others] = doubts;
    if (worst === undefined) return [];
    const { tapedM, againstM, what } = worst;
    return [
      finding('tape-doubtful', {
        severity: 'note',
        places: [{ kind: 'run', id: worst.id }, ...others.map(({ id }) => ({ kind: 'run' as const, id }))],
        params: { what, tapedM, againstM, runs: doubts.length },
        source: 'feedrunRules',
      }),
    ];
  },
};
