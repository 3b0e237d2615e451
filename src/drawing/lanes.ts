/**
 * Cables that would lie on one another on the sheet: between the same two fittings, along the same line. Each gets a lane
 * of its own, so that every one is seen and can be taken hold of. Only what is drawn and hit goes by lanes: the plan, its
 * points and its lengths know nothing of them.
 */
import { asideOf } from '../geom/aside.ts';
import { distance } from '../geom/point.ts';
import { simplify } from '../geom/simplify.ts';
import { indexed } from '../plan/byId.ts';
import { runPoints } from '../plan/runs.ts';
import type { Plan, Point, Run } from '../plan/schema.ts';
import { type Chain, chainsInPairs } from './chains.ts';
import { halfPlatePx } from './fittings.ts';

/** From lane to lane, screen px: more than a cable and its edges, and half a finger's target. */
const LANE_PX = 22;

/** Lines that stray no further from each other are one line, m. */
const SAME_M = 0.001;

/** The same while a finger drags: it bends runs and moves fittings, and mostly joins nothing elsewhere. */
const pairsOf = indexed(
  chainsInPairs,
  (one, was) =>
    one.sheetId === was.sheetId &&
    one.from.fittingId === was.from.fittingId &&
    one.to.fittingId === was.to.fittingId &&
    one.from.terminal === was.from.terminal &&
    one.to.terminal === was.to.terminal,
);

interface Line {
  readonly points: readonly Point[];
  readonly chains: Chain[];
}

const isSameLine = (one: readonly Point[], other: readonly Point[]): boolean =>
  one.length === other.length && one.every((at, place) => distance(at, other[place] ?? at) <= SAME_M);

/** The line of a chain without what does not bend it; null where an end is gone, or not on its sheet. */
function lineOf(plan: Plan, chain: Chain): Point[] | null {
  const pieces = chain.flatMap(({ place, isForward }) => {
    const run = plan.runs[place];
    const points = run === undefined ? [] : runPoints(plan, run);
    const isWhole = run !== undefined && points.length === run.bends.length + 2;
    return isWhole ? [isForward ? points : points.reverse()] : [];
  });
  return pieces.length === chain.length ? simplify(pieces.flat(), SAME_M) : null;
}

/** The lines of chains between the same two fittings, those along each in the order of the plan. */
function linesOf(plan: Plan, chains: readonly Chain[]): Line[] {
  const lines: Line[] = [];
  for (const chain of chains) {
    const points = lineOf(plan, chain);
    if (points === null) continue;
    const line = lines.find((one) => isSameLine(one.points, points));
    if (line === undefined) lines.push({ points, chains: [chain] });
    else line.chains.push(chain);
  }
  return lines.filter((line) => line.chains.length > 1);
}

/** Where a run lies that shares its line. */
interface Place {
  /** How many lanes to the right of its line, as seen on its own way. */
  readonly lane: number;
  /** All that share the line, itself among them. */
  readonly runs: readonly Run[];
}

function placesOn(plan: Plan, { chains }: Line): [id: string, place: Place][] {
  const runs = chains.flat().flatMap(({ place }) => plan.runs[place] ?? []);
  // as the first was drawn, so that cables that go on through a pass-through keep their sides there
  const turn = chains[0]?.[0]?.isForward === false ? -1 : 1;
  return chains.flatMap((chain, index) => {
    const lane = turn * (index - (chains.length - 1) / 2);
    return chain.flatMap(({ place, isForward }): [string, Place][] => {
      const id = plan.runs[place]?.id;
      return id === undefined ? [] : [[id, { lane: isForward ? lane : -lane, runs }]];
    });
  });
}

type Lanes = ReadonlyMap<string, Place>;

const NONE: Lanes = new Map();

function workOut(plan: Plan): Lanes {
  const pairs = pairsOf(plan.runs);
  if (pairs.length === 0) return NONE;
  return new Map(pairs.flatMap((chains) => linesOf(plan, chains)).flatMap((line) => placesOn(plan, line)));
}

const known = new WeakMap<Plan, Lanes>();

/** Of the runs that share their line with others, where each lies. */
export function lanesOf(plan: Plan): Lanes {
  const before = known.get(plan);
  if (before !== undefined) return before;
  const lanes = workOut(plan);
  known.set(plan, lanes);
  return lanes;
}

/** Ids of the runs that share a line with one of those. */
export const besideThese = (plan: Plan, ids: readonly string[]): string[] => {
  const lanes = lanesOf(plan);
  return ids.flatMap((id) => lanes.get(id)?.runs ?? []).map(({ id }) => id);
};

/** How wide a lane is on the sheet, and how far from its ends a run has reached it. */
export interface LaneSize {
  readonly laneM: number;
  readonly taperM: number;
}

/** In screen px at every zoom, as cables are: out of the plates they come side by side. */
export const laneSizeAt = (pxPerM: number): LaneSize => ({
  laneM: LANE_PX / pxPerM,
  taperM: halfPlatePx(pxPerM) / pxPerM,
});

/** A run as it is drawn. In a lane it has a point more behind its first and before its last. */
export interface SeenLine {
  readonly points: Point[];
  readonly isInLane: boolean;
}

export function seenLine(plan: Plan, run: Run, { laneM, taperM }: LaneSize): SeenLine {
  const points = runPoints(plan, run);
  const place = lanesOf(plan).get(run.id);
  return place === undefined
    ? { points, isInLane: false }
    : { points: asideOf(points, place.lane * laneM, taperM), isInLane: true };
}
