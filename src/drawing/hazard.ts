import type { Assessment, SourceAnswer } from '../assess/answer.ts';
import { bareBriefs } from '../assess/brief.ts';
import { pointAlong, polylineLength, splitPolyline } from '../geom/polyline.ts';
import { strokePx } from '../look/tokens.ts';
import { runById } from '../plan/byId.ts';
import { runPoints } from '../plan/runs.ts';
import type { Plan, Point, Run } from '../plan/schema.ts';
import { halfPlatePx } from './fittings.ts';
import { flatOf, pointsOfFlat } from './runs.ts';
import type { HazardShape } from './shapes.ts';

/** The stripe is never thinner than this, so that nobody can miss it from afar. */
const STRIPE_MIN_PX = 12;
/** It stands out on either side of the cable it marks. */
const STRIPE_OVER_CABLE_PX = 5;

/** Whether a source feeds the run from its `to` end, so that the stripe starts there. */
function isFedFromTo(plan: Plan, run: Run, source: SourceAnswer | undefined): boolean {
  if (source === undefined) return false;
  const place = source.runIds.indexOf(run.id);
  const before = runById(plan, source.runIds[place - 1] ?? '');
  const comesFrom = before === undefined ? [source.fittingId] : [before.from.fittingId, before.to.fittingId];
  return !comesFrom.includes(run.from.fittingId) && comesFrom.includes(run.to.fittingId);
}

/** The first part of a polyline, as a share of its length. */
function firstPart(points: readonly Point[], share: number): Point[] {
  const cut = pointAlong(points, polylineLength(points) * share);
  if (cut === null || share >= 1) return [...points];
  return splitPolyline(points, cut.segment, cut.point).before;
}

/**
 * The stretches of a sheet that no device protects, one for each run that has one. A length counts cable (slack, rise,
 * tape); on the sheet the same share of the drawn line is striped, beginning at the source.
 */
export function drawHazards(plan: Plan, sheetId: string, answer: Assessment): HazardShape[] {
  return bareBriefs(answer).flatMap((of) => {
    const run = runById(plan, of.runId);
    if (run?.sheetId !== sheetId) return [];
    const source = answer.sources.find(({ runIds }) => runIds.includes(run.id));
    const points = runPoints(plan, run);
    const fromSource = isFedFromTo(plan, run, source) ? points.reverse() : points;
    const share = of.length.lengthM > 0 ? of.unprotectedM / of.length.lengthM : 1;
    return [
      {
        runId: run.id,
        points: flatOf(firstPart(fromSource, share)),
        lengthM: of.unprotectedM,
        widthPx: Math.max(STRIPE_MIN_PX, strokePx(of.areaMm2) + 2 * STRIPE_OVER_CABLE_PX),
      },
    ];
  });
}

/** However near two plates are, this much of the stripe is seen between or over them, screen px. */
const SEEN_MIN_PX = 22;

/** A stripe at one zoom. */
export interface SeenHazard {
  hazard: HazardShape;
  /** The plates at its ends leave it too little room: it lies over them. */
  isCramped: boolean;
}

/**
 * The part of a stripe to draw at a zoom: the ends hide under the plates of its fittings, but never so much that the
 * stripe could be missed. Where the plates meet, its middle lies over them.
 */
export function seenStretch(hazard: HazardShape, pxPerM: number): SeenHazard {
  const points = pointsOfFlat(hazard.points);
  const lengthM = polylineLength(points);
  const halfPlateM = halfPlatePx(pxPerM) / pxPerM;
  const hiddenM = Math.max(0, Math.min(halfPlateM, (lengthM - SEEN_MIN_PX / pxPerM) / 2));
  if (hiddenM === halfPlateM) return { hazard, isCramped: false };
  const tail = pointAlong(points, lengthM - hiddenM);
  const head = pointAlong(points, hiddenM);
  if (hiddenM === 0 || tail === null || head === null) return { hazard, isCramped: true };
  const { before } = splitPolyline(points, tail.segment, tail.point);
  const { after } = splitPolyline(before, head.segment, head.point);
  return { hazard: { ...hazard, points: flatOf(after) }, isCramped: true };
}
