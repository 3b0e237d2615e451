import { whole } from './arrays.ts';
import { checkNetwork } from './check.ts';
import { mergeRigid } from './merge.ts';
import { branchVolts } from './newton.ts';
import { operatingPoint, Ramp } from './operating.ts';
import { type Branches, buildSystem, type System } from './system.ts';
import type { Network, NetworkLoad, NetworkRefused } from './types.ts';

/** What one load asks for when all are turned down together. */
export interface CarryLimit {
  /** Least voltage across the load at which it still works, V; 0 for one that works at any. */
  readonly cutOutV: number;
  /** False for a load that stays as it is while the others are turned down. */
  readonly scaled: boolean;
}

export interface Carried {
  readonly ok: true;
  /** Largest common share of the scaled loads, 0 to 1, below the true one by no more than a part in ten million. */
  readonly share: number;
  /** What stops it there: nothing at 1, the net that would carry no more, or the cut-out of a load. */
  readonly boundBy: 'nothing' | 'network' | { readonly load: number };
}

interface Watched {
  readonly load: number;
  readonly branches: Branches;
  readonly index: number;
  readonly cutOutV: number;
}

/** The loads in parts that a source reaches; a dead one has no voltage to watch. */
function watchedLoads({ linear, power }: System, firstLoad: number, limits: readonly CarryLimit[]): Watched[] {
  const watched: Watched[] = [];
  for (const branches of [linear, power]) {
    for (let index = 0; index < branches.count; index += 1) {
      const load = whole(branches.element, index) - firstLoad;
      const limit = limits[load];
      if (limit !== undefined) watched.push({ load, branches, index, cutOutV: limit.cutOutV });
    }
  }
  return watched;
}

/** The net with the scaled loads at nothing. */
function withoutScaled(network: Network, limits: readonly CarryLimit[]): Network {
  const loads = network.loads.map((load, index): NetworkLoad => {
    const { law } = load;
    if (limits[index]?.scaled !== true) return load;
    return { ...load, law: law.kind === 'power' ? { ...law, watts: 0 } : { ...law, amps: 0 } };
  });
  return { ...network, loads };
}

/**
 * The largest share, common to all scaled loads, that the net carries with every load at or above its cut-out voltage.
 * A share scales the watts of a load of constant power, and the amps of one in proportion to voltage. The loads are
 * raised together from nothing, and the answer is where that first fails. `limits` has one entry for each load; loads
 * that no source reaches are passed over (`solveNetwork` tells them). Refuses sources that contradict one another, and,
 * with a share of 0, loads outside the share that are too much by themselves.
 * 12 V, 0.01 ohm, 5000 W: the net carries 12^2 / 0.04 = 3600 W, a share of 0.72; with a cut-out at 10.5 V,
 * 10.5 x 1.5 / 0.01 = 1575 W, a share of 0.315.
 */
export function largestCarriedShare(network: Network, limits: readonly CarryLimit[]): Carried | NetworkRefused {
  checkNetwork(network);
  const sound = limits.every(({ cutOutV }) => Number.isFinite(cutOutV) && cutOutV >= 0);
  if (!sound || limits.length !== network.loads.length)
    throw new RangeError('carry: one limit for each load, 0 V or more');
  const merged = mergeRigid(network);
  if ('conflict' in merged) {
    const { element, index } = merged.conflict;
    return { ok: false, reason: 'sourcesConflict', element, index };
  }
  const system = buildSystem(network, merged);
  const firstLoad = network.resistors.length + network.sources.length;
  const scaled = (branches: Branches) => (index: number) =>
    limits[whole(branches.element, index) - firstLoad]?.scaled ?? false;
  const ramp = new Ramp(system, { linear: scaled(system.linear), power: scaled(system.power) });
  const watched = watchedLoads(system, firstLoad, limits);

  /** How far each load is above its cut-out; the least of them, and whose it is. */
  const least = (x: Float64Array): { margin: number; load: number } => {
    let found = { margin: Number.POSITIVE_INFINITY, load: -1 };
    for (const { load, branches, index, cutOutV } of watched) {
      const margin = branchVolts(branches, index, x) - cutOutV;
      if (margin < found.margin) found = { margin, load };
    }
    return found;
  };

  // one pattern, and so the same places
  const start = operatingPoint(buildSystem(withoutScaled(network, limits), merged));
  if (!start.ok) return { ok: false, reason: 'cannotCarry', largestShare: 0 };
  const first = least(start.x);
  if (first.margin < 0) return { ok: true, share: 0, boundBy: { load: first.load } };
  const { share, failed } = ramp.climb(start.x, (x) => least(x).margin >= 0);
  if (share === 1) return { ok: true, share, boundBy: 'nothing' };
  return { ok: true, share, boundBy: failed === null ? 'network' : { load: least(failed).load } };
}
