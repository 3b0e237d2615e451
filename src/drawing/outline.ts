import { growBox } from '../geom/box.ts';
import { firewallXM, sheetBox } from '../plan/outline.ts';
import type { Sheet } from '../plan/schema.ts';
import { benchShapes } from './bench.ts';
import type { OutlineDrawing, Shape } from './shapes.ts';
import { fromAbove } from './vehicle/fromAbove.ts';
import { fromSide } from './vehicle/fromSide.ts';
import { ownFromAbove, ownFromSide } from './vehicle/own.ts';

/** Blank sheet round the outline, so that a ground bolt on the edge is not cut off. */
const MARGIN_M = 0.12;
/** How far behind the firewall the bay's pane looks: enough to see a run arrive in the cab. */
const BEHIND_FIREWALL_M = 0.28;

/**
 * The vehicle or the board under the plan. The bounds are those of the part the sheet shows; only a sheet of the whole
 * from above has a bay to look at beside it, and a board has none.
 */
export function drawOutline(sheet: Sheet): OutlineDrawing {
  const bounds = growBox(sheetBox(sheet), MARGIN_M);
  const wallXM = sheet.part === 'whole' && sheet.view === 'above' ? firewallXM(sheet.outline) : null;
  const bayBounds = wallXM === null ? null : { ...bounds, maxXM: wallXM + BEHIND_FIREWALL_M };
  return { shapes: shapesOf(sheet), bounds, bayBounds };
}

function shapesOf({ outline, view, mirrored }: Sheet): Shape[] {
  if (outline.kind === 'bench') return benchShapes(outline);
  if (outline.kind === 'own') return view === 'side' ? ownFromSide(outline) : ownFromAbove(outline);
  return view === 'side' ? fromSide(outline) : fromAbove(outline, mirrored);
}
