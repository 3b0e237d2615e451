/** A fitting on the sheet: its symbol on a small plate. */
import type { Fitting, Point } from '../plan/schema.ts';
import { roundRect } from './curve.ts';
import type { FittingShape, Shape } from './shapes.ts';
import { blockSymbol, LOCK, SYMBOLS, switchSymbol } from './symbols.ts';

const PLATE: Shape = {
  kind: 'line',
  points: roundRect(-1, -1, 1, 1, 0.28),
  closed: true,
  stroke: { colour: 'plateLine', widthPx: 1.5, dashPx: [] },
  fill: 'plate',
};

/** A plate with what is on it: the same list for all that look alike, so that pens may keep what they make of it. */
const plates = new Map<string, readonly Shape[]>();

function plateOf(fitting: Fitting): readonly Shape[] {
  const state = fitting.kind === 'block' ? fitting.outputs.length : fitting.kind === 'switch' && fitting.closed;
  const look = `${fitting.kind} ${state} ${fitting.locked}`;
  const before = plates.get(look);
  if (before !== undefined) return before;
  const parts = [PLATE, ...symbolOf(fitting), ...(fitting.locked ? LOCK : [])];
  plates.set(look, parts);
  return parts;
}

/** The symbol of a fitting as it stands in the plan: a block with its outputs, a switch open or closed. */
function symbolOf(fitting: Fitting): readonly Shape[] {
  if (fitting.kind === 'block') return blockSymbol(fitting.outputs.length);
  return fitting.kind === 'switch' ? switchSymbol(fitting.closed) : SYMBOLS[fitting.kind];
}

/** A fitting as it is drawn: its symbol on its plate, at the place it has on the sheet. */
export function drawFitting(fitting: Fitting, at: Point = fitting.at): FittingShape {
  return { fittingId: fitting.id, kind: fitting.kind, at, parts: plateOf(fitting) };
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
