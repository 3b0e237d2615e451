import { add, real } from './arrays.ts';
import type { Branch, System } from './system.ts';

const MOST_STEPS = 60;
/** Steps shorter than this share of the highest voltage end the search; the next would be its square. */
const CLOSE = 1e-10;
/** Below this share of the highest voltage a load counts as having none. */
const NO_VOLTAGE = 1e-9;
/** Finest share of the loads told apart where they cannot all be carried. */
const FINEST_SHARE = 1e-6;

const difference = ({ first, second }: Branch, x: Float64Array): number =>
  (first < 0 ? 0 : real(x, first)) - (second < 0 ? 0 : real(x, second));

/** Voltage across a branch, less its own electromotive force, V. */
export const branchVolts = (branch: Branch, x: Float64Array): number => difference(branch, x) + branch.known;

function leave({ first, second }: Branch, amps: number, leaving: Float64Array): void {
  if (first >= 0) add(leaving, first, amps);
  if (second >= 0) add(leaving, second, -amps);
}

/** Currents leaving each unknown at x, negated: the right side of Newton's step. Stamps the slopes as it goes. */
function linearise({ matrix, linear }: System, fed: readonly Branch[], share: number, x: Float64Array): Float64Array {
  const right = new Float64Array(matrix.size);
  matrix.clear();
  for (const branch of linear) {
    matrix.stamp(branch.slot, branch.siemens);
    leave(branch, -branch.siemens * branchVolts(branch, x), right);
  }
  for (const branch of fed) {
    const volts = branchVolts(branch, x);
    const amps = (share * branch.watts) / volts;
    matrix.stamp(branch.slot, -amps / volts);
    leave(branch, -amps, right);
  }
  return right;
}

/**
 * Newton from `start` with the power loads scaled by `share`. Null when it leaves the region where the slopes are
 * positive definite: there the voltage no longer answers to the load as a stable feed does. A step too long ends there
 * too, and the caller raises the loads more gently; so steps need no shortening of their own.
 */
function newton(system: System, fed: readonly Branch[], share: number, start: Float64Array): Float64Array | null {
  const x = Float64Array.from(start);
  for (let count = 0; count < MOST_STEPS; count += 1) {
    const step = linearise(system, fed, share, x);
    if (!system.matrix.factor()) return null;
    system.matrix.solve(step);
    let longest = 0;
    let highest = 0;
    for (let unknown = 0; unknown < x.length; unknown += 1) {
      add(x, unknown, real(step, unknown));
      longest = Math.max(longest, Math.abs(real(step, unknown)));
      highest = Math.max(highest, Math.abs(real(x, unknown)));
    }
    if (longest <= CLOSE * Math.max(1, highest)) return x;
  }
  return null;
}

export type Operating =
  | { readonly ok: true; readonly x: Float64Array; readonly fed: readonly Branch[] }
  | { readonly ok: false; readonly largestShare: number };

/**
 * The operating point reached from no load. When one Newton run does not reach it, the loads are raised step by step
 * and the step halved on every failure, so that a refusal also tells the share of the loads the net just carries.
 */
export function operatingPoint(system: System): Operating {
  const idle = newton(system, [], 0, new Float64Array(system.matrix.size));
  if (idle === null) throw new RangeError('network: resistances too far apart to be told from one another');
  const highest = Math.max(
    1,
    ...[...system.linear, ...system.power].map((branch) => Math.abs(branchVolts(branch, idle))),
  );
  const fed = system.power.filter((branch) => Math.abs(branchVolts(branch, idle)) > NO_VOLTAGE * highest);
  if (fed.length === 0) return { ok: true, x: idle, fed };
  const direct = newton(system, fed, 1, idle);
  if (direct !== null) return { ok: true, x: direct, fed };
  let carried = 0;
  let x = idle;
  for (let step = 0.5; step > FINEST_SHARE; ) {
    const share = Math.min(1, carried + step);
    const next = newton(system, fed, share, x);
    if (next === null) step /= 2;
    else if (share === 1) return { ok: true, x: next, fed };
    else {
      carried = share;
      x = next;
    }
  }
  return { ok: false, largestShare: carried };
}
