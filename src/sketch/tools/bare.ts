import { halfPlatePx } from '../../drawing/fittings.ts';
import { distance } from '../../geom/point.ts';
import { nearestOnPolyline } from '../../geom/polyline.ts';
import { placeOn, runPoints } from '../../plan/runs.ts';
import type { Plan } from '../../plan/schema.ts';
import type { Aim } from './workbench.ts';

/** Further off than any finger reaches, css px. */
const CLEAR_PX = 32;

/** Whether a finger at that place is surely beside everything it could take hold of. */
export function isBare(plan: Plan, sheetId: string, { at, pxPerM }: Aim): boolean {
  const clearM = CLEAR_PX / pxPerM;
  const isClearOf = (distanceM: number | undefined) => distanceM === undefined || distanceM > clearM;
  return (
    plan.fittings.every((fitting) => {
      const place = placeOn(fitting, sheetId);
      return place === null || isClearOf(distance(place, at) - halfPlatePx(pxPerM) / pxPerM);
    }) &&
    plan.runs.every(
      (run) => run.sheetId !== sheetId || isClearOf(nearestOnPolyline(runPoints(plan, run), at)?.distanceM),
    )
  );
}
