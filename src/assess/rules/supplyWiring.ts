import { holderFactor } from '../../calc/fuse/rating.ts';
import type { Finding, Param, Place, Severity } from '../answer.ts';
import { cableAmpacityA } from '../capacity.ts';
import type { CircuitLink } from '../circuit.ts';
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
  /** Of the chargers and alternators together, and with what music adds: at full output, and as it heats. */
  readonly supplyA: number;
  readonly fullA: number;
  readonly heatingA: number;
  /** All that send through there. */
  readonly supplies: readonly Place[];
  /** No load's current passes there. */
  readonly servesNone: boolean;
}

/** What passes an edge on the one way of chargers and alternators; null where none does, or current has a choice of way. */
function throughAt(facts: Facts, { amps, by }: Throughput, edge: number): Through | null {
  const { model } = facts;
  const supplyA = amps[edge] ?? 0;
  const behind = model.ways.behindOf(edge);
  if (supplyA === 0 || behind === null) return null;
  const loadsA = fullOf(facts, edge) ?? 0;
  return {
    supplyA,
    fullA: loadsA + supplyA,
    heatingA: loadsA * heatingShareAt(model, edge) + supplyA,
    supplies: (by[edge] ?? []).map(fittingPlace),
    servesNone: behind.length === 0,
  };
}

type Verdict = { readonly severity: Severity; readonly what: 'opens' | 'forLong' | 'carries' | 'undecided' };

function told(
  place: Place,
  { supplies, supplyA, fullA, heatingA }: Through,
  { severity, what }: Verdict,
  params: Record<string, Param>,
) {
  return finding('supply-wiring', {
    severity,
    places: [place, ...supplies],
    params: { supplyA, fullA, heatingA, what, ...params },
    source: what === 'forLong' ? 'continuousLoad' : 'feedrunRules',
  });
}

/** The share of a rating that a fuse bears there for long. */
const shareAt = ({ model: { settings } }: Facts, { zone }: CircuitLink): number =>
  Math.min(CONTINUOUS_SHARE, holderFactor(ambientC(settings, zone)));

const neededA = ({ fullA, heatingA }: Through, share: number): number | null =>
  share > 0 ? Math.max(fullA, heatingA / share) : null;

function ofLinks(facts: Facts, currents: Throughput): Finding[] {
  return facts.model.circuit.links.flatMap((device, link): Finding[] => {
    const { fitting, terminal } = device;
    const through = throughAt(facts, currents, linkEdge(facts.model, link));
    if (through === null) return [];
    const ratingA = ratingOf(facts, link);
    const share = shareAt(facts, device);
    const verdict = ((): Verdict | null => {
      if (ratingA === null && through.servesNone) return null;
      if (ratingA === null) return { severity: 'fix', what: 'undecided' };
      if (exceeds(through.fullA, ratingA)) return { severity: 'stop', what: 'opens' };
      return exceeds(through.heatingA, share * ratingA) ? { severity: 'fix', what: 'forLong' } : null;
    })();
    if (verdict === null) return [];
    const params = { ratingA, neededA: neededA(through, share), terminal };
    return [ofOutput(terminal, told(fittingPlace(fitting), through, verdict, params))];
  });
}

function ofCables(facts: Facts, currents: Throughput): Finding[] {
  return facts.model.circuit.cables.flatMap((cable, index): Finding[] => {
    const through = throughAt(facts, currents, index);
    if (through === null || carriesNothing(facts, index)) return [];
    const size = sizeOf(facts, index);
    const ampacityA = size === null ? null : cableAmpacityA(facts.model, cable, size);
    if (ampacityA === null || !exceeds(through.heatingA, ampacityA)) return [];
    return [told(runPlace(facts, index), through, { severity: 'fix', what: 'carries' }, { ampacityA })];
  });
}

/** A fuse or a cable that nothing is chosen for. */
interface Undecided {
  readonly place: Place;
  readonly through: Through;
  readonly params: Readonly<Record<string, Param>>;
}

/** Where a load's way has no rating or size either, that is told of the load. */
function undecidedOn(facts: Facts, currents: Throughput): Undecided[] {
  const { links, cables } = facts.model.circuit;
  const alone = (edge: number): Through | null => {
    const through = throughAt(facts, currents, edge);
    return through?.servesNone === true ? through : null;
  };
  return [
    ...links.flatMap((device, link): Undecided[] => {
      const through = ratingOf(facts, link) === null ? alone(linkEdge(facts.model, link)) : null;
      if (through === null) return [];
      const { fitting, terminal } = device;
      const params = { neededA: neededA(through, shareAt(facts, device)), terminal };
      return [{ place: fittingPlace(fitting), through, params }];
    }),
    ...cables.flatMap((_, index): Undecided[] => {
      const through = sizeOf(facts, index) === null && !carriesNothing(facts, index) ? alone(index) : null;
      return through === null ? [] : [{ place: runPlace(facts, index), through, params: {} }];
    }),
  ];
}

/**
 * One cause, one fix for each supply, and for all that send through the same parts together; the part with the greatest
 * current first, figures of the others by their number.
 */
function ofUndecided(facts: Facts, currents: Throughput): Finding[] {
  const bySupply = new Map<string, Undecided[]>();
  for (const part of undecidedOn(facts, currents)) {
    const id = part.through.supplies.map((supply) => supply.id).join('+');
    bySupply.set(id, [...(bySupply.get(id) ?? []), part]);
  }
  return [...bySupply].flatMap(([supplyId, parts]): Finding[] => {
    const [first, ...others] = parts.toSorted((one, other) => other.through.supplyA - one.through.supplyA);
    if (first === undefined) return [];
    const figures = others.flatMap(({ through, params }, index) =>
      Object.entries({ heatingA: through.heatingA, ...params }).map(([name, value]) => [`${name}${index + 1}`, value]),
    );
    const params = { ...first.params, ...Object.fromEntries(figures), parts: parts.length };
    const one = told(first.place, first.through, { severity: 'fix', what: 'undecided' }, params);
    return [
      {
        ...one,
        id: `supply-wiring:undecided:${supplyId}`,
        places: [first.place, ...others.map((other) => other.place), ...first.through.supplies],
      },
    ];
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
    return [...ofLinks(facts, currents), ...ofCables(facts, currents), ...ofUndecided(facts, currents)];
  },
};
