import { type Abouts, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

export interface ChargeCase {
  /** Mean current of each amplifier and other added load, A. */
  readonly meansA: readonly number[];
  /** What the vehicle itself draws with the engine running, A. */
  readonly vehicleA: number;
  /** What each alternator brings, hot, at this speed, A. */
  readonly outputsA: readonly number[];
}

export interface ChargeBalance {
  readonly demandA: number;
  readonly outputA: number;
  /** What the battery must add: above 0 it empties. At most one of deficit and spare is above 0. */
  readonly deficitA: number;
  /** What is left to charge the battery. */
  readonly spareA: number;
}

type Given = Abouts<keyof ChargeCase>;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function compute({ meansA, vehicleA, outputsA }: ChargeCase, rec: Recorder, about: Given = {}): ChargeBalance {
  // with a 0 in front a list is never empty
  const means = rec.list('Imeans', 'A', [0, ...meansA], about.meansA);
  const vehicle = rec.input('Ivehicle', 'A', vehicleA, about.vehicleA);
  const outputs = rec.list('Ihots', 'A', [0, ...outputsA], about.outputsA);
  const demandA = rec.step('Idemand', 'A', 'sum(Imeans) + Ivehicle', sum(means) + vehicle);
  const outputA = rec.step('Ioutput', 'A', 'sum(Ihots)', sum(outputs));
  const deficitA = rec.step('Ideficit', 'A', 'max(0, Idemand - Ioutput)', Math.max(0, demandA - outputA), {
    source: 'chargeBalance',
  });
  const spareA = rec.step('Ispare', 'A', 'max(0, Ioutput - Idemand)', Math.max(0, outputA - demandA), {
    source: 'chargeBalance',
  });
  return { demandA, outputA, deficitA, spareA };
}

/**
 * Balance of mean currents with the engine running, A: what the loads and the vehicle itself draw, against what the
 * alternators bring hot. Source: derived; the vehicle's own 35 A is common practice (from memory), to be told if known.
 * Means of 35 A, vehicle 35 A, 72 A at cruise: spare 2 A; 32.4 A at idle: deficit 37.6 A.
 */
export function chargingBalance(of: ChargeCase): ChargeBalance {
  return compute(of, NO_WHY);
}

/** Why of `chargingBalance`; the result is 'Ideficit'. */
export function chargingWhy(of: ChargeCase, about: Given = {}): Why {
  const builder = whyBuilder();
  compute(of, builder, about);
  return builder.done('Ideficit');
}
