/** How the two panes share the room: beside each other, one above the other, or one at a time. */
import type { PaneSize } from '../desk/camera.ts';
import type { Bounds, OutlineDrawing } from '../drawing/shapes.ts';

export type Arrangement = 'beside' | 'stacked' | 'single';

/** Narrower or lower than this, two panes are two postage stamps. */
const SINGLE_BELOW_PX = 560;
/** No pane becomes narrower or lower than this part of the room. */
const LEAST_SHARE = 0.3;
/** Beside the whole vehicle the bay never takes more than this. */
const BAY_BESIDE_MOST = 0.38;
/** The bay's pane is there to magnify: a stacked one that hardly does is put beside instead. */
const LEAST_MAGNIFIED = 1.35;
const BESIDE_FROM_ASPECT = 1.25;

const aspectOf = ({ minXM, minYM, maxXM, maxYM }: Bounds): number => (maxXM - minXM) / (maxYM - minYM);

/** The part of the room's height that is left for the bay below the whole vehicle. */
const stackedShare = (size: PaneSize, whole: Bounds): number =>
  Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, 1 - size.widthPx / aspectOf(whole) / size.heightPx));

/** How much larger than the whole vehicle the bay would be, one above the other. */
function magnifiedStacked(size: PaneSize, whole: Bounds, bay: Bounds): number {
  const share = stackedShare(size, whole);
  const scale = (bounds: Bounds, heightPx: number) =>
    Math.min(size.widthPx / (bounds.maxXM - bounds.minXM), heightPx / (bounds.maxYM - bounds.minYM));
  return scale(bay, size.heightPx * share) / scale(whole, size.heightPx * (1 - share));
}

/** Chosen so that the whole is as large as it can be while the bay is clearly larger. */
export function arrangementFor(size: PaneSize, { bounds, bayBounds }: OutlineDrawing): Arrangement {
  const aspect = size.widthPx / Math.max(1, size.heightPx);
  // a wide and low room, such as a phone held sideways, still takes two panes beside each other
  if (bayBounds === null || size.widthPx < SINGLE_BELOW_PX) return 'single';
  if (aspect >= BESIDE_FROM_ASPECT) return 'beside';
  if (size.heightPx < SINGLE_BELOW_PX) return 'single';
  return magnifiedStacked(size, bounds, bayBounds) >= LEAST_MAGNIFIED ? 'stacked' : 'beside';
}

/** The bay's part of the room, 0 to 1, along the side on which the panes share it. */
export function bayShare(arrangement: Arrangement, size: PaneSize, { bounds, bayBounds }: OutlineDrawing): number {
  if (bayBounds === null || size.widthPx === 0 || size.heightPx === 0) return 0;
  if (arrangement === 'stacked') return stackedShare(size, bounds);
  const asHighAsRoom = (size.heightPx * aspectOf(bayBounds)) / size.widthPx;
  return Math.min(BAY_BESIDE_MOST, Math.max(LEAST_SHARE, asHighAsRoom));
}
