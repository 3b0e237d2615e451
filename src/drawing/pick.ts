/** What a finger can get hold of, and which of it a touch means. */
import { distance, type Point } from '../geom/point.ts';
import { nearestOnPolyline } from '../geom/polyline.ts';
import { placeOn } from '../plan/runs.ts';
import type { Plan, TerminalRef } from '../plan/schema.ts';
import { terminalsOf } from '../plan/terminals.ts';
import { halfPlatePx } from './fittings.ts';
import { laneSizeAt, type SeenLine, seenLine } from './lanes.ts';

export type Target =
  /** A fitting whose only terminal is meant without asking. */
  | { kind: 'terminal'; ref: TerminalRef; at: Point }
  | { kind: 'fitting'; fittingId: string; at: Point }
  | { kind: 'bend'; runId: string; index: number; at: Point }
  /** Along the line as which it is seen. */
  | ({ kind: 'run'; runId: string } & SeenLine);

export type Picked =
  | Exclude<Target, { kind: 'run' }>
  /** `segment` counts from the first terminal; `at` is the nearest point of the run as it is seen. */
  | { kind: 'run'; runId: string; segment: number; at: Point };

/** Reach of a finger's centre, css px: half of a 44 px or a 56 px target. */
export const REACH_PX = 22;
export const REACH_BIG_PX = 28;

/** Earlier wins when two are equally near. */
const ORDER: readonly Target['kind'][] = ['terminal', 'fitting', 'bend', 'run'];
/** A run passes under everything that stands on it, so it gives way to a thing by this much. */
const RUN_GIVES_WAY_PX = 8;
/** Two distances within this are the same to a finger. */
const SAME_PX = 0.5;

/** The targets of one sheet at a zoom. When a run is being drawn, fittings with a single terminal are that terminal. */
export function targetsOf(plan: Plan, sheetId: string, meansTerminals: boolean, pxPerM: number): Target[] {
  const fittings = plan.fittings.flatMap((fitting): Target[] => {
    const at = placeOn(fitting, sheetId);
    if (at === null) return [];
    const [only, ...others] = terminalsOf(fitting);
    if (meansTerminals && only !== undefined && others.length === 0) {
      return [{ kind: 'terminal', ref: { fittingId: fitting.id, terminal: only }, at }];
    }
    return [{ kind: 'fitting', fittingId: fitting.id, at }];
  });
  const laneSize = laneSizeAt(pxPerM);
  const runs = plan.runs
    .filter((run) => run.sheetId === sheetId)
    .flatMap((run): Target[] => {
      const seen = seenLine(plan, run, laneSize);
      const places = seen.isInLane ? seen.points.slice(2, -2) : run.bends;
      return [
        ...places.map((at, index): Target => ({ kind: 'bend', runId: run.id, index, at })),
        { kind: 'run', runId: run.id, ...seen },
      ];
    });
  return [...fittings, ...runs];
}

/** The segment of the run itself: in a lane its first and last have one more each, towards the plates. */
const segmentOf = ({ points, isInLane }: SeenLine, segment: number): number =>
  isInLane ? Math.max(0, Math.min(points.length - 4, segment - 1)) : segment;

/** How near a target is, css px from its edge, and what would be got hold of; null when it is out of reach. */
function reach(target: Target, p: Point, pxPerM: number, reachPx: number): { picked: Picked; scorePx: number } | null {
  if (target.kind === 'run') {
    const near = nearestOnPolyline(target.points, p);
    const px = near === null ? Number.POSITIVE_INFINITY : near.distanceM * pxPerM;
    if (near === null || px > reachPx) return null;
    const segment = segmentOf(target, near.segment);
    const picked: Picked = { kind: 'run', runId: target.runId, segment, at: near.point };
    return { picked, scorePx: px + RUN_GIVES_WAY_PX };
  }
  const px = distance(target.at, p) * pxPerM;
  const edgePx = Math.max(0, px - (target.kind === 'bend' ? 0 : halfPlatePx(pxPerM)));
  // a plate may be larger than the reach: all of what is seen can be got hold of
  if (px > reachPx && edgePx > 0) return null;
  return { picked: target, scorePx: target.kind === 'bend' ? Math.max(0, px - reachPx / 2) : edgePx };
}

/**
 * The nearest target within reach of a point of the sheet; ties go to terminal, fitting, bend, run. Null when the
 * touch is on nothing. The reach is in css px, so that it is the same at every zoom.
 */
export function pick(targets: readonly Target[], p: Point, pxPerM: number, reachPx: number): Picked | null {
  let best: { picked: Picked; scorePx: number } | null = null;
  for (const kind of ORDER) {
    for (const target of targets) {
      if (target.kind !== kind) continue;
      const found = reach(target, p, pxPerM, reachPx);
      if (found === null) continue;
      if (best === null || found.scorePx < best.scorePx - SAME_PX || isNearerCentre(found, best, p)) best = found;
    }
  }
  return best?.picked ?? null;
}

/** Of two plates under the finger, the one whose middle is nearer. */
function isNearerCentre(
  a: { picked: Picked; scorePx: number },
  b: { picked: Picked; scorePx: number },
  p: Point,
): boolean {
  return (
    a.picked.kind === b.picked.kind &&
    Math.abs(a.scorePx - b.scorePx) <= SAME_PX &&
    distance(a.picked.at, p) < distance(b.picked.at, p)
  );
}
