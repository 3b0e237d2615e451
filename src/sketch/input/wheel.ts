/** What a turn of the wheel means: a mouse wheel and a trackpad's pinch zoom, two fingers on a trackpad pan. */

export interface WheelTurn {
  deltaX: number;
  deltaY: number;
  /** 0 = px, 1 = lines, 2 = pages (WheelEvent.deltaMode). */
  deltaMode: number;
  ctrlKey: boolean;
  shiftKey: boolean;
}

export type WheelMeaning = { kind: 'zoom'; factor: number } | { kind: 'pan'; dxPx: number; dyPx: number };

const PX_PER_LINE = 16;
const PX_PER_PAGE = 400;
/** One notch of an ordinary wheel is 100 to 120 px: a quarter larger. */
const ZOOM_PER_PX = 0.002;
/** A trackpad's pinch reports small turns with ctrlKey set. */
const PINCH_ZOOM_PER_PX = 0.01;
/** A wheel with notches never reports less at once; a trackpad nearly always does. */
const NOTCH_PX = 50;
const MAX_STEP = 2;

/** A notched wheel up by 100 px zooms in by e^0.2 = 1.22. */
export function meaningOfWheel(turn: WheelTurn): WheelMeaning {
  const unit = turn.deltaMode === 1 ? PX_PER_LINE : turn.deltaMode === 2 ? PX_PER_PAGE : 1;
  const [dx, dy] = [turn.deltaX * unit, turn.deltaY * unit];
  if (turn.ctrlKey) return { kind: 'zoom', factor: stepOf(-dy * PINCH_ZOOM_PER_PX) };
  if (turn.shiftKey) return { kind: 'pan', dxPx: dx === 0 ? -dy : -dx, dyPx: dx === 0 ? 0 : -dy };
  const isTrackpad = turn.deltaMode === 0 && (dx !== 0 || Math.abs(dy) < NOTCH_PX);
  return isTrackpad ? { kind: 'pan', dxPx: -dx, dyPx: -dy } : { kind: 'zoom', factor: stepOf(-dy * ZOOM_PER_PX) };
}

const stepOf = (exponent: number) => Math.min(MAX_STEP, Math.max(1 / MAX_STEP, Math.exp(exponent)));
