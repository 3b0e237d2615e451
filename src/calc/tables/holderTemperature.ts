/**
 * Share of its rating a fuse-link carries for long, against the temperature round its holder.
 * Source: data sheet of one type E 40 A link, second hand; trust: published, for that one link.
 * -40 to 20 degC: 1; between the points a straight line. [degC, factor]
 */
export const HOLDER_FACTOR_POINTS = [
  [20, 1.0],
  [65, 0.85],
  [85, 0.75],
  [110, 0.625],
  [125, 0.55],
] as const satisfies readonly (readonly [ambientC: number, factor: number])[];

/** Temperatures the points speak for, degC. */
export const HOLDER_RANGE_C = { min: -40, max: 125 } as const;
