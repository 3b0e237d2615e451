/** Two runs at an inline fitting, seen as the one cable they are; and a cable cut in two. */

import { distanceToSegment } from '../../geom/point.ts';
import { nearestOnPolyline, splitPolyline } from '../../geom/polyline.ts';
import { fittingById, runsAt } from '../byId.ts';
import { roundPoint } from '../round.ts';
import { placeOn } from '../runs.ts';
import type { Fitting, Plan, Point, Run, TerminalRef } from '../schema.ts';
import { INLINE_KINDS } from '../terminals.ts';

/** A fitting that strays no more than this from the straight line leaves no bend behind. */
const STRAIGHT_WITHIN_M = 0.001;

/** A cable from the far end of one run, through a fitting, to the far end of the other. */
export interface Cable {
  readonly from: TerminalRef;
  readonly to: TerminalRef;
  /** Both ends included; the fitting only where the cable bends at it. */
  readonly points: readonly Point[];
}

/** An inline fitting that sits in a cable, between its two runs. */
export interface InCable {
  readonly fitting: Fitting;
  readonly first: Run;
  readonly second: Run;
}

/** The fitting with its two runs; null where it is no inline fitting, has not exactly two, or anything is locked. */
export function freeInCable(plan: Plan, id: string): InCable | null {
  const fitting = fittingById(plan, id);
  const [first, second, ...others] = runsAt(plan, id);
  if (fitting === undefined || !INLINE_KINDS.has(fitting.kind) || fitting.locked || others.length > 0) return null;
  if (first === undefined || second === undefined || first.locked || second.locked) return null;
  return { fitting, first, second };
}

/** The cable that two runs of one sheet make at a fitting; null when one of them has both ends there, or an end is gone. */
export function cableThrough(plan: Plan, fitting: Fitting, first: Run, second: Run): Cable | null {
  if (first.sheetId !== second.sheetId) return null;
  const [one, other] = [wayTo(plan, first, fitting.id), wayTo(plan, second, fitting.id)];
  if (one === null || other === null) return null;
  const [before, after] = [one.points.at(-1), other.points.at(-1)];
  if (before === undefined || after === undefined) return null;
  const isStraight = distanceToSegment(before, after, fitting.at) <= STRAIGHT_WITHIN_M;
  const bend = isStraight ? [] : [fitting.at];
  return { from: one.far, to: other.far, points: [...one.points, ...bend, ...other.points.toReversed()] };
}

/** A run as it leads to the fitting, from its far end, the fitting itself left out: its own direction does not matter. */
function wayTo(plan: Plan, run: Run, fittingId: string): { far: TerminalRef; points: Point[] } | null {
  const endsHere = run.to.fittingId === fittingId;
  if (endsHere === (run.from.fittingId === fittingId)) return null;
  const far = endsHere ? run.from : run.to;
  const end = fittingById(plan, far.fittingId);
  const start = end === undefined ? null : placeOn(end, run.sheetId);
  if (start === null) return null;
  return { far, points: [start, ...(endsHere ? run.bends : run.bends.toReversed())] };
}

/** A polyline in two at the point of it nearest to a place; both parts hold that point. */
export interface Cut {
  readonly at: Point;
  readonly before: readonly Point[];
  readonly after: readonly Point[];
}

/** Cuts there, to 0.1 mm. A bend at that very point gives way: the fitting stands in its place. */
export function cutNearest(points: readonly Point[], place: Point): Cut | null {
  const nearest = nearestOnPolyline(points, place);
  if (nearest === null || points.length < 2) return null;
  const at = roundPoint(nearest.point);
  const bend = points.findIndex(({ xM, yM }) => xM === at.xM && yM === at.yM);
  if (bend !== -1) return { at, before: points.slice(0, bend + 1), after: points.slice(bend) };
  return { at, ...splitPolyline(points, nearest.segment, at) };
}

export const bendsOf = (points: readonly Point[]): Point[] => points.slice(1, -1);
