/** Drops that hold at the drawn lengths and would not at the top of their uncertainty. */
import { dropLimitV } from './choose/trial.ts';
import type { Cable } from './circuit.ts';
import { exceeds } from './conductor.ts';
import type { Facts } from './facts.ts';
import { perModel } from './perModel.ts';
import { worstDrop } from './worstDrop.ts';

/** Whether drawn lengths, at the top of their uncertainty, would break the limit that holds at their nominal length. */
export function dropHangsOnDrawn(facts: Facts, load: number): boolean {
  return drawnRunsThatDecide(facts, load).length > 0;
}

/** How many times longer than told a cable may be. */
const stretchOf = (cable: Cable | undefined): number =>
  cable === undefined || cable.length.lengthM === 0 ? 1 : 1 + cable.length.plusMinusM / cable.length.lengthM;

const mostStretch = perModel(({ circuit }) =>
  circuit.cables.reduce((most, cable) => Math.max(most, stretchOf(cable)), 1),
);

/** The drawn runs on the way of a load whose drop they decide; none where the limit holds, or breaks, all the same. */
export function drawnRunsThatDecide(facts: Facts, load: number): string[] {
  const worst = worstDrop(facts, load);
  if (worst === null) return [];
  const { cables } = facts.model.circuit;
  const limitV = dropLimitV(facts.model);
  const lostV = worst.feedV + worst.backV;
  if (exceeds(lostV, limitV) || !exceeds(lostV * mostStretch(facts.model), limitV)) return [];
  const way = [...worst.feed, ...worst.back];
  const topV = way.reduce((volts, index) => {
    const amps = Math.abs(worst.point.amps[index] ?? 0);
    const ohm = worst.point.cableOhm[index] ?? 0;
    return volts + amps * ohm * stretchOf(cables[index]);
  }, 0);
  if (!exceeds(topV, limitV)) return [];
  return way.flatMap((index) => {
    const cable = cables[index];
    return cable !== undefined && cable.length.plusMinusM > 0 ? [cable.run.id] : [];
  });
}
