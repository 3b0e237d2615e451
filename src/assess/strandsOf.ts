import type { GaugeId } from '../calc/conductor/gauge.ts';
import { provenGauge, strandsAreaMm2 } from '../calc/conductor/strands.ts';
import type { Conductor, Settings } from '../plan/schema.ts';

/** What counted strands come to: their metal, mm2, and the largest size that they prove; null: not even the smallest. */
export interface StrandsAnswer {
  readonly areaMm2: number;
  readonly proves: GaugeId | null;
}

/** The metal of a conductor by its strands, or null where none are told. 196 strands of 0.40 mm: 24.6 mm2, 25 mm2. */
export function strandsOf({ strands, material }: Conductor, system: Settings['sizeSystem']): StrandsAnswer | null {
  if (strands === null) return null;
  const areaMm2 = strandsAreaMm2(strands.count, strands.diameterMm);
  return { areaMm2, proves: provenGauge(areaMm2, system, material.value) };
}
