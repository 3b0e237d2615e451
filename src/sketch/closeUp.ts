/** What the nearer pane looks at: where the feed begins, from source to fuse. */

import type { Bounds, OutlineDrawing } from '../drawing/shapes.ts';
import { boxHolds } from '../geom/box.ts';
import { placeOn } from '../plan/runs.ts';
import type { FittingKind, Plan, Point, Sheet } from '../plan/schema.ts';
import { firstStretches, type Stretch } from './stretches.ts';

export interface CloseUp {
  /** 'source': no source is in the engine bay. */
  of: 'bay' | 'source';
  bounds: Bounds;
  /** From the sources to what first protects, the vehicle's own first; none as long as nothing does. */
  stretches: readonly Stretch[];
}

/** Where a feed begins. */
const BEGINS: ReadonlySet<FittingKind> = new Set(['battery', 'jumpPost', 'takeOff']);

/** A source that is moved a little leaves the pane where it looks, m. */
const STEP_M = 0.5;

/**
 * The engine bay, as long as a feed begins there or nowhere yet; else as much of the vehicle round the first source. Null
 * where the sheet has nothing to look at from nearer. A stretch that is there says where the feed begins.
 */
export function closeUpOf(plan: Plan, sheet: Sheet, { bounds, bayBounds }: OutlineDrawing): CloseUp | null {
  if (bayBounds === null) return null;
  const sources = plan.fittings.filter(({ kind }) => BEGINS.has(kind));
  const stretches = sheet.outline.kind === 'vehicle' ? firstStretches(plan, sources, sheet.id) : [];
  const [main] = stretches;
  const places = main === undefined ? sources.flatMap((one) => placeOn(one, sheet.id) ?? []) : [main.from];
  const [first] = places;
  if (first === undefined || places.some((at) => boxHolds(bayBounds, at))) {
    return { of: 'bay', bounds: bayBounds, stretches };
  }
  const widthM = bayBounds.maxXM - bayBounds.minXM;
  const wished = Math.round(first.xM / STEP_M) * STEP_M - widthM / 2;
  const minXM = Math.max(bounds.minXM, Math.min(bounds.maxXM - widthM, wished));
  return { of: 'source', bounds: { ...bayBounds, minXM, maxXM: minXM + widthM }, stretches };
}

const isSamePlace = (one: Point | null | undefined, other: Point | null | undefined): boolean =>
  one?.xM === other?.xM && one?.yM === other?.yM;

/** Whether both look at the same. */
export const looksAlike = (one: CloseUp | null, other: CloseUp | null): boolean =>
  one?.of === other?.of &&
  one?.bounds.minXM === other?.bounds.minXM &&
  one?.bounds.maxXM === other?.bounds.maxXM &&
  one?.bounds.maxYM === other?.bounds.maxYM &&
  one?.stretches.length === other?.stretches.length &&
  (one?.stretches ?? []).every(({ from, to, on }, index) => {
    const that = other?.stretches[index];
    return isSamePlace(from, that?.from) && isSamePlace(to, that?.to) && isSamePlace(on, that?.on);
  });
