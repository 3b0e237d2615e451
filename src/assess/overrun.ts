import { type GaugeId, gauge } from '../calc/conductor/gauge.ts';
import { largestRating } from '../calc/fuse/rating.ts';
import { cableAmpacityA } from './capacity.ts';
import { exceeds } from './conductor.ts';
import { carriesNothing, type Facts, sizeOf } from './facts.ts';
import { fuseOf, upstreamOf } from './fuseOf.ts';
import { lengthAlong } from './length.ts';
import { per } from './perModel.ts';
import { heldRatings } from './ratings.ts';

/** A cable into which the fuses let more than it carries. */
export interface Overrun {
  readonly cable: number;
  readonly limitA: number;
  readonly ampacityA: number;
  /** The fuse to blame; null when none can be named. */
  readonly link: number | null;
  /** Largest rating held that the cable allows there, A. */
  readonly largestA: number | null;
  /** A conductor of more area lies between it and each fuse that lets current in. */
  readonly isStepDown: boolean;
  /** Length of the whole cable, through pass-throughs, when it is the last piece before an amplifier's supply; else null. */
  readonly tail: { readonly lengthM: number; readonly plusMinusM: number } | null;
  /** Id of the derivation of its ampacity; null for a lead of no decided size. */
  readonly why: string | null;
}

/** A remote lead whose size nobody fixed is taken as the smallest that may run on its own. Source: 33 CFR 183.425 (d). */
export const REMOTE_LEAD = 'sae:16' as GaugeId;

function tailOf({ model: { circuit } }: Facts, cable: number): Overrun['tail'] {
  const group = circuit.groups[circuit.cables[cable]?.group ?? -1] ?? [];
  const pieces = group.flatMap((index) => circuit.cables[index] ?? []);
  const isLast = pieces.some(({ a, b }) => circuit.loads.some(({ plus }) => plus === a || plus === b));
  return isLast ? lengthAlong(pieces.map(({ length }) => length)) : null;
}

/** Every cable of a decided size whose fuses are too large for it. Nothing limits a current of Infinity: not theirs. */
export const conductorOverruns = per((facts: Facts): readonly Overrun[] => {
  const { model, limits, ratings } = facts;
  const areaMm2 = (cable: number): number => {
    const size = sizeOf(facts, cable);
    return size === null ? 0 : gauge(size).areaMm2;
  };
  return model.circuit.cables.flatMap((cable, index): Overrun[] => {
    const decided = sizeOf(facts, index);
    const isLead = cable.run.kind === 'remote' && model.ways.behind[index]?.length === 0;
    const size = decided ?? (isLead ? REMOTE_LEAD : null);
    const limitA = limits[index] ?? 0;
    if (size === null || limitA === Infinity) return [];
    const ampacityA = cableAmpacityA(model, cable, size);
    if (carriesNothing(facts, index) || !exceeds(limitA, ampacityA)) return [];
    const link = fuseOf(model, index, ratings);
    const ways = upstreamOf(model, index);
    const fitted = model.circuit.links[link ?? -1];
    return [
      {
        cable: index,
        limitA,
        ampacityA,
        link,
        largestA: fitted === undefined ? null : largestRating(heldRatings(model, link ?? -1), ampacityA),
        isStepDown:
          ways.length > 0 && ways.every((way) => way.some((other) => exceeds(areaMm2(other), gauge(size).areaMm2))),
        tail: tailOf(facts, index),
        why: decided === null ? null : `ampacity:${cable.run.id}`,
      },
    ];
  });
});
