/** The factory's own cables on the way back, and the feeds whose current they return. */
import { gauge, isGaugeId } from '../calc/conductor/gauge.ts';
import { MATERIAL_FIGURES } from '../calc/tables/materials.ts';
import type { Place } from './answer.ts';
import { type Facts, sizeOf } from './facts.ts';
import type { Metal } from './grounds.ts';

/** A strap at a battery's negative post, or a run of the factory's, of which the area is told. */
export interface Strap {
  readonly place: Place;
  /** Among all edges of the circuit. */
  readonly edge: number;
  /** Copper, mm2. */
  readonly areaMm2: number;
}

/** Those on the way back of which somebody told the area; one that is assumed is an assumption, and no finding. */
export function toldStraps({ model }: Pick<Facts, 'model'>): Strap[] {
  const { circuit, sides } = model;
  return sides.edges.flatMap(({ kind, index, a }, edge): Strap[] => {
    if (sides.back[a] !== true || sides.live[a] === true) return [];
    if (kind === 'bond') {
      const bond = circuit.bonds[index];
      const area = bond?.kind === 'strap' ? bond.fitting.strap?.areaMm2 : undefined;
      if (bond?.kind !== 'strap' || area === undefined || area.origin === 'assumed') return [];
      return [{ place: { kind: 'fitting', id: bond.fitting.id }, edge, areaMm2: area.value }];
    }
    const contact = kind === 'contact' ? circuit.contacts[index] : undefined;
    if (contact?.kind !== 'factory') return [];
    const { size } = contact.run.conductor;
    if (size === 'auto' || !isGaugeId(size)) return [];
    return [{ place: { kind: 'run', id: contact.run.id }, edge, areaMm2: gauge(size).areaMm2 }];
  });
}

interface Feed extends Metal {
  readonly cable: number;
  /** Area of copper that conducts as well, mm2. */
  readonly copperMm2: number;
}

const thicker = (one: Feed | undefined, other: Feed): Feed =>
  one === undefined || other.copperMm2 > one.copperMm2 ? other : one;

/**
 * By the edges that carry the same loads, the feed among them that conducts best; by null the best of all. In proportion
 * to the number of cables.
 */
export function feedsByLikeness(facts: Facts): ReadonlyMap<string | null, Feed> {
  const { circuit, sides, ways } = facts.model;
  const best = new Map<string | null, Feed>();
  for (const [cable, { a, conductor }] of circuit.cables.entries()) {
    const size = sizeOf(facts, cable);
    const likeness = ways.likenessOf(cable);
    if (size === null || likeness === null || sides.live[a] !== true) continue;
    const material = conductor.material.value;
    const copperMm2 = gauge(size).areaMm2 * MATERIAL_FIGURES[material].conductivity;
    const feed: Feed = { cable, size, material, copperMm2 };
    best.set(likeness, thicker(best.get(likeness), feed));
    best.set(null, thicker(best.get(null), feed));
  }
  return best;
}
