/** What a device must break: the prospective current at its place, and what the batteries joined there ask of it. */
import { type BreakingVerdict, breakingAskedA, breakingVerdict, type FusePlace } from '../../calc/fuse/breaking.ts';
import { batteryOhm } from '../../calc/supply/battery.ts';
import type { CircuitSource } from '../circuit.ts';
import type { Facts } from '../facts.ts';
import { per } from '../perModel.ts';
import { linkEdge } from '../ratings.ts';
import { reach } from '../sides.ts';
import { firstLinks } from '../unprotected.ts';
import { batteryCase } from './battery.ts';
import { isTree } from './ends.ts';
import { type RatedLink, ratedLinks } from './links.ts';
import { bothFaults, faultA, faultsOf } from './net.ts';

export interface Breaking {
  readonly of: RatedLink;
  readonly verdict: BreakingVerdict;
  readonly place: FusePlace;
  readonly breakingA: number | null;
  /** Cold cranking amperes of the lead-acid batteries that can drive through it at once, as SAE counts; null: there is none. */
  readonly totalCcaA: number | null;
  /** What the table asks for them, A; null without lead-acid batteries. */
  readonly askedA: number | null;
  readonly estimateA: number;
  /** The same with twice every battery's resistance; null where it breaks the estimate. */
  readonly doubledA: number | null;
}

/** Twice the resistance of every battery: as far off as the estimate may be. Source: our rules, section 8. */
const DOUBLED = 2;

/** By link: largest current that it may have to break, A: a dead short right behind it, from either side, the link itself in the loop. */
function estimatesA(facts: Facts, batteryScale: number): readonly number[] {
  const { model } = facts;
  const { circuit, ways } = model;
  const known = batteryScale === 1 ? bothFaults(facts)?.highest : undefined;
  const faults = known ?? faultsOf(facts, { extreme: 'highest', batteryScale });
  if (faults === null) return circuit.links.map(() => 0);
  return circuit.links.map(({ a, b }, link) => {
    const edge = linkEdge(model, link);
    if (isTree(model)) {
      const step = [ways.stepTo(a), ways.stepTo(b)].find((found) => found?.edge === edge);
      return step === undefined ? 0 : faultA(faults, step.to, 0);
    }
    return Math.max(...[a, b].map((node) => Math.abs(faults.at(node, 0)?.resistorAmps[edge] ?? 0)));
  });
}

/** Volts that the label's test takes a battery of 12 V down by at its CCA, SAE J537: 12.6 - 7.2. */
const SAE_FALL_V = 5.4;

/** Cold cranking amperes of a source as SAE J537 counts them, A; null: it is no lead-acid battery. */
function saeCcaA(facts: Facts, source: CircuitSource): number | null {
  const of = batteryCase(facts.model, source);
  if (of.chemistry !== 'leadAcid') return null;
  // another standard's label, by the SAE amperes of a battery of the same resistance; in 24 V two stand in series
  const inSeries = of.systemV / 12;
  const ccaA =
    of.ccaStandard === 'sae' ? of.ccaA : (inSeries * SAE_FALL_V) / batteryOhm({ ...of, ownOhm: null }, 'cold');
  return ccaA / facts.batteryScale;
}

/**
 * By link: cold cranking amperes of the lead-acid batteries that can drive a short through it together: those on one
 * side of it, the greater of its two; null: there are none. Batteries on both sides never drive through it at once.
 */
function connectedCcaA(facts: Facts): readonly (number | null)[] {
  const { circuit, sides } = facts.model;
  const amps = circuit.sources.map((source) => saeCcaA(facts, source));
  const all = amps.filter((ccaA) => ccaA !== null);
  if (circuit.sources.length < 2) return circuit.links.map(() => all[0] ?? null);
  return circuit.links.map((link, index) => {
    const edge = linkEdge(facts.model, index);
    const beside = [link.a, link.b].map((node) => {
      const joined = reach([node], sides, (one) => one.kind !== 'bond' && one !== sides.edges[edge]);
      const held = amps.flatMap((ccaA, source) =>
        joined[circuit.sources[source]?.plus ?? -1] === true ? (ccaA ?? []) : [],
      );
      return held.length === 0 ? null : held.reduce((sum, ccaA) => sum + ccaA, 0);
    });
    return beside.reduce<number | null>((most, ccaA) => (ccaA === null ? most : Math.max(most ?? 0, ccaA)), null);
  });
}

/** Every rated device that the plan is free to choose, against what it may have to break; none in a plan that is a short. */
export const breakingOf = per((facts: Facts): readonly Breaking[] => {
  const { model, unprotected } = facts;
  if (bothFaults(facts) === null) return [];
  const cca = connectedCcaA(facts);
  const mains = new Set(unprotected.flatMap(firstLinks));
  const estimates = estimatesA(facts, 1);
  let doubled: readonly number[] | null = null;
  // asked for only by a link below the estimate
  const doubledAt = (link: number): number => {
    doubled ??= estimatesA(facts, DOUBLED);
    return doubled[link] ?? 0;
  };
  return ratedLinks(facts).flatMap((of): Breaking[] => {
    const device = model.circuit.links[of?.link ?? -1];
    if (of === null || of.family === null || device === undefined) return [];
    // the factory's own fuse is outside the plan
    if (device.fitting.kind === 'takeOff' || model.sides.live[device.a] !== true) return [];
    const { breakingA } = of.family;
    const place: FusePlace = mains.has(of.link) ? 'main' : 'branch';
    const totalCcaA = cca[of.link] ?? null;
    const estimateA = estimates[of.link] ?? 0;
    if (!(estimateA > 0)) return [];
    const doubledA = breakingA !== null && breakingA < estimateA ? doubledAt(of.link) : null;
    const verdict = breakingVerdict({ breakingA, place, totalCcaA, estimateA, doubledA: doubledA ?? 0 });
    const askedA = totalCcaA === null ? null : breakingAskedA(totalCcaA, place);
    return [{ of, verdict, place, breakingA, totalCcaA, askedA, estimateA, doubledA }];
  });
});
