/** Drops that hold at the drawn lengths and would not at the top of their uncertainty. */
import { dropLimitV } from './choose/trial.ts';
import { exceeds } from './conductor.ts';
import type { Facts } from './facts.ts';
import { worstDrop } from './worstDrop.ts';

/** Whether drawn lengths, at the top of their uncertainty, would break the limit that holds at their nominal length. */
export function dropHangsOnDrawn(facts: Facts, load: number): boolean {
  return drawnRunsThatDecide(facts, load).length > 0;
}

/** The drawn runs on the way of a load whose drop they decide; none where the limit holds, or breaks, all the same. */
export function drawnRunsThatDecide(facts: Facts, load: number): string[] {
  const worst = worstDrop(facts, load);
  if (worst === null) return [];
  const { cables } = facts.model.circuit;
  const way = [...worst.feed, ...worst.back];
  const topV = way.reduce((volts, index) => {
    const length = cables[index]?.length;
    const amps = Math.abs(worst.point.amps[index] ?? 0);
    const ohm = worst.point.cableOhm[index] ?? 0;
    const stretch = length === undefined || length.lengthM === 0 ? 1 : 1 + length.plusMinusM / length.lengthM;
    return volts + amps * ohm * stretch;
  }, 0);
  const limitV = dropLimitV(facts.model);
  if (!exceeds(topV, limitV) || exceeds(worst.feedV + worst.backV, limitV)) return [];
  return way.flatMap((index) => {
    const cable = cables[index];
    return cable !== undefined && cable.length.plusMinusM > 0 ? [cable.run.id] : [];
  });
}
