import { largestRating } from '../calc/fuse/rating.ts';
import type { LengthAnswer } from './answer.ts';
import { cableAmpacityA } from './capacity.ts';
import { exceeds } from './conductor.ts';
import { type Facts, sizeOf } from './facts.ts';
import { fuseOf, regionOf } from './fuseOf.ts';
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
  readonly length: LengthAnswer;
  /** A larger conductor lies ahead of it behind the same fuse. */
  readonly isStepDown: boolean;
}

/** Every cable of a decided size whose fuses are too large for it. Nothing limits a current of Infinity: not theirs. */
export function conductorOverruns(facts: Facts): Overrun[] {
  const { model, limits, ratings } = facts;
  return model.circuit.cables.flatMap((cable, index): Overrun[] => {
    const size = sizeOf(facts, index);
    const limitA = limits[index] ?? 0;
    if (size === null || limitA === Infinity) return [];
    const ampacityA = cableAmpacityA(model, cable, size);
    if (!exceeds(limitA, ampacityA)) return [];
    const link = fuseOf(model, index, ratings);
    const fitted = model.circuit.links[link ?? -1];
    const isLarger = (other: number): boolean => {
      const otherSize = sizeOf(facts, other);
      const otherCable = model.circuit.cables[other];
      if (other === index || otherSize === null || otherCable === undefined) return false;
      return exceeds(cableAmpacityA(model, otherCable, otherSize), ampacityA);
    };
    const isLive = model.sides.live[cable.a] === true;
    return [
      {
        cable: index,
        limitA,
        ampacityA,
        link,
        largestA: fitted === undefined ? null : largestRating(heldRatings(model, link ?? -1), ampacityA),
        length: cable.length,
        isStepDown: isLive && regionOf(model, index).cables.some(isLarger),
      },
    ];
  });
}
