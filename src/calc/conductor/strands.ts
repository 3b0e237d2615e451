import type { Material } from '../tables/materials.ts';
import { type Abouts, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { type GaugeId, type GaugeSystem, gaugesOf } from './gauge.ts';
import { metalAreaMm2 } from './thermal.ts';

type Given = Abouts<'count' | 'strandMm'>;

function recordStrands(count: number, strandMm: number, rec: Recorder, about: Given): number {
  const strands = rec.input('nStrands', '1', count, about.count);
  const diameter = rec.input('dStrand', 'mm', strandMm, about.strandMm);
  return rec.step('Sstrands', 'mm2', 'nStrands * pi / 4 * dStrand ^ 2', (strands * Math.PI * diameter ** 2) / 4);
}

/**
 * Metal of a conductor by counting: number of strands x pi d^2 / 4, mm2. Good for any count and diameter; a strand read
 * 0.01 mm too thick at 0.1 mm makes a fifth too much. 196 strands of 0.40 mm: 24.6 mm2.
 */
export function strandsAreaMm2(count: number, strandMm: number): number {
  return recordStrands(count, strandMm, NO_WHY, {});
}

/** Why of `strandsAreaMm2`; the result is 'Sstrands'. */
export function strandsAreaWhy(count: number, strandMm: number, about: Given = {}): Why {
  const builder = whyBuilder();
  recordStrands(count, strandMm, builder, about);
  return builder.done('Sstrands');
}

/** Strand diameters are printed rounded: a size counts as proven from 2 % less. Our choice. */
const ROUNDING = 0.98;

/**
 * The largest size of a system that this much counted metal proves, or null: not even the smallest. A metric size asks
 * for the metal that its resistance needs (25 mm2: 22.5), an SAE or AWG size for its area.
 * 24.6 mm2 proves 'mm2:25', 'sae:3' and 'awg:4'.
 */
export function provenGauge(countedMm2: number, system: GaugeSystem, material: Material = 'copper'): GaugeId | null {
  return gaugesOf(system).findLast((id) => metalAreaMm2({ gauge: id, material }) * ROUNDING <= countedMm2) ?? null;
}
