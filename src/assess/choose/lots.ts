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
  const hasChoice = (cable: number): boolean => ways.behindOf(cable) === null;
  /** The loads of a group, and what groups with the same loads share; null where a group's current has a choice of way. */
  const loadsOf = (cables: readonly number[]): { loads: readonly number[]; key: string } | null => {
    if (cables.some(hasChoice)) return null;
    const carrying = cables.filter((cable) => ways.countOf(cable) > 0);
    const [first = -1] = carrying;
    const likeness = ways.likenessOf(first);
    if (carrying.every((cable) => ways.likenessOf(cable) === likeness))
      return { loads: ways.behindOf(first) ?? [], key: `alike ${likeness}` };
    // pieces that meet others in a pass-through
    const loads = [...new Set(carrying.flatMap((cable) => ways.behindOf(cable) ?? []))].sort(
      (one, other) => one - other,
    );
    const same = [...circuit.cables.keys()].find(
      (cable) => ways.countOf(cable) === loads.length && loads.every((load) => ways.carries(cable, load)),
    );
    return { loads, key: same === undefined ? `loads ${loads.join()}` : `alike ${ways.likenessOf(same)}` };
  };
  const lots = new Map<string, { cables: number[]; loads: readonly number[] }>();
  for (const [group, cables] of circuit.groups.entries()) {
    const first = circuit.cables[cables[0] ?? -1];
    if (first === undefined || fixedGauge(first) !== null) continue;
    const { loads, key: way } = loadsOf(cables) ?? { loads: everyLoad, key: `group ${group}` };
    if (loads.length === 0) continue;
    // what is not of one metal is not one size: a clad ground has to be thicker than its copper feed
    const key = `${way} ${first.conductor.material.value}`;
    const lot = lots.get(key) ?? { cables: [], loads };
    lot.cables.push(...cables);
    lots.set(key, lot);
  }
  return [...lots.values()];
}
