/** What a dead short on a cable does to it, end by end. */
import type { FaultConductor } from '../../calc/fault/damage.ts';
import type { FaultPoint, FaultVerdictId, Harm } from '../../calc/fault/point.ts';
import { type FaultFuse, judgeFault } from '../../calc/fault/verdict.ts';
import { fuseTimes, OPENING_MULTIPLE } from '../../calc/tables/fuseTimes.ts';
import type { Facts } from '../facts.ts';
import { linkEdge } from '../ratings.ts';
import { afterOpening, type EndCurrents, type Span } from './currents.ts';
import type { FedEnd } from './ends.ts';
import { familyNameOf, type RatedLink, ratedLinks } from './links.ts';
import { type BothFaults, NO_A } from './net.ts';

/** A device that sees a short, with its own current. */
interface Seeing extends Span {
  readonly link: number;
}

/** What one end of a cable brings, and what comes of it. */
export interface EndVerdict {
  readonly end: FedEnd;
  readonly verdict: FaultVerdictId;
  readonly harm: Harm;
  /** The worst current of the range; null where no conductor can be judged: nothing rated lies ahead. */
  readonly worst: FaultPoint | null;
  /** The fuse that clears at the worst current, or that would have to. */
  readonly link: number | null;
  /** Through that fuse at the worst current, A. */
  readonly linkA: number;
  readonly seeing: readonly Seeing[];
  /** No time limits are held for a device that decides. */
  readonly withoutLimits: boolean;
  /** It turns bad only beyond the last point of the standard, where a real link lets through no more than before. */
  readonly beyondLimits: boolean;
  /** What flows on once every device that must open has opened, A; 0 for nothing. */
  readonly residualA: number;
}

const VERDICT_RANK: Readonly<Record<FaultVerdictId, number>> = {
  opensInTime: 0,
  nothingOpens: 1,
  cannotBeTold: 2,
  damagedFirst: 3,
};
const HARM_RANK: Readonly<Record<Harm, number>> = { none: 0, possible: 1, certain: 2 };

/** Above 0 where one is the worse. */
export function worseBy(one: EndVerdict, other: EndVerdict): number {
  const byHarm = HARM_RANK[one.harm] - HARM_RANK[other.harm];
  if (byHarm !== 0) return byHarm;
  const byVerdict = VERDICT_RANK[one.verdict] - VERDICT_RANK[other.verdict];
  if (byVerdict !== 0) return byVerdict;
  const excess = ({ worst }: EndVerdict): number => (worst === null ? 0 : worst.clearingC - worst.limitC);
  return excess(one) - excess(other);
}

/** Ends by which current still comes once a device has opened that cuts the cable off from another source. */
export function stillFed(ends: readonly EndVerdict[]): readonly EndVerdict[] {
  const left = ends.filter(({ residualA }) => residualA > NO_A);
  const opensElsewhere = ends.some((one) => !left.includes(one) && one.seeing.length > 0);
  return left.filter(({ end }) => opensElsewhere || end.parallel.length + Math.min(1, end.bare.length) > 1);
}

interface Group {
  /** Devices in series of which any clears. */
  readonly rated: readonly RatedLink[];
  readonly hasUnrated: boolean;
}

function groupOf(links: readonly (RatedLink | null)[]): Group {
  const rated = links.filter((link) => link !== null);
  return { rated, hasUnrated: rated.length < links.length };
}

/** The range of a short with the top cut off where the standard says nothing more of the devices that see it. */
function withinLimits(span: Span, fuses: readonly FaultFuse[]): { span: Span; fuses: FaultFuse[] } | null {
  // the share of the range at which the first device passes its last published point
  let share = 1;
  for (const { family, ratingA, atLowestA, atHighestA } of fuses) {
    const last = fuseTimes(family)?.slowest.at(-1)?.multiple;
    if (last === undefined || atHighestA <= last * ratingA) continue;
    share = Math.min(share, Math.max(0, (last * ratingA - atLowestA) / (atHighestA - atLowestA)));
  }
  if (share === 1) return null;
  const at = (low: number, high: number): number => low + (high - low) * share;
  return {
    span: { lowestA: span.lowestA, highestA: at(span.lowestA, span.highestA) },
    fuses: fuses.map((fuse) => ({ ...fuse, atHighestA: at(fuse.atLowestA, fuse.atHighestA) })),
  };
}

function judgeGroup(
  conductor: FaultConductor,
  currents: EndCurrents,
  end: FedEnd,
  { rated, hasUnrated }: Group,
  span: Span,
): EndVerdict {
  const seeing = rated.map(({ link }) => ({ link, ...currents.ofLink(link) }));
  const scale = currents.conductor.lowestA > 0 ? span.lowestA / currents.conductor.lowestA : 1;
  const fuses = rated.map((link, place): FaultFuse => {
    const { lowestA, highestA } = seeing[place] ?? span;
    const atLowestA = Math.min(lowestA * scale, highestA);
    return { family: familyNameOf(link), ratingA: link.ratingA, atLowestA, atHighestA: highestA };
  });
  const worst = judgeFault({ conductor, ...span, fuses });
  const decides = worst.clearedBy ?? worst.withoutBand[0] ?? 0;
  const width = span.highestA - span.lowestA;
  const along = width > 0 ? (worst.currentA - span.lowestA) / width : 0;
  const { atLowestA = 0, atHighestA = 0 } = fuses[decides] ?? {};
  const found = {
    end,
    worst,
    link: rated[decides]?.link ?? null,
    linkA: atLowestA + (atHighestA - atLowestA) * along,
    seeing,
    withoutLimits: worst.verdict === 'cannotBeTold' && worst.clearedBy === null && worst.withoutBand.length > 0,
    beyondLimits: false,
    residualA: worst.verdict === 'nothingOpens' ? worst.currentA : 0,
  };
  if (rated.length === 0 && hasUnrated) return { ...found, verdict: 'cannotBeTold', harm: 'possible', worst: null };
  const told: EndVerdict = { ...found, verdict: worst.verdict, harm: worst.harm };
  if (worst.verdict !== 'cannotBeTold' || !worst.extrapolated || told.withoutLimits) return told;
  const within = withinLimits(span, fuses);
  if (within === null) return told;
  const published = judgeFault({ conductor, ...within.span, fuses: within.fuses });
  return { ...told, beyondLimits: published.harm === 'none' && published.verdict === 'opensInTime' };
}

/** Devices that must open as well before a group is alone with the short. */
function othersOf(end: FedEnd, group: Group, ends: readonly FedEnd[]): number[] {
  const mine = new Set(group.rated.map(({ link }) => link));
  return ends.flatMap((other) =>
    (other === end ? other.parallel : [...other.series.slice(0, 1), ...other.parallel]).filter(
      (link) => !mine.has(link),
    ),
  );
}

/** Judges every way in which current comes to a cable from one of its ends; the worst of them counts. */
export function judgeEnd(
  facts: Facts,
  both: BothFaults,
  cable: number,
  conductor: FaultConductor,
  end: FedEnd,
  currents: EndCurrents,
  ends: readonly FedEnd[],
): EndVerdict {
  const span = currents.conductor;
  const links = ratedLinks(facts);
  const ratedOf = (indices: readonly number[]): Group => groupOf(indices.map((link) => links[link] ?? null));
  if (end.bare.length > 0) return judgeGroup(conductor, currents, end, groupOf([]), span);
  const ways = end.parallel.length === 0 ? [end.series] : end.parallel.map((link) => [link]);
  const verdicts = ways.map((way): EndVerdict => {
    const group = ratedOf(way);
    const first = judgeGroup(conductor, currents, end, group, span);
    const others = othersOf(end, group, ends);
    const leastA = Math.min(...group.rated.map(({ link, ratingA }) => currents.ofLink(link).lowestA / ratingA));
    if (others.length === 0 || group.rated.length === 0 || leastA >= OPENING_MULTIPLE) return first;
    // too little while another source helps: the others open first, and then all of it comes this way
    const after = afterOpening(facts, both, cable, end, new Set(others));
    if (after === null) return first;
    const carries = after(cable);
    const opens = group.rated.some(
      ({ link, ratingA }) => after(linkEdge(facts.model, link)) >= OPENING_MULTIPLE * ratingA,
    );
    if (!opens) return { ...first, residualA: carries };
    return judgeGroup(conductor, currents, end, group, { ...span, lowestA: Math.min(carries, span.highestA) });
  });
  const [worst, ...rest] = verdicts.toSorted((one, other) => worseBy(other, one));
  if (worst === undefined) return judgeGroup(conductor, currents, end, groupOf([]), span);
  return {
    ...worst,
    seeing: [...worst.seeing, ...rest.flatMap(({ seeing }) => seeing)],
    residualA: Math.max(...verdicts.map(({ residualA }) => residualA)),
  };
}
