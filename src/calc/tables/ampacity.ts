import type { SourceId } from '../sources.ts';
import type { AwgSize } from './awg.ts';

/** Temperature ratings of insulation that Table 5 has a column for, degC. */
export const INSULATION_CLASSES_C = [60, 75, 80, 90, 105, 125, 200] as const;
export type InsulationC = (typeof INSULATION_CLASSES_C)[number];

/** Ambient at which Table 5 holds, degC. */
export const TABLE5_AMBIENT_C = 30;

type Row = readonly [number, number, number, number, number, number, number];

/** Allowed amperage of insulated stranded copper. Source: 33 CFR 183.425 Table 5, whole; trust: published. */
const TABLE5: Readonly<Record<Exclude<AwgSize, '20'>, Row>> = {
  '18': [10, 10, 15, 20, 20, 25, 25],
  '16': [15, 15, 20, 25, 25, 30, 35],
  '14': [20, 20, 25, 30, 35, 40, 45],
  '12': [25, 25, 35, 40, 45, 50, 55],
  '10': [40, 40, 50, 55, 60, 70, 70],
  '8': [55, 65, 70, 70, 80, 90, 100],
  '6': [80, 95, 100, 100, 120, 125, 135],
  '4': [105, 125, 130, 135, 160, 170, 180],
  '3': [120, 145, 150, 155, 180, 195, 210],
  '2': [140, 170, 175, 180, 210, 225, 240],
  '1': [165, 195, 210, 210, 245, 265, 280],
  '1/0': [195, 230, 245, 245, 285, 305, 325],
  '2/0': [225, 265, 285, 285, 330, 355, 370],
  '3/0': [260, 310, 330, 330, 385, 410, 430],
  '4/0': [300, 360, 385, 385, 445, 475, 510],
};

export type Table5Size = keyof typeof TABLE5;

/** Amps of Table 5 at 30 degC ambient. ('4', 105) gives 160. */
export function table5A(size: Table5Size, insulationC: InsulationC): number {
  const amps = TABLE5[size][INSULATION_CLASSES_C.indexOf(insulationC)];
  if (amps === undefined) throw new RangeError(`Table 5: no column of ${insulationC} degC`);
  return amps;
}

/**
 * Factor in engine spaces (50 degC there). Source: 33 CFR 183.425 Table 5 note 1; trust: 105 degC read,
 * the rest from memory, each agreeing with sqrt((Tr-50)/(Tr-30)) to 0.01 but for 200 degC.
 */
export const NOTE1_FACTOR: Readonly<Record<InsulationC, number>> = {
  60: 0.58,
  75: 0.75,
  80: 0.78,
  90: 0.82,
  105: 0.85,
  125: 0.89,
  200: 1.0,
};

export function note1Source(insulationC: InsulationC): SourceId {
  return insulationC === 105 ? 'cfr183425Note1' : 'cfr183425Note1Memory';
}

/**
 * Factor where that many loaded conductors or more lie in one bundle. Source: 33 CFR 183.425 Table 5 note 2; trust:
 * published. The rule asks it from 50 V on; below that it errs on the safe side.
 */
export const BUNDLE_FACTORS: readonly (readonly [atLeast: number, factor: number])[] = [
  [25, 0.4],
  [7, 0.5],
  [4, 0.6],
  [3, 0.7],
];

/** Cable in closed loom or conduit against free air. Source: BS 7671 Table 4E1A column B / F at 25 mm2; trust: derived. */
export const LOOM_FACTOR = 0.82;

/** Cable under carpet and insulation against free air. Source: BS 7671 Table 4E1A column A / F at 25 mm2; trust: derived. */
export const CARPET_FACTOR = 0.65;
