import type { FittingOf, Settings } from '../plan/schema.ts';

/** Supply voltage at which amplifiers are rated, V: 14.4, or twice that at 24 V. Source: CTA-2006 as explained publicly. */
const RATED_AT_V: Readonly<Record<Settings['systemV'], number>> = { 12: 14.4, 24: 28.8 };

/**
 * What an amplifier draws with everything at full sine: constant power (regulated), current in proportion to voltage
 * (unregulated, as rated at 14.4 V, or 28.8 V), or the sum of its own fuses when that is all one knows.
 */
export type Demand =
  | { readonly law: 'power'; readonly watts: number }
  | { readonly law: 'proportional'; readonly amps: number; readonly atVolts: number }
  | { readonly law: 'constant'; readonly amps: number };

export const sumOnboardA = ({ onboardFusesA }: FittingOf<'amplifier'>): number | null =>
  onboardFusesA === null || onboardFusesA.length === 0
    ? null
    : onboardFusesA.reduce((sum, ratingA) => sum + ratingA, 0);

/** What a load draws; null for an amplifier of which neither rated output nor fuses are told. 1000 W at 0.8: 1250 W. */
export function demandOf(load: FittingOf<'amplifier' | 'load'>, systemV: Settings['systemV']): Demand | null {
  return load.kind === 'load' ? { law: 'constant', amps: load.currentA.value } : amplifierDemand(load, systemV);
}

function amplifierDemand(amplifier: FittingOf<'amplifier'>, systemV: Settings['systemV']): Demand | null {
  const { ratedW, efficiency, regulated } = amplifier;
  if (ratedW !== null) {
    const watts = ratedW.value / efficiency.value;
    return regulated.value
      ? { law: 'power', watts }
      : { law: 'proportional', amps: watts / RATED_AT_V[systemV], atVolts: RATED_AT_V[systemV] };
  }
  const amps = sumOnboardA(amplifier);
  return amps === null ? null : { law: 'constant', amps };
}

/** Current drawn at that voltage, A. 1250 W at 12.2 V: 102.5 A. */
export function drawnA(demand: Demand, volts: number): number {
  switch (demand.law) {
    case 'power':
      return demand.watts / volts;
    case 'proportional':
      return (demand.amps * volts) / demand.atVolts;
    case 'constant':
      return demand.amps;
  }
}
