import { fittingById } from '../byId.ts';
import { changeFitting } from '../edits/changeFitting.ts';
import type { FittingOf, Plan } from '../schema.ts';

/** What another amplifier in the place of one would be. */
export interface OtherAmplifier {
  readonly fittingId: string;
  readonly ratedW: number;
}

/** Tells of the amplifier that stands there now, which the other one would not share. */
const UNTOLD = { onboardFusesA: null, externalFuseMaxA: null, loadOhm: null } as const;

/** The plan with another amplifier in that place, as far as its output tells; null when it is no different. */
export function otherAmplifier(plan: Plan, { fittingId, ratedW }: OtherAmplifier): Plan | null {
  const now = fittingById(plan, fittingId);
  if (now?.kind !== 'amplifier' || now.ratedW?.value === ratedW) return null;
  const changed = changeFitting(plan, fittingId, { ...UNTOLD, ratedW: { value: ratedW, origin: 'told' } });
  return changed === plan ? null : changed;
}

/** What to ask about first: the largest amplifier, or the one named, half as strong again, to the next 50 W. 500 W: 750 W. */
export function likelyOther(plan: Plan, only?: string): OtherAmplifier | null {
  const rated = plan.fittings
    .filter((fitting): fitting is FittingOf<'amplifier'> => fitting.kind === 'amplifier')
    .filter(({ id }) => only === undefined || id === only)
    .map(({ id, ratedW }) => ({ fittingId: id, ratedW: ratedW?.value ?? 0 }))
    .sort((one, other) => other.ratedW - one.ratedW);
  const [largest] = rated;
  if (largest === undefined || largest.ratedW === 0) return null;
  return { ...largest, ratedW: Math.ceil((largest.ratedW * 1.5) / 50) * 50 };
}
