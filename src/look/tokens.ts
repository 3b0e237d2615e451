/**
 * Type, colour, size and dash, once for page, canvas and paper. look.css declares the colours again as variables, so
 * that the first paint needs no script; a test holds the two together.
 */

export const FONT_FAMILY = "'Atkinson Hyperlegible Next Variable', 'Atkinson Hyperlegible Next', system-ui, sans-serif";

/** Least side of a target, css px; big fingers where the pointer is coarse. */
export const TARGET_PX = 44;
export const TARGET_BIG_PX = 56;

/** Paper theme, and what is printed; look.css has sun and dark: a calm drafting sheet. Each text colour is at least AA on `sheet`, `panel` and `raised`. */
export const COLOURS = {
  /** Under everything. */
  desk: '#e9e6dc',
  /** The drawing sheet. */
  sheet: '#f7f5ee',
  /** Panels beside the sheet. */
  panel: '#f4f2ec',
  /** Fields, plates, what can be pressed. */
  raised: '#fffefa',
  ink: '#1b2226',
  /** Second voice: labels, hints. */
  inkSoft: '#4a5358',
  rule: '#cbc7ba',
  ruleStrong: '#8a8678',
  gridFine: '#e6e2d6',
  gridCoarse: '#d3cebf',
  vehicleFill: '#ece9df',
  vehicleLine: '#a8a496',
  /** What can be acted on, and focus. */
  accent: '#0d5257',
  accentSoft: '#d9e7e5',
  /** Severity: never without its shape and word. */
  stop: '#b0201a',
  stopSoft: '#f9e0dc',
  fix: '#8a5200',
  fixFill: '#f2b632',
  fixSoft: '#faecca',
  note: '#2f5878',
  noteSoft: '#e1eaf0',
  /** Run kinds: trade habit. */
  positive: '#c2231b',
  ground: '#22272a',
  remote: '#1f5fae',
  /** What the vehicle brought along: quiet, as the vehicle is. */
  factory: '#6b6656',
  /** Light edge round every cable, so that it reads over a photo. */
  casing: '#fffefa',
  /** ISO 3864 warning stripe. */
  hazard: '#ffcc00',
  hazardInk: '#14110a',
  selected: '#0d5257',
  symbol: '#1b2226',
  plate: '#fffefa',
  plateLine: '#8a8678',
} as const;

export type ColourName = keyof typeof COLOURS;

/** Dash of each run kind in screen px, so that colour is never the only sign; [] is a full line. */
export const RUN_DASH = {
  power: [],
  ground: [14, 5],
  remote: [3, 6],
  factory: [12, 4, 3, 4],
} as const satisfies Record<'power' | 'ground' | 'remote' | 'factory', readonly number[]>;

/** Stroke of a cable in screen px from its copper area: sqrt, so that thickness follows diameter; 4 px when unknown. */
export function strokePx(areaMm2: number | null): number {
  if (areaMm2 === null) return 4;
  return Math.min(13, Math.max(3, 2 + Math.sqrt(areaMm2)));
}

/** Light edge on either side of a cable, screen px. */
export const CASING_PX = 2.5;
