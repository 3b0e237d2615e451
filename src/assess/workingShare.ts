/** How much of full output works where all of it cannot be carried. */
import { ANY_SIZE } from './conductor.ts';
import type { Demand } from './demand.ts';
import type { Facts } from './facts.ts';
import type { Model } from './model.ts';
import { operate } from './operate.ts';

/** Halvings of the share: to a part in a hundred thousand. */
const HALVINGS = 17;

function turnedDown(demand: Demand, share: number): Demand {
  if (demand.law === 'power') return { ...demand, watts: demand.watts * share };
  return { ...demand, amps: demand.amps * share };
}

const isAmplifier = ({ circuit }: Model, load: number): boolean => circuit.loads[load]?.fitting.kind === 'amplifier';

/** The model with every amplifier turned down to that share of its full output; other loads stay as they are. */
const atShare = (model: Model, share: number): Model => ({
  ...model,
  demands: model.demands.map((demand, load) =>
    demand !== null && isAmplifier(model, load) ? turnedDown(demand, share) : demand,
  ),
});

/**
 * The largest share of full output, common to all amplifiers, 0 to 1, at which in every state each has its cut-out
 * voltage at its terminals or more: found by halving, from below. 0 where other loads alone are too much.
 * 12.6 V, 0.16 ohm, 500 W drawn, cut-out at 10.5 V: (12.6 - 10.5) x 10.5 / 0.16 = 138 W, a share of 0.28. Source: RULES
 * of the assessment, section 1.
 */
export function workingShare({ model, choice }: Facts): number {
  const sizes = choice.sizes.map((size) => size ?? ANY_SIZE);
  const cutOutV = model.settings.cutOutV.value;
  const works = (share: number): boolean => {
    const worked = operate(atShare(model, share), sizes);
    if (!worked.ok) return false;
    return worked.states.every(({ loadVolts }) =>
      model.demands.every(
        (demand, load) => demand === null || !isAmplifier(model, load) || (loadVolts[load] ?? 0) >= cutOutV,
      ),
    );
  };
  let [share, step] = [0, 1];
  for (let count = 0; count < HALVINGS; count += 1) {
    step /= 2;
    if (works(share + step)) share += step;
  }
  return share;
}
