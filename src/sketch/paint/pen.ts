/** The pen of the screen: plain shapes and marks on a canvas, in css px of the pane. */
import type { PaneSize } from '../../desk/camera.ts';
import type { Camera } from '../../desk/desk.ts';
import { halfPlatePx } from '../../drawing/fittings.ts';
import type { Shape, Stroke } from '../../drawing/shapes.ts';
import type { Point } from '../../plan/schema.ts';
import type { Palette } from '../palette.ts';

type Context = CanvasRenderingContext2D;

/** From a drawing's own unit to px: px = value * scale + offset. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** A pane to paint on. */
export interface View {
  /** Of the sheet, in metres. */
  readonly frame: Frame;
  readonly camera: Camera;
  readonly size: PaneSize;
  readonly palette: Palette;
  readonly halfPlatePx: number;
}

export function viewOf(camera: Camera, size: PaneSize, palette: Palette): View {
  const { pxPerM: scale, centreXM, centreYM } = camera;
  const frame = { x: size.widthPx / 2 - centreXM * scale, y: size.heightPx / 2 - centreYM * scale, scale };
  return { frame, camera, size, palette, halfPlatePx: halfPlatePx(scale) };
}

/** How a line is drawn. */
export interface Ink {
  colour: string | CanvasPattern;
  widthPx: number;
  dashPx?: readonly number[];
  cap?: CanvasLineCap;
  join?: CanvasLineJoin;
}

const SOLID: number[] = [];

/** Strokes the path that has been begun. The canvas is left with solid lines, as it was. */
export function strokeWith(context: Context, ink: Ink): void {
  const isDashed = ink.dashPx !== undefined && ink.dashPx.length > 0;
  context.strokeStyle = ink.colour;
  context.lineWidth = ink.widthPx;
  context.lineCap = ink.cap ?? 'butt';
  context.lineJoin = ink.join ?? 'round';
  // the canvas takes a copy
  if (isDashed) context.setLineDash(ink.dashPx as number[]);
  context.stroke();
  if (isDashed) context.setLineDash(SOLID);
}

/** Begins a path along a flat list of points. */
export function traceFlat(context: Context, flat: readonly number[], frame: Frame): void {
  context.beginPath();
  for (let i = 0; i + 1 < flat.length; i += 2) {
    const x = (flat[i] ?? 0) * frame.scale + frame.x;
    const y = (flat[i + 1] ?? 0) * frame.scale + frame.y;
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
}

export function tracePoints(context: Context, points: readonly Point[], frame: Frame): void {
  context.beginPath();
  for (const [index, { xM, yM }] of points.entries()) {
    const [x, y] = [xM * frame.scale + frame.x, yM * frame.scale + frame.y];
    if (index === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
}

/** Begins a circle round a place of the sheet; its radius in px. */
export function traceCircle(context: Context, { xM, yM }: Point, radiusPx: number, { frame }: View): void {
  context.beginPath();
  context.arc(xM * frame.scale + frame.x, yM * frame.scale + frame.y, radiusPx, 0, 2 * Math.PI);
}

export function fillWith(context: Context, colour: string): void {
  context.fillStyle = colour;
  context.fill();
}

const inkOf = (stroke: Stroke, palette: Palette): Ink => ({
  colour: palette[stroke.colour],
  widthPx: stroke.widthPx,
  dashPx: stroke.dashPx,
  cap: 'round',
});

/** One plain shape of the drawing. */
function paintShape(context: Context, shape: Shape, frame: Frame, palette: Palette): void {
  if (shape.kind === 'line') {
    traceFlat(context, shape.points, frame);
    if (shape.closed) context.closePath();
  } else {
    context.beginPath();
    const { x, y, radius } = shape;
    context.arc(x * frame.scale + frame.x, y * frame.scale + frame.y, radius * frame.scale, 0, 2 * Math.PI);
  }
  if (shape.fill !== null) fillWith(context, palette[shape.fill]);
  if (shape.stroke !== null) strokeWith(context, inkOf(shape.stroke, palette));
}

export function paintShapes(context: Context, shapes: readonly Shape[], frame: Frame, palette: Palette): void {
  for (const shape of shapes) paintShape(context, shape, frame, palette);
}
