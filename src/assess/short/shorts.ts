/** A dead short on every live cable: what flows, what opens, and what is left of the cable. */
import type { GaugeId } from '../../calc/conductor/gauge.ts';
import type { FaultConductor } from '../../calc/fault/damage.ts';
import { type SeeingFuse, type Unseen, worstUnseen } from '../../calc/fault/unseen.ts';
import { type Facts, sizeOf } from '../facts.ts';
import { per } from '../perModel.ts';
import { faultConductor } from './conductor.ts';
import { currentsAt, type EndCurrents, type Prospective, prospectiveOf } from './currents.ts';
import { type FedEnd, fedEnds } from './ends.ts';
import { type EndVerdict, judgeEnd, worseBy } from './judge.ts';
import { ratedLinks } from './links.ts';
import { type BothFaults, bothFaults } from './net.ts';

/** The worst partial short, that no fuse need ever see. */
interface PartialShort extends Unseen {
  /** Resistance of the fault that draws it, ohm, and the heat made there, W. */
  readonly faultOhm: number;
  readonly faultW: number;
}

export interface CableShort extends Prospective {
  readonly cable: number;
  readonly size: GaugeId;
  readonly conductor: FaultConductor;
  readonly ends: readonly EndVerdict[];
  /** The worst of the ends. */
  readonly worst: EndVerdict;
  /** Null ahead of the first device: there every short is unseen. */
  readonly partial: PartialShort | null;
}

function partialAt(
  facts: Facts,
  both: BothFaults,
  { end, seeing }: EndVerdict,
  currents: EndCurrents,
  conductor: FaultConductor,
): PartialShort | null {
  const links = ratedLinks(facts);
  const { highestA, lowestA } = currents.conductor;
  const fuses = seeing.flatMap(({ link, lowestA: seenA }): SeeingFuse[] => {
    const rated = links[link];
    if (rated == null || !(lowestA > 0) || !(seenA > 0)) return [];
    return [{ ratingA: rated.ratingA, share: Math.min(1, seenA / lowestA), baseA: 0 }];
  });
  if (end.bare.length > 0 || fuses.length === 0 || !(highestA > 0)) return null;
  const unseen = worstUnseen(conductor, fuses, highestA);
  const { highest } = both;
  const ahead = highest.ohm[end.near] ?? 0;
  const openV = highest.openVolts[end.near] ?? 0;
  const faultOhm = Math.max(0, openV / unseen.currentA - ahead);
  return { ...unseen, faultOhm, faultW: unseen.currentA ** 2 * faultOhm };
}

function shortOn(facts: Facts, both: BothFaults, cable: number, ends: readonly FedEnd[]): CableShort[] {
  const size = sizeOf(facts, cable);
  if (size === null || ends.length === 0) return [];
  const conductor = faultConductor(facts, cable, size);
  if (conductor === null) return [];
  const judged = ends.map((end) => {
    const currents = currentsAt(facts, both, cable, end);
    const verdict = judgeEnd(facts, both, cable, conductor, end, currents, ends);
    return { verdict, partial: partialAt(facts, both, verdict, currents, conductor) };
  });
  const [worst] = judged.map(({ verdict }) => verdict).toSorted((one, other) => worseBy(other, one));
  const [partial = null] = judged
    .flatMap(({ partial: found }) => found ?? [])
    .toSorted((one, other) => other.currentA - one.currentA);
  if (worst === undefined) return [];
  return [
    {
      cable,
      size,
      conductor,
      ...prospectiveOf(facts, both, cable, ends),
      ends: judged.map(({ verdict }) => verdict),
      worst,
      partial,
    },
  ];
}

/** By live cable of a decided size, in the order of the circuit; none where a plan is a short already or has no source. */
export const shortsOf = per((facts: Facts): readonly CableShort[] => {
  const both = bothFaults(facts);
  if (both === null) return [];
  return fedEnds(facts.model).flatMap((ends, cable) => shortOn(facts, both, cable, ends));
});
