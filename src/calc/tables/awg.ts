/**
 * American wire gauge. Source: ASTM B258 (formula as reprinted), trust: published.
 * 36 AWG is 0.0050 in and 4/0 is 0.4600 in exactly; the 39 steps between are geometric.
 */
export const AWG_SIZES = [
  '20',
  '18',
  '16',
  '14',
  '12',
  '10',
  '8',
  '6',
  '4',
  '3',
  '2',
  '1',
  '1/0',
  '2/0',
  '3/0',
  '4/0',
] as const;

export type AwgSize = (typeof AWG_SIZES)[number];

/** mm2 in one circular mil: pi/4 x (0.0254 mm)^2. */
export const MM2_PER_CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;

/** The number n of the formula: 4 for '4', 0 for '1/0', -3 for '4/0'. */
function awgNumber(size: AwgSize): number {
  return size.endsWith('/0') ? 1 - Number(size.slice(0, -2)) : Number(size);
}

/** Diameter in mm of the solid conductor, d = 0.127 x 92^((36-n)/39). '4/0' gives 11.684 mm. */
export function awgDiameterMm(size: AwgSize): number {
  return 0.127 * 92 ** ((36 - awgNumber(size)) / 39);
}

/** Area in mm2 of the solid conductor, pi d^2 / 4. '12' gives 3.309 mm2. */
export function awgAreaMm2(size: AwgSize): number {
  return (Math.PI / 4) * awgDiameterMm(size) ** 2;
}
