import { holderFactor } from '../../calc/fuse/rating.ts';
import type { Finding, Param, Place, Severity } from '../answer.ts';
import { cableAmpacityA } from '../capacity.ts';
import { exceeds } from '../conductor.ts';
import { carriesNothing, type Facts, fullOf, ratingOf, sizeOf } from '../facts.ts';
import { linkEdge } from '../ratings.ts';
import { heatingShareAt } from '../states.ts';
import { type Throughput, throughputOf } from '../supply/throughput.ts';
import { ambientC } from '../surroundings.ts';
import { finding, fittingPlace, ofOutput, type Rule, runPlace } from './rule.ts';

/** Largest share of a rating for long. Source: as publicly taught. */
const CONTINUOUS_SHARE = 0.8;

interface Through {
  /** The charger's or alternator's, and with what music adds: at full output, and as it heats. */
  readonly supplyA: number;
  readonly fullA: number;
  readonly heatingA: number;
  readonly supply: Place;
}

/** What passes an edge on the one way of a charger or alternator; null where none does, or current has a choice of way. */
function throughAt(facts: Facts, { amps, by }: Throughput, edge: number): Through | null {
  const { model } = facts;
  const supplyA = amps[edge] ?? 0;
  const fitting = by[edge] ?? null;
  if (supplyA === 0 || fitting === null || model.ways.behindOf(edge) === null) return null;
  const loadsA = fullOf(facts, edge) ?? 0;
  return {
    supplyA,
    fullA: loadsA + supplyA,
    heatingA: loadsA * heatingShareAt(model, edge) + supplyA,
    supply: fittingPlace(fitting),
  };
}

type Verdict = { readonly severity: Severity; readonly what: 'opens' | 'forLong' | 'carries' | 'undecided' };

function told(
  place: Place,
  { supply, ...currents }: Through,
  { severity, what }: Verdict,
  params: Record<string, Param>,
) {
  return finding('supply-wiring', {
    severity,
    places: [place, supply],
    params: { ...currents, what, ...params },
    source: what === 'forLong' ? 'continuousLoad' : 'feedrunRules',
  });
}

function ofLinks(facts: Facts, currents: Throughput): Finding[] {
  const { circuit, settings } = facts.model;
  return circuit.links.flatMap(({ fitting, terminal, zone }, link): Finding[] => {
    const through = throughAt(facts, currents, linkEdge(facts.model, link));
    if (through === null) return [];
    const ratingA = ratingOf(facts, link);
    const share = Math.min(CONTINUOUS_SHARE, holderFactor(ambientC(settings, zone)));
    const neededA = share > 0 ? Math.max(through.fullA, through.heatingA / share) : null;
    const verdict = ((): Verdict | null => {
      if (ratingA === null) return { severity: 'fix', what: 'undecided' };
      if (exceeds(through.fullA, ratingA)) return { severity: 'stop', what: 'opens' };
      return exceeds(through.heatingA, share * ratingA) ? { severity: 'fix', what: 'forLong' } : null;
    })();
    if (verdict === null) return [];
    return [ofOutput(terminal, told(fittingPlace(fitting), through, verdict, { ratingA, neededA, terminal }))];
  });
}

function ofCables(facts: Facts, currents: Throughput): Finding[] {
  return facts.model.circuit.cables.flatMap((cable, index): Finding[] => {
    const through = throughAt(facts, currents, index);
    if (through === null || carriesNothing(facts, index)) return [];
    const size = sizeOf(facts, index);
    const place = runPlace(facts, index);
    // where a load's way has no size either, that is told of the load
    if (size === null && (facts.model.ways.behindOf(index) ?? []).length === 0)
      return [told(place, through, { severity: 'fix', what: 'undecided' }, {})];
    const ampacityA = size === null ? null : cableAmpacityA(facts.model, cable, size);
    if (ampacityA === null || !exceeds(through.heatingA, ampacityA)) return [];
    return [told(place, through, { severity: 'fix', what: 'carries' }, { ampacityA })];
  });
}

/**
 * RULES 4 and 5 on the way of a DC-DC charger or an alternator, whose steady current no load draws: above a fuse's
 * rating: stop; above what the fuse or the cable bears for long, or through one that nothing is chosen for: fix.
 */
export const supplyWiring: Rule = {
  id: 'supply-wiring',
  sensitive: false,
  check: (facts) => {
    const { circuit, shorted } = facts.model;
    if (shorted || circuit.chargers.length + circuit.alternators.length === 0) return [];
    const currents = throughputOf(facts);
    return [...ofLinks(facts, currents), ...ofCables(facts, currents)];
  },
};
