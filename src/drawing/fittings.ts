/**
 * Symbols on small plates, after IEC 60617 where it has one: battery (cell, long line positive), fuse, frame or
 * chassis ground, amplifier. A pass-through is a ring in a line, a distribution block a bar with taps (ours).
 * Coordinates in half plates: -1 to 1 about the fitting's place, y downward.
 */
import type { Fitting, FittingKind } from '../plan/schema.ts';
import { roundRect } from './curve.ts';
import type { FittingShape, Shape, Stroke } from './shapes.ts';

const THICK: Stroke = { colour: 'symbol', widthPx: 3, dashPx: [] };
const LINE: Stroke = { colour: 'symbol', widthPx: 2, dashPx: [] };
const PLATE_EDGE: Stroke = { colour: 'plateLine', widthPx: 1.5, dashPx: [] };

const line = (points: readonly number[], stroke: Stroke = LINE): Shape => ({
  kind: 'line',
  points,
  closed: false,
  stroke,
  fill: null,
});
const box = (points: readonly number[], fill: Shape['fill'] = null): Shape => ({
  kind: 'line',
  points,
  closed: true,
  stroke: LINE,
  fill,
});

const BATTERY: readonly Shape[] = [
  line([-0.72, 0, -0.42, 0]),
  line([-0.42, -0.5, -0.42, 0.5]),
  line([-0.14, -0.24, -0.14, 0.24], { ...THICK, widthPx: 4 }),
  line([0.14, -0.5, 0.14, 0.5]),
  line([0.42, -0.24, 0.42, 0.24], { ...THICK, widthPx: 4 }),
  line([0.42, 0, 0.72, 0]),
  // the sign of the long line, so that the posts are told apart without knowing the symbol
  line([-0.72, -0.52, -0.72, -0.24], { ...LINE, widthPx: 1.5 }),
  line([-0.86, -0.38, -0.58, -0.38], { ...LINE, widthPx: 1.5 }),
];

const FUSE: readonly Shape[] = [box([-0.5, -0.24, 0.5, -0.24, 0.5, 0.24, -0.5, 0.24]), line([-0.82, 0, 0.82, 0])];

const PASS_THROUGH: readonly Shape[] = [
  line([-0.82, 0, -0.34, 0]),
  line([0.34, 0, 0.82, 0]),
  { kind: 'circle', x: 0, y: 0, radius: 0.34, stroke: { ...THICK, widthPx: 3 }, fill: null },
  { kind: 'circle', x: 0, y: 0, radius: 0.1, stroke: null, fill: 'symbol' },
];

const AMPLIFIER: readonly Shape[] = [
  box([-0.46, -0.56, 0.58, 0, -0.46, 0.56]),
  line([-0.82, 0, -0.46, 0]),
  line([0.58, 0, 0.82, 0]),
];

const GROUND: readonly Shape[] = [
  line([0, -0.66, 0, -0.06]),
  line([-0.56, -0.06, 0.56, -0.06], THICK),
  // frame or chassis: slanted strokes below the line
  line([-0.5, -0.06, -0.68, 0.42]),
  line([0, -0.06, -0.18, 0.42]),
  line([0.5, -0.06, 0.32, 0.42]),
];

/** A bar with one tap for each output, at most as many as can be told apart. */
function block(outputs: number): readonly Shape[] {
  const taps = Math.min(outputs, 5);
  return [
    line([-0.74, 0, -0.24, 0]),
    line([-0.24, -0.6, -0.24, 0.6], { ...THICK, widthPx: 4 }),
    ...Array.from({ length: taps }, (_, tap) => {
      const y = taps === 1 ? 0 : -0.52 + (1.04 * tap) / (taps - 1);
      return line([-0.24, y, 0.62, y]);
    }),
    ...Array.from({ length: taps }, (_, tap): Shape => {
      const y = taps === 1 ? 0 : -0.52 + (1.04 * tap) / (taps - 1);
      return { kind: 'circle', x: 0.68, y, radius: 0.08, stroke: null, fill: 'symbol' };
    }),
  ];
}

/** The symbol of a kind, without its plate. */
export function symbolOf(kind: FittingKind, outputs = 3): readonly Shape[] {
  switch (kind) {
    case 'battery':
      return BATTERY;
    case 'fuse':
      return FUSE;
    case 'passThrough':
      return PASS_THROUGH;
    case 'block':
      return block(outputs);
    case 'amplifier':
      return AMPLIFIER;
    case 'ground':
      return GROUND;
  }
}

const PLATE: Shape = {
  kind: 'line',
  points: roundRect(-1, -1, 1, 1, 0.28),
  closed: true,
  stroke: PLATE_EDGE,
  fill: 'plate',
};

/** A fitting as it is drawn: its symbol on its plate. */
export function drawFitting(fitting: Fitting): FittingShape {
  const outputs = fitting.kind === 'block' ? fitting.outputs.length : 0;
  return {
    fittingId: fitting.id,
    kind: fitting.kind,
    at: fitting.at,
    parts: [PLATE, ...symbolOf(fitting.kind, outputs)],
  };
}

/** Side of a plate of ordinary size, metres: about a fuse holder. */
const PLATE_M = 0.2;
const PLATE_MIN_PX = 22;
const PLATE_MAX_PX = 52;

/**
 * Half the side of a plate, screen px: real size within bounds, so that a symbol can be read from afar and does not
 * cover its surroundings from near. At 200 px/m: 20.
 */
export function halfPlatePx(pxPerM: number): number {
  return Math.min(PLATE_MAX_PX, Math.max(PLATE_MIN_PX, PLATE_M * pxPerM)) / 2;
}
