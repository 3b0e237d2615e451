/**
 * The published figures that the expected answers of the browser tests are worked out from, copied here row by row.
 * Nothing in this file comes from the page.
 */

/** The SAE gauges a shop is taken to stock (our rules, section 4: editable default), ascending. */
export const STOCK = ['8', '4', '2', '1/0', '2/0', '4/0'] as const;
export type Size = (typeof STOCK)[number];

/** 1 circular mil in mm2: pi/4 x (0.0254 mm)^2. By definition. */
const MM2_PER_CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;

/** Least copper of a cable sold by SAE gauge, circular mils. SAE J1127, public reprint (the row of 8: from memory). */
const SAE_J1127_CIRCULAR_MILS: Readonly<Record<Size, number>> = {
  '8': 14_810,
  '4': 37_360,
  '2': 62_450,
  '1/0': 98_980,
  '2/0': 125_100,
  '4/0': 205_500,
};

/** Area of a stranded conductor of that AWG number, circular mils. NFPA 70 (NEC) chapter 9, table 8. */
const NEC_TABLE8_CIRCULAR_MILS: Readonly<Record<Size, number>> = {
  '8': 16_510,
  '4': 41_740,
  '2': 66_360,
  '1/0': 105_600,
  '2/0': 133_100,
  '4/0': 211_600,
};

/** Current of a copper conductor of that AWG number with insulation of 105 degC in 30 degC, A. 33 CFR 183.425 table 5. */
const CFR_183_425_TABLE5_105C: Readonly<Record<Size, number>> = {
  '8': 80,
  '4': 160,
  '2': 210,
  '1/0': 285,
  '2/0': 330,
  '4/0': 445,
};

/** Air for which table 5 holds, degC. 33 CFR 183.425 table 5. */
export const TABLE5_AIR_C = 30;
/** Factor on table 5 in an engine space, insulation of 105 degC. 33 CFR 183.425 table 5, note 1. */
export const ENGINE_SPACE_FACTOR = 0.85;

/** Resistivity of annealed copper at 20 degC, ohm m. NBS Handbook 100, 100 % IACS. */
const RHO20_OHM_M = 1.7241e-8;
/** Strands lie in a helix and are longer than the cable: NEC chapter 9, table 8, stranded against solid rows. */
const STRANDING = 1.02;
/** Degrees below zero at which the resistance of copper, drawn on as a straight line, vanishes. IEC 60949. */
export const COPPER_BETA_C = 234.5;
/** Class 5 conductor of 25 mm2 at 20 degC, at most, ohm per m. IEC 60228, table 3. */
export const CLASS5_25MM2_OHM_PER_M = 0.78e-3;

/** Ratings of bolt-in links of type SF30 and SF51 and blades of type C and E together, from 20 A on. ISO 8820-3 and ISO 8820-5. */
export const ISO8820_RATINGS_A = [
  20, 30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 275, 300, 350, 400, 450, 500,
];
/** Current that a 40 A link of type E carries for long at the temperature of its holder, degC and A: its data sheet, second hand. */
export const LINK_40A_USABLE = [
  [20, 40],
  [65, 34],
  [85, 30],
  [110, 25],
  [125, 22],
] as const;
/** Voltage across a link at its rating, V: the same 40 A link. */
export const LINK_DROP_V = 0.075;

export const areaMm2 = (size: Size): number => SAE_J1127_CIRCULAR_MILS[size] * MM2_PER_CIRCULAR_MIL;

/** Table 5 for the copper that an SAE gauge really has: heat goes with I^2 R, so the current with the root of the area. */
export const table5A = (size: Size): number =>
  CFR_183_425_TABLE5_105C[size] * Math.sqrt(SAE_J1127_CIRCULAR_MILS[size] / NEC_TABLE8_CIRCULAR_MILS[size]);

/** Ohm per m of a conductor of that gauge at its own temperature. */
export const ohmPerM = (size: Size, conductorC: number): number =>
  ((STRANDING * RHO20_OHM_M) / (areaMm2(size) * 1e-6)) * ((COPPER_BETA_C + conductorC) / (COPPER_BETA_C + 20));
