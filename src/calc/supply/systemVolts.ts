/** A nominal supply voltage of road vehicles, V. */
export type SystemV = 12 | 24;

interface SystemFigures {
  /** 12 V batteries, or blocks of cells of that voltage, in series. */
  readonly inSeries: 1 | 2;
  /** Full battery at rest. */
  readonly restV: number;
  readonly chargingV: number;
  /** An amplifier shuts down below it. */
  readonly cutOutV: number;
  /** What percentages of drop are of: the nominal voltage. */
  readonly percentOfV: number;
}

const FIGURES: Readonly<Record<SystemV, SystemFigures>> = {
  12: { inSeries: 1, restV: 12.6, chargingV: 14.4, cutOutV: 10.5, percentOfV: 12 },
  24: { inSeries: 2, restV: 25.2, chargingV: 28.8, cutOutV: 21, percentOfV: 24 },
};

/**
 * The voltages a system goes by, V. Rest 12.6 V is six lead-acid cells of 2.1 V (published); 14.4 V charging is our
 * choice within 13.8 to 14.4 V (from memory); the cut-out of 10.5 V is from memory. 24 V is two of 12 V in series: the double.
 * 24: rest 25.2, charging 28.8, cut-out 21, percent of 24; the 3 % limit is 0.72 V.
 */
export function systemFigures(systemV: SystemV): SystemFigures {
  return FIGURES[systemV];
}
