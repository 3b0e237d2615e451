/** Symbols on their plates: each kind is painted once for a size, and is then a small picture laid where it stands. */
import type { FittingShape } from '../../drawing/shapes.ts';
import { PIXEL_RATIO as RATIO } from '../konva.ts';
import type { Palette } from '../palette.ts';
import { paintShapes, type View } from './pen.ts';

/** Of what is proposed: pale, and legible still. */
export const GHOST_OPACITY = 0.72;

/** Round a plate, for the width of its edge, px. */
const MARGIN_PX = 2;

/** At some sizes and in some colours. */
type Pictures = Map<number, { readonly palette: Palette; readonly canvas: HTMLCanvasElement }>;

/** Zooms at which a kind is kept: of two panes, and of the thumb-sized pictures. */
const MOST_SCALES = 4;

const known = new WeakMap<FittingShape['parts'], Pictures>();

function pictureOf(parts: FittingShape['parts'], { palette, halfPlatePx }: View): HTMLCanvasElement {
  const pictures: Pictures = known.get(parts) ?? new Map();
  known.set(parts, pictures);
  const before = pictures.get(halfPlatePx);
  if (before?.palette === palette) return before.canvas;
  if (pictures.size >= MOST_SCALES) pictures.clear();
  const canvas = document.createElement('canvas');
  const radius = halfPlatePx + MARGIN_PX;
  canvas.width = canvas.height = Math.ceil(2 * radius * RATIO);
  const context = canvas.getContext('2d');
  context?.scale(RATIO, RATIO);
  if (context !== null) paintShapes(context, parts, { x: radius, y: radius, scale: halfPlatePx }, palette);
  pictures.set(halfPlatePx, { palette, canvas });
  return canvas;
}

/** At a size of their own that the zoom changes only within bounds. */
export function paintFittings(context: CanvasRenderingContext2D, fittings: readonly FittingShape[], view: View): void {
  const { frame, halfPlatePx } = view;
  // on whole pixels of the screen, so that a picture is as sharp as it was painted
  const whole = (px: number): number => Math.round((px - halfPlatePx - MARGIN_PX) * RATIO) / RATIO;
  for (const { at, parts, isProposed } of fittings) {
    const picture = pictureOf(parts, view);
    const [x, y] = [whole(at.xM * frame.scale + frame.x), whole(at.yM * frame.scale + frame.y)];
    context.globalAlpha = isProposed === true ? GHOST_OPACITY : 1;
    context.drawImage(picture, x, y, picture.width / RATIO, picture.height / RATIO);
  }
  context.globalAlpha = 1;
}
