import { branchVolts, Equations } from './newton.ts';
import type { Branches, System } from './system.ts';

/** Below this share of the highest voltage a load counts as having none. */
const NO_VOLTAGE = 1e-9;
/** Finest part of the share already carried that is told apart, and the least share looked for. */
const FINEST_STEP = 5e-8;
const LEAST_SHARE = 1e-12;

/** Volts of a point reached, and by power load whether it draws. */
export interface Point {
  readonly x: Float64Array;
  readonly fed: Uint8Array;
}

export type Operating = ({ readonly ok: true } & Point) | { readonly ok: false; readonly largestShare: number };

const highestVolts = (branches: readonly Branches[], x: Float64Array): number => {
  let highest = 1;
  for (const each of branches) {
    for (let index = 0; index < each.count; index += 1)
      highest = Math.max(highest, Math.abs(branchVolts(each, index, x)));
  }
  return highest;
};

/**
 * The operating point reached from no load. Newton's method by itself finds it wherever no load raises the voltage of
 * another (one source, or a tree: from above, its steps never pass the solution). Elsewhere the loads of constant power
 * are raised step by step, all together, each step halved on every failure; a refusal tells the share that is just
 * carried, below the true one by no more than a part in ten million.
 */
export function operatingPoint(system: System): Operating {
  const { linear, power } = system;
  const equations = new Equations(system);
  const idle = equations.withoutPower();
  if (idle === null) throw new RangeError('network: resistances too far apart to be told from one another');
  const least = NO_VOLTAGE * highestVolts([linear, power], idle);
  const senses = Int8Array.from({ length: power.count }, (_, index) => {
    const volts = branchVolts(power, index, idle);
    return Math.abs(volts) > least ? Math.sign(volts) : 0;
  });
  equations.feed(senses);
  const fed = Uint8Array.from(senses, Math.abs);
  if (fed.every((each) => each === 0)) return { ok: true, x: idle, fed };
  let share = 0;
  let x = idle;
  // steps are halves of halves of 1, so that no sum of them passes 1
  for (let step = 1; share < 1 && step > Math.max(LEAST_SHARE, FINEST_STEP * share); ) {
    equations.setShare(share + step);
    const reached = equations.newton(x);
    if (reached === null) {
      step /= 2;
    } else {
      share += step;
      x = reached;
    }
  }
  return share === 1 ? { ok: true, x, fed } : { ok: false, largestShare: share };
}
