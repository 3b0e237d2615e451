/** What the nearer pane looks at: where the feed begins, from source to fuse. */

import type { Bounds, OutlineDrawing } from '../drawing/shapes.ts';
import { boxHolds } from '../geom/box.ts';
import { placeOn } from '../plan/runs.ts';
import type { FittingKind, Plan, Sheet } from '../plan/schema.ts';

export interface CloseUp {
  /** 'source': no source is in the engine bay. */
  of: 'bay' | 'source';
  bounds: Bounds;
}

/** Where a feed begins. */
const BEGINS: ReadonlySet<FittingKind> = new Set(['battery', 'jumpPost', 'takeOff']);

/** A source that is moved a little leaves the pane where it looks, m. */
const STEP_M = 0.5;

/**
 * The engine bay, as long as a feed begins there or nowhere yet; else as much of the vehicle round the first source. Null
 * where the sheet has nothing to look at from nearer.
 */
export function closeUpOf(plan: Plan, sheet: Sheet, { bounds, bayBounds }: OutlineDrawing): CloseUp | null {
  if (bayBounds === null) return null;
  const places = plan.fittings.flatMap((one) => (BEGINS.has(one.kind) ? (placeOn(one, sheet.id) ?? []) : []));
  const [first] = places;
  if (first === undefined || places.some((at) => boxHolds(bayBounds, at))) return { of: 'bay', bounds: bayBounds };
  const widthM = bayBounds.maxXM - bayBounds.minXM;
  const wished = Math.round(first.xM / STEP_M) * STEP_M - widthM / 2;
  const minXM = Math.max(bounds.minXM, Math.min(bounds.maxXM - widthM, wished));
  return { of: 'source', bounds: { ...bayBounds, minXM, maxXM: minXM + widthM } };
}

/** Whether both look at the same. */
export const looksAlike = (one: CloseUp | null, other: CloseUp | null): boolean =>
  one?.of === other?.of &&
  one?.bounds.minXM === other?.bounds.minXM &&
  one?.bounds.maxXM === other?.bounds.maxXM &&
  one?.bounds.maxYM === other?.bounds.maxYM;
