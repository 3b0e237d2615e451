/** Cables from fitting to fitting, as the sheet shows them: one that a fuse sits in is one cable still. */
import type { Run, TerminalRef } from '../plan/schema.ts';
import { INLINE_KINDS, inlineTerminals } from '../plan/terminals.ts';

/** A run on the way along a chain. */
interface Link {
  /** Its place in the list of runs. */
  readonly place: number;
  /** Along the chain as it was drawn, not against it. */
  readonly isForward: boolean;
}

export type Chain = readonly Link[];

/** Terminals of what sits in a cable: the fitting itself need not be known. */
const INLINE: ReadonlySet<string> = new Set([...INLINE_KINDS].flatMap(inlineTerminals));

/** An end of a run on its sheet, by the fitting it is at. */
interface End extends Link {
  readonly terminal: string;
  /** Where the run leads from here. */
  readonly farId: string;
}

/** What meets at a fitting on a sheet. */
interface Meeting {
  readonly sheetId: string;
  readonly fittingId: string;
  readonly ends: End[];
}

const keyOf = (sheetId: string, fittingId: string): string => `${sheetId}\n${fittingId}`;

function meetingsOf(runs: readonly Run[]): ReadonlyMap<string, Meeting> {
  const meetings = new Map<string, Meeting>();
  const add = (sheetId: string, { fittingId, terminal }: TerminalRef, end: Omit<End, 'terminal'>): void => {
    const key = keyOf(sheetId, fittingId);
    const meeting = meetings.get(key) ?? { sheetId, fittingId, ends: [] };
    meeting.ends.push({ ...end, terminal });
    meetings.set(key, meeting);
  };
  for (const [place, { sheetId, from, to }] of runs.entries()) {
    add(sheetId, from, { place, isForward: true, farId: to.fittingId });
    add(sheetId, to, { place, isForward: false, farId: from.fittingId });
  }
  return meetings;
}

/** Whether a cable goes on through a fitting: two runs of it meet there, from two other fittings. */
const isPassed = ({ ends: [one, other, ...more] }: Meeting): boolean =>
  more.length === 0 &&
  one !== undefined &&
  other !== undefined &&
  one.farId !== other.farId &&
  INLINE.has(one.terminal) &&
  INLINE.has(other.terminal);

/** From a first run on to where the cable ends. */
function chainFrom(
  first: End,
  sheetId: string,
  meetings: ReadonlyMap<string, Meeting>,
): { chain: Chain; endId: string } {
  const chain = [first];
  for (let last = first; ; ) {
    const there = meetings.get(keyOf(sheetId, last.farId));
    const next =
      there !== undefined && isPassed(there) ? there.ends.find(({ place }) => place !== last.place) : undefined;
    if (next === undefined) return { chain, endId: last.farId };
    chain.push(next);
    last = next;
  }
}

/**
 * Chains of one sheet that lead between the same two fittings, where there are two or more: each from the same fitting
 * on, in the order of the plan. A ring of nothing but fuses has no end, and is left out.
 */
export function chainsInPairs(runs: readonly Run[]): readonly (readonly Chain[])[] {
  const meetings = meetingsOf(runs);
  const pairs = new Map<string, Chain[]>();
  for (const [key, meeting] of meetings) {
    if (isPassed(meeting)) continue;
    const { sheetId, fittingId } = meeting;
    for (const first of meeting.ends) {
      const { chain, endId } = chainFrom(first, sheetId, meetings);
      // found from either end: told once, from the one that is named first
      if (fittingId >= endId) continue;
      const pair = pairs.get(keyOf(key, endId)) ?? [];
      pair.push(chain);
      pairs.set(keyOf(key, endId), pair);
    }
  }
  return [...pairs.values()].filter(({ length }) => length > 1);
}
