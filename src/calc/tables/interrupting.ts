/**
 * Breaking capacity asked of overcurrent devices on 12 and 24 V by the cold cranking amperes of all batteries joined.
 * Source: ABYC E-11 Table V-A, as reprinted; trust: published. [up to this CCA, main, branch], A d.c.
 */
const TABLE_V_A = [
  [650, 1500, 750],
  [1100, 3000, 1500],
] as const;
/** What the table asks for beyond its rows. */
const BEYOND = [Number.POSITIVE_INFINITY, 5000, 2500] as const;

/** main: the first device from a source; branch: a device behind another. */
export type FusePlace = 'main' | 'branch';

/** Breaking capacity the table asks for, A. (600, 'main') gives 1500; (651, 'branch') 1500; (1200, 'main') 5000. */
export function tableVaA(totalCcaA: number, place: FusePlace): number {
  const row = TABLE_V_A.find(([upTo]) => totalCcaA <= upTo) ?? BEYOND;
  return place === 'main' ? row[1] : row[2];
}
