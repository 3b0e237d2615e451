/** Likely ways of a cable from place to place: right-angled, along the sills, clear of the column, inside the outline. */
import { boxHolds } from '../../geom/box.ts';
import { between, distance, type Point } from '../../geom/point.ts';
import { polylineLength, segmentsOf } from '../../geom/polyline.ts';
import type { Ground } from './ground.ts';

/** How finely a way is looked at, m. */
const STEP_M = 0.05;
/** What a metre costs beyond its length: outside the outline, through the column, lengthwise through the cabin. */
const OUTSIDE = 30;
const COLUMN = 12;
const ACROSS_CABIN = 4;
/** Over something else that stands there. */
const OVER_FITTING = 6;
const FITTING_M = 0.12;
/** A cable shorter than this goes straight, m. */
const STRAIGHT_M = 0.45;
/** A cable that goes less far along the vehicle than this is not led to a sill for it, m. */
const LEAST_ALONG_M = 0.7;
/** Two points within this are one: no bend there, m. */
const SAME_M = 0.02;

/** Where a way is looked for: the ground, and what stands on it. */
export interface Land {
  readonly ground: Ground;
  readonly taken: readonly Point[];
}

/** What a way costs: its length in metres, and what should be kept clear of. */
export function costOf(points: readonly Point[], { ground, taken }: Land): number {
  const [start, end] = [points[0], points.at(-1)];
  const others = taken.filter((p) => !isNear(p, start) && !isNear(p, end));
  let cost = polylineLength(points);
  for (const [a, b] of segmentsOf(points)) {
    const steps = Math.max(1, Math.ceil(distance(a, b) / STEP_M));
    const stepM = distance(a, b) / steps;
    const isLengthwise = Math.abs(b.xM - a.xM) > Math.abs(b.yM - a.yM);
    for (let step = 0; step < steps; step += 1) {
      const p = between(a, b, (step + 0.5) / steps);
      const over = others.some((other) => distance(other, p) < FITTING_M) ? OVER_FITTING : 0;
      cost += stepM * (over + blame(p, isLengthwise, ground));
    }
  }
  return cost;
}

const isNear = (p: Point, end: Point | undefined): boolean => end !== undefined && distance(p, end) < FITTING_M;

function blame(p: Point, isLengthwise: boolean, ground: Ground): number {
  const outside = ground.holds(p) ? 0 : OUTSIDE;
  const column = ground.column !== null && boxHolds(ground.column, p) ? COLUMN : 0;
  const { cabin } = ground;
  const isInCabin = cabin !== null && p.xM > cabin.fromXM && p.xM < cabin.toXM;
  const isBeside = [-1, 1].some((way) => !ground.holds({ xM: p.xM, yM: p.yM + way * ground.besideM }));
  return outside + column + (isInCabin && isLengthwise && !isBeside ? ACROSS_CABIN : 0);
}

/** Where lengthwise stretches may lie, m: along either sill, or further in where the outline is narrower there. */
function linesAlong(from: Point, to: Point, ground: Ground): number[] {
  const [near, far] = ground.sillsYM;
  return [near, far].map((yM) => {
    const inward = yM === near ? STEP_M : -STEP_M;
    for (let line = yM, tries = 0; tries < 12; line += inward, tries += 1) {
      if ([0, 0.25, 0.5, 0.75, 1].every((t) => ground.holds({ xM: between(from, to, t).xM, yM: line }))) return line;
    }
    return yM;
  });
}

/** The bends of the likeliest way between two places on one side of the firewall. */
export function bendsBetween(from: Point, to: Point, land: Land): Point[] {
  const { ground } = land;
  if (distance(from, to) < STRAIGHT_M) return [];
  const corners: Point[][] = [[{ xM: from.xM, yM: to.yM }], [{ xM: to.xM, yM: from.yM }]];
  const midXM = (from.xM + to.xM) / 2;
  corners.push([
    { xM: midXM, yM: from.yM },
    { xM: midXM, yM: to.yM },
  ]);
  if (Math.abs(to.xM - from.xM) > LEAST_ALONG_M) {
    // off the wall and its pass-through first, so that the cable does not lie along it
    const startXM = leaving(from, to, ground);
    for (const yM of linesAlong(from, to, ground)) {
      corners.push([
        { xM: startXM, yM: from.yM },
        { xM: startXM, yM },
        { xM: to.xM, yM },
      ]);
    }
  }
  return corners
    .map((bends) => ({ bends, cost: costOf([from, ...bends, to], land) }))
    .reduce((best, other) => (other.cost < best.cost - SAME_M ? other : best))
    .bends.filter((bend, index, all) => {
      const before = index === 0 ? from : (all[index - 1] ?? from);
      return distance(before, bend) > SAME_M && distance(bend, to) > SAME_M;
    });
}

/** Where a cable that begins on the firewall turns aside, m. */
function leaving(from: Point, to: Point, { wallXM }: Ground): number {
  if (wallXM === null || Math.abs(from.xM - wallXM) > 0.1) return from.xM;
  return from.xM + Math.sign(to.xM - from.xM) * 0.12;
}
