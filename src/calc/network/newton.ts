import { add, real, whole } from './arrays.ts';
import type { Branches, System } from './system.ts';

const MOST_STEPS = 60;
/** Steps shorter than this share of the highest voltage end the search; the next would be its square. */
const CLOSE = 1e-10;

/** Voltage across a branch, less its own electromotive force, V. */
export const branchVolts = ({ first, second, known }: Branches, index: number, x: Float64Array): number =>
  real(x, whole(first, index)) - real(x, whole(second, index)) + real(known, index);

const greatest = (values: Float64Array): number => {
  let most = 0;
  for (let index = 0; index < values.length; index += 1) most = Math.max(most, Math.abs(real(values, index)));
  return most;
};

/**
 * The equations at one share of the loads of constant power, and Newton's method on them. A point counts only where the
 * slopes are positive definite: there the voltages answer to the loads as a stable feed does. There is at most one such
 * point: the slopes, G - sum(P / V^2 a a^T), are concave in the voltages, so the region where they are positive definite
 * is convex, and in it the equations are the slope of one strictly convex function.
 */
export class Equations {
  private readonly surplus: Float64Array;
  private readonly steady: { readonly diagonal: Float64Array; readonly lower: Float64Array };
  private readonly watts: Float64Array;
  private readonly sense: Int8Array;

  constructor(readonly system: System) {
    const { matrix, linear, power } = system;
    this.surplus = new Float64Array(matrix.size + 1);
    this.steady = { diagonal: new Float64Array(matrix.diagonal.length), lower: new Float64Array(matrix.lower.length) };
    this.watts = new Float64Array(power.count);
    this.sense = new Int8Array(power.count);
    // what does not depend on the voltages
    const { diagonal, lower } = this.steady;
    for (let index = 0; index < linear.count; index += 1) {
      const siemens = real(linear.amount, index);
      add(diagonal, whole(linear.first, index), siemens);
      add(diagonal, whole(linear.second, index), siemens);
      add(lower, whole(linear.entry, index), -siemens);
    }
  }

  /** By power load, the way its voltage has to stand from now on: 1, -1, or 0 for one that does not draw. */
  feed(sense: Int8Array): void {
    this.sense.set(sense);
  }

  /** Scales the loads of constant power, which draw nothing until then. */
  setShare(share: number): void {
    const { power } = this.system;
    for (let index = 0; index < power.count; index += 1) this.watts[index] = real(power.amount, index) * share;
  }

  /** Fills in the currents into each unknown at x, and the slopes there. False where a load has the wrong or no voltage. */
  private linearise(x: Float64Array): boolean {
    const { matrix, linear, power, injected } = this.system;
    const { surplus, watts, sense } = this;
    const { diagonal, lower } = matrix;
    diagonal.set(this.steady.diagonal);
    lower.set(this.steady.lower);
    surplus.fill(0);
    for (let index = 0; index < linear.count; index += 1) {
      const amps = real(linear.amount, index) * branchVolts(linear, index, x);
      add(surplus, whole(linear.first, index), -amps);
      add(surplus, whole(linear.second, index), amps);
    }
    for (const { first, second, amps } of injected) {
      add(surplus, first, -amps);
      add(surplus, second, amps);
    }
    for (let index = 0; index < power.count; index += 1) {
      if (sense[index] === 0) continue;
      const volts = branchVolts(power, index, x);
      if (Math.sign(volts) !== sense[index]) return false;
      const amps = real(watts, index) / volts;
      const slope = amps / volts;
      const [first, second] = [whole(power.first, index), whole(power.second, index)];
      add(surplus, first, -amps);
      add(surplus, second, amps);
      add(diagonal, first, -slope);
      add(diagonal, second, -slope);
      add(lower, whole(power.entry, index), slope);
    }
    return true;
  }

  private stepFrom(x: Float64Array): boolean {
    return this.linearise(x) && this.system.matrix.factor();
  }

  /** Volts before any load is fed that draws power, refined once; null where the matrix cannot be factored. */
  withoutPower(): Float64Array | null {
    const { matrix } = this.system;
    const x = new Float64Array(matrix.size + 1);
    if (!this.stepFrom(x)) return null;
    for (let round = 0; round < 2; round += 1) {
      matrix.solve(this.surplus);
      for (let index = 0; index < x.length; index += 1) add(x, index, real(this.surplus, index));
      this.linearise(x);
    }
    return x;
  }

  /** Newton's method from `start`; null when a step leaves the region where a point can count, or it does not settle. */
  newton(start: Float64Array): Float64Array | null {
    const step = this.surplus;
    let x = start;
    for (let count = 0; count < MOST_STEPS && this.stepFrom(x); count += 1) {
      this.system.matrix.solve(step);
      const next = x.slice();
      for (let index = 0; index < next.length; index += 1) add(next, index, real(step, index));
      if (greatest(step) <= CLOSE * Math.max(1, greatest(next))) return next;
      x = next;
    }
    return null;
  }
}
