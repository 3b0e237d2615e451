/**
 * Largest resistance of flexible copper conductors. Source: IEC 60228 class 5, plain copper, at 20 degC,
 * trust: published (reprint; two more reprints agree). [nominal mm2, ohm per km]
 */
export const IEC60228_CLASS5 = [
  [0.5, 39.0],
  [0.75, 26.0],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
  [25, 0.78],
  [35, 0.554],
  [50, 0.386],
  [70, 0.272],
  [95, 0.206],
  [120, 0.161],
] as const satisfies readonly (readonly [areaMm2: number, ohmPerKm: number])[];

/** Class 5 maximum in ohm per m at 20 degC. 25 mm2 gives 0.00078. Throws on an area that has no row. */
export function class5OhmPerM(areaMm2: number): number {
  const row = IEC60228_CLASS5.find(([area]) => area === areaMm2);
  if (row === undefined) throw new RangeError(`IEC 60228: no row of ${areaMm2} mm2`);
  return row[1] / 1000;
}
