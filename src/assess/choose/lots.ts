import { fixedGauge } from '../capacity.ts';
import type { Model } from '../model.ts';

/** Auto cables that get one size. */
export interface Lot {
  readonly cables: readonly number[];
  /** Loads whose current they carry; all of them where the current has a choice of way. */
  readonly loads: readonly number[];
}

/**
 * The auto cables that carry current, in lots of one size: cables joined through pass-throughs are one cable, and all
 * that carry the same amplifiers' current, feed and ground, get the same size. Least metal for a given drop is had at
 * equal area wherever the current is equal (minimum of sum L S with sum I rho L / S held), so little is lost by buying
 * one size, and nobody is told to join a thick stub to a thin feed.
 */
export function lotsOf({ circuit, ways, demands }: Model): Lot[] {
  const everyLoad = [...demands.keys()].filter((load) => demands[load] !== null);
  const groupLoads = circuit.groups.map((cables) => {
    const behind = cables.map((cable) => ways.behind[cable]);
    const loads = behind.includes(null) ? everyLoad : [...new Set(behind.flatMap((some) => some ?? []))];
    return { loads, shares: !behind.includes(null) };
  });
  const lots = new Map<string, { cables: number[]; loads: readonly number[] }>();
  for (const [group, cables] of circuit.groups.entries()) {
    const { loads = [], shares = false } = groupLoads[group] ?? {};
    const first = circuit.cables[cables[0] ?? -1];
    if (first === undefined || fixedGauge(first) !== null || loads.length === 0) continue;
    const key = shares ? `loads ${[...loads].sort((one, other) => one - other).join()}` : `group ${group}`;
    const lot = lots.get(key) ?? { cables: [], loads };
    lot.cables.push(...cables);
    lots.set(key, lot);
  }
  return [...lots.values()];
}
