/** What stands beside the finger: what it hides, magnified, and the figures of what it changes. */
import type { PaneSize, ScreenPoint } from '../desk/camera.ts';
import { type BesideFinger, besideFinger } from './fingerLayout.ts';
import type { LiveFigure } from './liveFigures.ts';

const WIDTH_PX = 256;
const ROW_PX = 30;

/** How far from the fingertip what it holds may be to be shown magnified, px: further off it is in the other pane. */
const NEAR_PX = 64;

/** Held off its middle, a thing is still shown near the middle of the loupe, px of the sheet. */
const OFF_CENTRE_PX = 14;

/** The finger's place, or as near to it as keeps what is held in the middle of the loupe. */
function nearTo(exact: ScreenPoint, at: ScreenPoint): ScreenPoint {
  const [dx, dy] = [at.xPx - exact.xPx, at.yPx - exact.yPx];
  const share = Math.min(1, OFF_CENTRE_PX / Math.max(1, Math.hypot(dx, dy)));
  return { xPx: exact.xPx + dx * share, yPx: exact.yPx + dy * share };
}

interface AtFinger {
  at: ScreenPoint;
  isMouse: boolean;
  size: PaneSize;
  figures: readonly LiveFigure[];
  note: string | null;
  textScale: number;
  /** Where what is held lies, px of the pane; null when nothing is. */
  exact: ScreenPoint | null;
}

export interface FingerShown {
  figures: readonly LiveFigure[];
  note: string | null;
  widthPx: number;
  places: BesideFinger;
  /** What the loupe magnifies; null where there is none. */
  loupe: { centre: ScreenPoint; exact: ScreenPoint } | null;
}

/** Null where nothing is to be shown. */
export function fingerShown({ at, isMouse, size, figures, note, textScale, exact }: AtFinger): FingerShown | null {
  const rows = figures.length + (note === null ? 0 : 1);
  const isNear = exact !== null && Math.hypot(exact.xPx - at.xPx, exact.yPx - at.yPx) <= NEAR_PX;
  const hasLoupe = !isMouse && isNear;
  if (rows === 0 && !hasLoupe) return null;
  const box = { widthPx: Math.min(size.widthPx, textScale * WIDTH_PX), heightPx: textScale * ROW_PX * rows + 16 };
  const places = besideFinger(at, box, size, { isMouse, hasLoupe });
  const loupe = places.loupe === null || exact === null ? null : { centre: nearTo(exact, at), exact };
  return { figures, note, widthPx: box.widthPx, places, loupe };
}
