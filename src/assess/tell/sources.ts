import type { FittingKind } from '../../plan/schema.ts';
import type { SourceAnswer } from '../answer.ts';
import type { Facts } from '../facts.ts';
import type { UnprotectedWay } from '../unprotected.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { unprotectedWhy } from '../whys/length.ts';

/** Where a way ends; null: at nothing. */
function endOf({ model }: Facts, { end, cables }: UnprotectedWay): SourceAnswer['endsAt'] {
  const { circuit } = model;
  const at = (fittingId: string | undefined, terminal: string | null) =>
    fittingId === undefined ? null : { fittingId, terminal };
  switch (end.kind) {
    case 'device':
      return at(circuit.links[end.link]?.fitting.id, circuit.links[end.link]?.terminal ?? null);
    case 'load':
      return at(circuit.loads[end.load]?.fitting.id, end.terminal);
    case 'source':
      return at(circuit.starts[end.source]?.fitting.id, liveTerminal(circuit.starts[end.source]?.fitting.kind));
    case 'nothing': {
      const place = cables.length === 0 ? null : (circuit.places[end.node] ?? null);
      return at(place?.fittingId, place?.terminal ?? null);
    }
  }
}

/** The terminal of a source that its cable leaves from. */
const liveTerminal = (kind: FittingKind | undefined): string =>
  kind === 'jumpPost' || kind === 'takeOff' ? 'stud' : 'positive';

/** An answer for every place at which live cable begins: batteries first, in the order of the plan. */
export function tellSources(facts: Facts, book: WhyBook): SourceAnswer[] {
  const { circuit } = facts.model;
  return facts.unprotected.map((unprotected): SourceAnswer => {
    const { source, greatest, totalM } = unprotected;
    const fittingId = circuit.starts[source]?.fitting.id ?? '';
    return {
      fittingId,
      unprotectedM: greatest.lengthM,
      plusMinusM: greatest.plusMinusM,
      runIds: greatest.cables.flatMap((cable) => circuit.cables[cable]?.run.id ?? []),
      totalUnprotectedM: totalM,
      endsAt: endOf(facts, greatest),
      why: book.file(`unprotected:${fittingId}`, () => unprotectedWhy(circuit, unprotected)),
    };
  });
}
