import * as v from 'valibot';
import { mirroredOutline } from '../ownOutline.ts';
import { roundPoint } from '../round.ts';
import { type Plan, type Point, pointSchema } from '../schema.ts';

/**
 * Turns a sheet from left- to right-hand drive or back: everything drawn on it changes sides, the edge of an outline
 * of one's own and locked things too, since no length changes. Pictures stay as they were taken.
 */
export function mirrorSheet(plan: Plan, sheetId: string): Plan {
  const sheet = plan.sheets.find(({ id }) => id === sheetId);
  if (sheet === undefined) return plan;
  let everyPointFits = true;
  const flip = ({ xM, yM }: Point): Point => {
    const point = roundPoint({ xM, yM: sheet.outline.widthM - yM });
    // a point at the very bound, far outside any vehicle, would leave it
    everyPointFits &&= v.is(pointSchema, point);
    return point;
  };
  // a view from the side shows the same heights whichever side the wheel is on
  const flips = sheet.view === 'above';
  const onSheet = <T extends { sheetId: string }>(items: T[], change: (item: T) => T): T[] =>
    items.map((item) => (flips && item.sheetId === sheetId ? change(item) : item));
  const mirrored: Plan = {
    ...plan,
    sheets: plan.sheets.map((other) =>
      other === sheet ? { ...sheet, outline: mirroredOutline(sheet.outline), mirrored: !sheet.mirrored } : other,
    ),
    fittings: onSheet(plan.fittings, (fitting) => ({ ...fitting, at: flip(fitting.at) })).map((fitting) =>
      flips && fitting.kind === 'continuation' && fitting.other.sheetId === sheetId
        ? { ...fitting, other: { sheetId, at: flip(fitting.other.at) } }
        : fitting,
    ),
    runs: onSheet(plan.runs, (run) => ({ ...run, bends: run.bends.map(flip) })),
    areas: onSheet(plan.areas, (area) => ({ ...area, outline: area.outline.map(flip) })),
    ties: onSheet(plan.ties, (tie) => ({ ...tie, at: flip(tie.at) })),
    mounts: onSheet(plan.mounts, (mount) => ({ ...mount, at: flip(mount.at) })),
  };
  return everyPointFits ? mirrored : plan;
}
