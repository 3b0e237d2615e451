/**
 * Symbols after IEC 60617 where it has one: battery (cell, long line positive), fuse, frame or chassis ground,
 * amplifier, circuit breaker (a cross at the fixed contact), make contact worked by hand or by a coil, capacitor,
 * generator (G in a circle), converter (a box parted by a slant, d.c. on either side), lamp for any load, bus bar with
 * terminals, terminal (a ring). Ours: a ring in a line for a pass-through, a bar with taps for a block, a tapered piece
 * for a reducer. Coordinates in half plates: -1 to 1 about the fitting's place, y downward.
 */
import type { FittingKind } from '../plan/schema.ts';
import type { Shape, Stroke } from './shapes.ts';

const LINE: Stroke = { colour: 'symbol', widthPx: 2, dashPx: [] };
const THICK: Stroke = { ...LINE, widthPx: 3 };
const BAR: Stroke = { ...LINE, widthPx: 4 };
const FINE: Stroke = { ...LINE, widthPx: 1.5 };
/** What moves together. */
const LINKED: Stroke = { ...FINE, dashPx: [3, 2] };

const line = (points: readonly number[], stroke: Stroke = LINE): Shape => ({
  kind: 'line',
  points,
  closed: false,
  stroke,
  fill: null,
});
const box = (points: readonly number[]): Shape => ({ kind: 'line', points, closed: true, stroke: LINE, fill: null });
const rect = (x0: number, y0: number, x1: number, y1: number): Shape => box([x0, y0, x1, y0, x1, y1, x0, y1]);
const ring = (x: number, y: number, radius: number, stroke: Stroke = LINE): Shape => ({
  kind: 'circle',
  x,
  y,
  radius,
  stroke,
  fill: null,
});
const dot = (x: number, y: number, radius: number): Shape => ({
  kind: 'circle',
  x,
  y,
  radius,
  stroke: null,
  fill: 'symbol',
});

/** The sign of the positive side, so that the posts are told apart without knowing the symbol. */
const plus = (x: number, y: number, half = 0.14): Shape[] => [
  line([x, y - half, x, y + half], FINE),
  line([x - half, y, x + half, y], FINE),
];
/** What goes in on the left and comes out on the right of something between -half and half. */
const leads = (half: number, y = 0): Shape[] => [line([-0.82, y, -half, y]), line([half, y, 0.82, y])];
/** Direct current: a full line over a broken one. */
const direct = (x: number, y: number): Shape[] => [
  line([x - 0.17, y - 0.07, x + 0.17, y - 0.07], FINE),
  line([x - 0.17, y + 0.07, x + 0.17, y + 0.07], { ...FINE, dashPx: [2, 2] }),
];

const CONTACT = 0.4;
/** A make contact, hinged on the right; its middle is where whatever works it takes hold. */
const contact = (isClosed: boolean, y: number): Shape[] => [
  ...leads(CONTACT, y),
  line(isClosed ? [CONTACT, y, -CONTACT, y] : [CONTACT, y, -0.32, y - 0.4]),
  dot(CONTACT, y, 0.07),
];

/** A switch worked by hand, as it stands in the plan. */
export function switchSymbol(isClosed: boolean): readonly Shape[] {
  const y = 0.24;
  const blade = isClosed ? y : y - 0.2;
  return [
    ...contact(isClosed, y),
    dot(-CONTACT, y, 0.07),
    line([0, blade, 0, -0.5], LINKED),
    line([-0.2, -0.5, 0.2, -0.5], THICK),
  ];
}

/** A bar with one tap for each output, at most as many as can be told apart. */
export function blockSymbol(outputs: number): readonly Shape[] {
  const taps = Math.min(outputs, 5);
  const heights = Array.from({ length: taps }, (_, tap) => (taps === 1 ? 0 : -0.52 + (1.04 * tap) / (taps - 1)));
  return [
    line([-0.74, 0, -0.24, 0]),
    line([-0.24, -0.6, -0.24, 0.6], BAR),
    ...heights.map((y) => line([-0.24, y, 0.62, y])),
    ...heights.map((y) => dot(0.68, y, 0.08)),
  ];
}

/** The letter G, drawn: an arc from its upper tip round to the right, and the bar inwards. */
function letterG(radius: number): Shape {
  const arc = Array.from({ length: 13 }, (_, step) => {
    const angle = ((-50 - (step * 310) / 12) * Math.PI) / 180;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  return line([...arc.flat(), radius * 0.25, 0]);
}

/** A padlock in the corner of the plate: what is locked does not move. */
export const LOCK: readonly Shape[] = [
  { kind: 'line', points: [0.5, 0.62, 0.88, 0.62, 0.88, 0.9, 0.5, 0.9], closed: true, stroke: null, fill: 'symbol' },
  line([0.58, 0.62, 0.58, 0.5, 0.64, 0.42, 0.74, 0.42, 0.8, 0.5, 0.8, 0.62], FINE),
];

const BREAKER_X = 0.13;

/** How each kind is drawn, without its plate; block and switch as they come new. */
export const SYMBOLS: Readonly<Record<FittingKind, readonly Shape[]>> = {
  battery: [
    line([-0.72, 0, -0.42, 0]),
    line([-0.42, -0.5, -0.42, 0.5]),
    line([-0.14, -0.24, -0.14, 0.24], BAR),
    line([0.14, -0.5, 0.14, 0.5]),
    line([0.42, -0.24, 0.42, 0.24], BAR),
    line([0.42, 0, 0.72, 0]),
    ...plus(-0.72, -0.38),
  ],
  fuse: [rect(-0.5, -0.24, 0.5, 0.24), line([-0.82, 0, 0.82, 0])],
  passThrough: [...leads(0.34), ring(0, 0, 0.34, THICK), dot(0, 0, 0.1)],
  block: blockSymbol(3),
  amplifier: [box([-0.46, -0.56, 0.58, 0, -0.46, 0.56]), line([-0.82, 0, -0.46, 0]), line([0.58, 0, 0.82, 0])],
  ground: [
    line([0, -0.66, 0, -0.06]),
    line([-0.56, -0.06, 0.56, -0.06], THICK),
    // frame or chassis: slanted strokes below the line
    line([-0.5, -0.06, -0.68, 0.42]),
    line([0, -0.06, -0.18, 0.42]),
    line([0.5, -0.06, 0.32, 0.42]),
  ],
  breaker: [
    ...contact(false, 0.14),
    line([-CONTACT - BREAKER_X, 0.14 - BREAKER_X, -CONTACT + BREAKER_X, 0.14 + BREAKER_X]),
    line([-CONTACT - BREAKER_X, 0.14 + BREAKER_X, -CONTACT + BREAKER_X, 0.14 - BREAKER_X]),
  ],
  bus: [
    line([-0.76, 0, 0.76, 0], { ...LINE, widthPx: 5 }),
    ...[-0.5, 0, 0.5].map((x) => line([x, 0, x, -0.34])),
    ...[-0.5, 0, 0.5].map((x) => ring(x, -0.46, 0.12)),
  ],
  reducer: [
    line([-0.84, 0, -0.3, 0], { ...LINE, widthPx: 6 }),
    box([-0.3, -0.34, 0.34, -0.12, 0.34, 0.12, -0.3, 0.34]),
    line([0.34, 0, 0.84, 0]),
  ],
  load: [ring(0, 0, 0.46), line([-0.325, -0.325, 0.325, 0.325]), line([-0.325, 0.325, 0.325, -0.325]), ...leads(0.46)],
  alternator: [ring(0, 0, 0.6), letterG(0.28), line([-0.86, 0, -0.6, 0]), ...plus(-0.74, -0.36, 0.12)],
  jumpPost: [
    ring(0, -0.22, 0.36, THICK),
    ...plus(0, -0.22, 0.16),
    line([0, 0.14, 0, 0.56]),
    line([-0.44, 0.56, 0.44, 0.56], THICK),
  ],
  takeOff: [rect(-0.6, -0.2, 0.08, 0.2), line([-0.86, 0, 0.36, 0]), ring(0.56, 0, 0.2, THICK)],
  charger: [
    rect(-0.52, -0.52, 0.52, 0.52),
    line([-0.52, 0.52, 0.52, -0.52]),
    ...direct(-0.24, -0.28),
    ...direct(0.24, 0.28),
    ...leads(0.52),
  ],
  relay: [...contact(false, -0.2), line([0, -0.4, 0, 0.3], LINKED), rect(-0.34, 0.3, 0.34, 0.66)],
  switch: switchSymbol(true),
  // our own: the cable, and an arrow off the sheet
  continuation: [line([-0.82, 0, 0, 0]), box([0, -0.4, 0.6, 0, 0, 0.4])],
  capacitor: [
    line([-0.14, -0.5, -0.14, 0.5], THICK),
    line([0.14, -0.5, 0.14, 0.5], THICK),
    ...leads(0.14),
    ...plus(-0.5, -0.36),
  ],
};
