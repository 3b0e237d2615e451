/** Where loupe and live figures stand beside a finger: clear of it and of the hand below, inside the pane, never over one another. */
import type { PaneSize, ScreenPoint } from '../desk/camera.ts';

/** Across, px: large enough to see a terminal and what is round it. */
export const LOUPE_PX = 124;
/** Clear of a fingertip and of the hand below it, px. */
const OFF_FINGER_PX = 64;
const OFF_MOUSE_PX = 28;
/** The loupe is round, so that it may stand nearer. */
const OFF_LOUPE_PX = 40;
const GAP_PX = 8;
const EDGE_PX = 4;

interface Box {
  leftPx: number;
  topPx: number;
}

interface Sized {
  widthPx: number;
  heightPx: number;
}

export interface BesideFinger {
  loupe: Box | null;
  figures: Box;
}

const within = (value: number, length: number, room: number) =>
  Math.max(EDGE_PX, Math.min(room - length - EDGE_PX, value));

/** Moved sideways into the pane; up and down it stays where it was meant to be. */
function centred(at: ScreenPoint, { widthPx }: Sized, size: PaneSize): number {
  return within(at.xPx - widthPx / 2, widthPx, size.widthPx);
}

const fits = (topPx: number, heightPx: number, size: PaneSize) =>
  topPx >= EDGE_PX && topPx + heightPx <= size.heightPx - EDGE_PX;

/** Figures alone: above, below near the top edge. */
function figuresAlone(at: ScreenPoint, figures: Sized, size: PaneSize, offPx: number): Box {
  const abovePx = at.yPx - offPx - figures.heightPx;
  const topPx = abovePx >= EDGE_PX ? abovePx : within(at.yPx + offPx, figures.heightPx, size.heightPx);
  return { leftPx: centred(at, figures, size), topPx };
}

/** Beside the loupe where the pane is wide enough, on whichever side has more room; null where it is not. */
function besideLoupe(loupe: Box, figures: Sized, size: PaneSize): Box | null {
  const rightPx = loupe.leftPx + LOUPE_PX + GAP_PX;
  const leftPx = loupe.leftPx - GAP_PX - figures.widthPx;
  const topPx = within(loupe.topPx, figures.heightPx, size.heightPx);
  if (rightPx + figures.widthPx <= size.widthPx - EDGE_PX) return { leftPx: rightPx, topPx };
  return leftPx >= EDGE_PX ? { leftPx, topPx } : null;
}

/** Beyond the loupe as seen from the finger, else on the other side of the finger, else at the far end of the pane. */
function pastLoupe(at: ScreenPoint, loupe: Box, figures: Sized, size: PaneSize, isAbove: boolean): Box {
  const leftPx = centred(at, figures, size);
  const beyondPx = isAbove ? loupe.topPx - GAP_PX - figures.heightPx : loupe.topPx + LOUPE_PX + GAP_PX;
  if (fits(beyondPx, figures.heightPx, size)) return { leftPx, topPx: beyondPx };
  const acrossPx = isAbove ? at.yPx + OFF_FINGER_PX : at.yPx - OFF_FINGER_PX - figures.heightPx;
  if (fits(acrossPx, figures.heightPx, size)) return { leftPx, topPx: acrossPx };
  return { leftPx, topPx: isAbove ? Math.max(EDGE_PX, size.heightPx - figures.heightPx - EDGE_PX) : EDGE_PX };
}

/** Places for both, px of the pane. `figures` of no height are not there and need no room. */
export function besideFinger(
  at: ScreenPoint,
  figures: Sized,
  size: PaneSize,
  { isMouse, hasLoupe }: { isMouse: boolean; hasLoupe: boolean },
): BesideFinger {
  const isRoomy = Math.min(size.widthPx, size.heightPx) >= LOUPE_PX + 2 * EDGE_PX;
  if (!hasLoupe || !isRoomy) {
    return { loupe: null, figures: figuresAlone(at, figures, size, isMouse ? OFF_MOUSE_PX : OFF_FINGER_PX) };
  }
  const abovePx = at.yPx - OFF_LOUPE_PX - LOUPE_PX;
  const isAbove = abovePx >= EDGE_PX;
  const topPx = isAbove ? abovePx : within(at.yPx + OFF_LOUPE_PX, LOUPE_PX, size.heightPx);
  const loupe = { leftPx: centred(at, { widthPx: LOUPE_PX, heightPx: LOUPE_PX }, size), topPx };
  return { loupe, figures: besideLoupe(loupe, figures, size) ?? pastLoupe(at, loupe, figures, size, isAbove) };
}
