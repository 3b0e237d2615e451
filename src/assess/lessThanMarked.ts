/** Cables that are less than what they are taken as: clad metal as copper, or fewer strands than their size has. */
import { type GaugeId, gauge } from '../calc/conductor/gauge.ts';
import type { Material } from '../calc/tables/materials.ts';
import { cableAmpacityA, fixedGauge } from './capacity.ts';
import type { Cable } from './circuit.ts';
import { exceeds } from './conductor.ts';
import { type Facts, sizeOf } from './facts.ts';
import { type StrandsAnswer, strandsOf } from './strandsOf.ts';

/** What a cable really is; size null: less than the smallest known. */
interface Really {
  readonly size: GaugeId | null;
  readonly material: Material;
}

/** A piece of a cable into which the fuses let more than it really carries. */
interface Burnt {
  readonly limitA: number;
  /** null: less than any size that is known carries. */
  readonly ampacityA: number | null;
}

/**
 * Of the pieces of a cable, the one that its fuses let burn first, were it what it really is; null where none lets in too
 * much, or where nothing limits it at all, which is told elsewhere.
 */
export function burntAs(
  { model, limits }: Pick<Facts, 'model' | 'limits'>,
  pieces: readonly number[],
  really: Really,
): Burnt | null {
  let worst: { readonly over: number; readonly burnt: Burnt } | null = null;
  for (const piece of pieces) {
    const [cable, limitA = 0] = [model.circuit.cables[piece], limits[piece]];
    if (cable === undefined || limitA === 0 || limitA === Infinity) continue;
    const { conductor } = cable;
    const real = { ...cable, conductor: { ...conductor, material: { ...conductor.material, value: really.material } } };
    const ampacityA = really.size === null ? null : cableAmpacityA(model, real, really.size);
    if (ampacityA !== null && !exceeds(limitA, ampacityA)) continue;
    const over = limitA / (ampacityA ?? 0);
    if (worst === null || over > worst.over) worst = { over, burnt: { limitA, ampacityA } };
  }
  return worst?.burnt ?? null;
}

/** The decided size of a cable, the first of its pieces that has one; null where none has. */
export const sizeOfPieces = (facts: Facts, pieces: readonly number[]): GaugeId | null =>
  pieces.map((piece) => sizeOf(facts, piece)).find((size) => size !== null) ?? null;

interface Counted extends StrandsAnswer {
  /** As it is taken. */
  readonly size: GaugeId;
  /** Its strands have the metal of that size. */
  readonly isProven: boolean;
}

/** The counted strands of a cable that is there against the size it is taken as; null where none are counted. */
export function countedOf(cable: Cable): Counted | null {
  const { strands } = cable.run.conductor;
  const size = fixedGauge(cable);
  if (strands === null || size === null) return null;
  const { system, areaMm2 } = gauge(size);
  const answer = strandsOf({ ...cable.conductor, strands }, system);
  if (answer === null) return null;
  const provenMm2 = answer.proves === null ? 0 : gauge(answer.proves).areaMm2;
  return { ...answer, size, isProven: !exceeds(areaMm2, provenMm2) };
}
