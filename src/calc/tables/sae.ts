import type { SourceId } from '../sources.ts';
import { type AwgSize, awgAreaMm2, MM2_PER_CIRCULAR_MIL } from './awg.ts';

/**
 * Least copper of a cable sold by SAE gauge. Source: SAE J1127 / J1128, minimum circular mils;
 * trust per row: read in a reprint, or from memory. 3 to 11 % below the AWG area of the same number.
 */
const MINIMUM_CIRCULAR_MILS: Readonly<Partial<Record<AwgSize, readonly [area: number, source: SourceId]>>> = {
  '18': [1537, 'saeJ1127Memory'],
  '16': [2336, 'saeJ1127Memory'],
  '14': [3702, 'saeJ1127Memory'],
  '12': [5833, 'saeJ1127Memory'],
  '10': [9343, 'saeJ1127Memory'],
  '8': [14810, 'saeJ1127Memory'],
  '6': [24538, 'saeJ1127'],
  '4': [37360, 'saeJ1127'],
  '2': [62450, 'saeJ1127'],
  '1': [77790, 'saeJ1127Memory'],
  '1/0': [98980, 'saeJ1127'],
  '2/0': [125100, 'saeJ1127'],
  '3/0': [158600, 'saeJ1127Memory'],
  '4/0': [205500, 'saeJ1127'],
};

/** Least share of the AWG area among the listed sizes; stands in for sizes without a row (3 and 20). */
const LEAST_SHARE_OF_AWG = 0.893;

/** Area in mm2 and where it comes from. '4' gives 18.931 mm2; '3', derived, 23.817 mm2. */
export function saeArea(size: AwgSize): { readonly areaMm2: number; readonly source: SourceId } {
  const row = MINIMUM_CIRCULAR_MILS[size];
  if (row === undefined) return { areaMm2: LEAST_SHARE_OF_AWG * awgAreaMm2(size), source: 'saeDerived' };
  return { areaMm2: row[0] * MM2_PER_CIRCULAR_MIL, source: row[1] };
}
