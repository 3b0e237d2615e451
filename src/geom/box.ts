import type { Point } from './point.ts';

/** A rectangle along the axes, m. Sides may be infinite: a half-plane is a box too. */
export interface Box {
  readonly minXM: number;
  readonly minYM: number;
  readonly maxXM: number;
  readonly maxYM: number;
}

/** The least box around the points; null for none. */
export function boundsOf(points: readonly Point[]): Box | null {
  if (points.length === 0) return null;
  let box: Box = { minXM: Infinity, minYM: Infinity, maxXM: -Infinity, maxYM: -Infinity };
  for (const { xM, yM } of points) {
    box = {
      minXM: Math.min(box.minXM, xM),
      minYM: Math.min(box.minYM, yM),
      maxXM: Math.max(box.maxXM, xM),
      maxYM: Math.max(box.maxYM, yM),
    };
  }
  return box;
}

/** Whether p lies in the box, its edges included. */
export const boxHolds = (box: Box, p: Point): boolean =>
  p.xM >= box.minXM && p.xM <= box.maxXM && p.yM >= box.minYM && p.yM <= box.maxYM;

/** The box with a margin added on every side, m. */
export const growBox = (box: Box, marginM: number): Box => ({
  minXM: box.minXM - marginM,
  minYM: box.minYM - marginM,
  maxXM: box.maxXM + marginM,
  maxYM: box.maxYM + marginM,
});

/**
 * Scale and centre that show the whole box in a pane with a margin. A 4 m x 2 m box in 420 x 420 px with 10 px margin:
 * 100 px per metre. A box or pane of no size gives the scale that its other side allows; 1 when neither does.
 */
export function fitBox(
  box: Box,
  pane: { readonly widthPx: number; readonly heightPx: number; readonly marginPx: number },
): { centreXM: number; centreYM: number; pxPerM: number } {
  const scaleOf = (px: number, m: number) => {
    const roomPx = px - 2 * pane.marginPx;
    return m > 0 && roomPx > 0 ? roomPx / m : Infinity;
  };
  const pxPerM = Math.min(scaleOf(pane.widthPx, box.maxXM - box.minXM), scaleOf(pane.heightPx, box.maxYM - box.minYM));
  return {
    centreXM: (box.minXM + box.maxXM) / 2,
    centreYM: (box.minYM + box.maxYM) / 2,
    pxPerM: Number.isFinite(pxPerM) ? pxPerM : 1,
  };
}
