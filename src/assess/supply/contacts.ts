import { type Facts, fullOf } from '../facts.ts';
import type { Model } from '../model.ts';
import { heatingShareAt } from '../states.ts';

/** Index among all edges of a contact of the circuit. */
export const contactEdge = ({ circuit }: Model, contact: number): number =>
  circuit.cables.length + circuit.links.length + circuit.bonds.length + contact;

/** Current out of a node by the edges that pass, together, full and heating, A; null where one of them cannot be told. */
export function leaving(
  facts: Facts,
  node: number,
  passes: (edge: number) => boolean,
): { fullA: number; heatingA: number } | null {
  let [fullA, heatingA] = [0, 0];
  for (const edge of (facts.model.sides.at[node] ?? []).filter(passes)) {
    const one = fullOf(facts, edge);
    if (one === null) return null;
    fullA += one;
    heatingA += one * heatingShareAt(facts.model, edge);
  }
  return { fullA, heatingA };
}

/** Full current across a bar, A: what comes in, in the worst state, or through its busiest cable; null where one cannot be told. */
export function acrossA(facts: Facts, node: number): number | null {
  const edges = facts.model.sides.at[node] ?? [];
  const amps = edges.map((edge) => fullOf(facts, edge));
  if (amps.includes(null)) return null;
  // what comes in goes out: half of all
  const states = (facts.operating?.states ?? []).map((point) =>
    edges.reduce((total, edge) => total + Math.abs(point.amps[edge] ?? 0) / 2, 0),
  );
  return Math.max(0, ...states, ...amps.map((one) => one ?? 0));
}
