import { branchVolts, Equations, type Scaled } from './newton.ts';
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

interface Climbed {
  readonly share: number;
  readonly x: Float64Array;
  readonly failed: Float64Array | null;
}

/** Loads that a share scales all together, from no load up. */
export class Ramp {
  readonly idle: Float64Array;
  readonly fed: Uint8Array;
  private readonly equations: Equations;

  constructor(system: System, scaled: Scaled) {
    const { linear, power } = system;
    this.equations = new Equations(system, scaled);
    this.equations.setShare(0);
    const idle = this.equations.withoutPower();
    if (idle === null) throw new RangeError('network: resistances too far apart to be told from one another');
    const least = NO_VOLTAGE * highestVolts([linear, power], idle);
    const senses = Int8Array.from({ length: power.count }, (_, index) => {
      const volts = branchVolts(power, index, idle);
      return Math.abs(volts) > least ? Math.sign(volts) : 0;
    });
    this.equations.feed(senses);
    this.idle = idle;
    this.fed = Uint8Array.from(senses, Math.abs);
  }

  /** Volts at one share, from a point known; null when Newton's method does not reach them. */
  private reach(share: number, from: Float64Array): Float64Array | null {
    this.equations.setShare(share);
    return this.equations.newton(from);
  }

  /**
   * The largest share, up to 1, that is reached and at which `holds` is true, from the point at share 0, where it is:
   * a step is halved on every failure, so that the answer is below the true one by no more than a part in ten million.
   * `failed` is the point just beyond it, null where there is none.
   */
  climb(start: Float64Array, holds: (x: Float64Array) => boolean): Climbed {
    let share = 0;
    let x = start;
    let failed: Float64Array | null = null;
    // steps are halves of halves of 1, so that no sum of them passes 1
    for (let step = 1; share < 1 && step > Math.max(LEAST_SHARE, FINEST_STEP * share); ) {
      const next = share + step;
      const reached = this.reach(next, x);
      if (reached === null || !holds(reached)) {
        failed = reached;
        step /= 2;
      } else {
        share = next;
        x = reached;
      }
    }
    return { share, x, failed };
  }
}

const ALWAYS = (): boolean => true;

/**
 * The operating point reached from no load. Newton's method by itself finds it wherever no load raises the voltage of
 * another (one source, or a tree: from above, its steps never pass the solution). Elsewhere the loads are raised step by
 * step, all together; a refusal tells the share of the loads that is just carried.
 */
export function operatingPoint(system: System): Operating {
  const ramp = new Ramp(system, { linear: () => false, power: () => true });
  const { idle, fed } = ramp;
  if (fed.every((each) => each === 0)) return { ok: true, x: idle, fed };
  const { share, x } = ramp.climb(idle, ALWAYS);
  return share === 1 ? { ok: true, x, fed } : { ok: false, largestShare: share };
}
