import { MAX_BENDS, type Plan, type Point } from '../schema.ts';
import { bendsOf, cableThrough, cutNearest, freeInCable } from './cable.ts';
import { outdateTapes } from './outdateTapes.ts';
import { withPlace, withRun } from './replaced.ts';
import { shareTaped } from './shareTaped.ts';

/**
 * Slides an inline fitting along the cable of its two runs, to the point nearest to `place`: the cable keeps its way, and
 * bends that the fitting passes go from one run to the other. Taped runs share their total anew. Anything locked, or a
 * fitting without exactly two runs, stays as it is.
 */
export function slideFitting(plan: Plan, id: string, place: Point): Plan {
  const inCable = freeInCable(plan, id);
  if (inCable === null) return plan;
  const { fitting, first, second } = inCable;
  const cable = cableThrough(plan, fitting, first, second);
  const cut = cable === null ? null : cutNearest(cable.points, place);
  if (cut === null) return plan;

  const [bendsIn, bendsOut] = [bendsOf(cut.before), bendsOf(cut.after)];
  if (bendsIn.length > MAX_BENDS || bendsOut.length > MAX_BENDS) return plan;
  const firstBends = first.to.fittingId === id ? bendsIn : bendsIn.toReversed();
  const secondBends = second.from.fittingId === id ? bendsOut : bendsOut.toReversed();
  const moved = withPlace(plan, fitting, cut.at);
  if (moved === plan) return plan;
  const bent = withRun(moved, first, { ...first, bends: firstBends });
  return outdateTapes(plan, shareTaped(plan, withRun(bent, second, { ...second, bends: secondBends }), id));
}
