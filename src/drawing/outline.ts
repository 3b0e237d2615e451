import { growBox } from '../geom/box.ts';
import { firewallXM, sheetBox } from '../plan/outline.ts';
import type { Sheet } from '../plan/schema.ts';
import { benchShapes } from './bench.ts';
import { cropped } from './crop.ts';
import type { OutlineDrawing, Shape, Stroke } from './shapes.ts';
import { fromAbove } from './vehicle/fromAbove.ts';
import { fromSide } from './vehicle/fromSide.ts';
import { ownFromAbove, ownFromSide } from './vehicle/own.ts';

/** Blank sheet round the outline, so that a ground bolt on the edge is not cut off. */
const MARGIN_M = 0.12;
/** How far behind the firewall the bay's pane looks: enough to see a run arrive in the cab. */
const BEHIND_FIREWALL_M = 0.28;

/** Lines as wide as this are those by which a vehicle is known. */
const MAIN_LINE_PX = 2;
const PALE: Stroke = { colour: 'rule', widthPx: 1, dashPx: [6, 5] };

/**
 * The vehicle or the board under the plan. The bounds are those of the part the sheet shows; only a sheet of the whole
 * from above has a bay to look at beside it, and a board has none.
 */
export function drawOutline(sheet: Sheet): OutlineDrawing {
  const bounds = growBox(sheetBox(sheet), MARGIN_M);
  const wallXM = sheet.part === 'whole' && sheet.view === 'above' ? firewallXM(sheet.outline) : null;
  const bayBounds = wallXM === null ? null : { ...bounds, maxXM: wallXM + BEHIND_FIREWALL_M };
  return { shapes: shownOf(sheet), bounds, bayBounds };
}

/** All of the outline; on a sheet of a part that part, and of the rest its main lines, pale, to know where one is. */
function shownOf(sheet: Sheet): Shape[] {
  const shapes = shapesOf(sheet);
  const { minXM, maxXM } = sheetBox(sheet);
  const strip = {
    fromXM: minXM > 0 ? minXM : Number.NEGATIVE_INFINITY,
    toXM: maxXM < sheet.outline.lengthM ? maxXM : Number.POSITIVE_INFINITY,
  };
  if (strip.fromXM === Number.NEGATIVE_INFINITY && strip.toXM === Number.POSITIVE_INFINITY) return shapes;
  return [...shapes.flatMap(paled), ...cropped(shapes, strip)];
}

const paled = (shape: Shape): Shape[] =>
  shape.stroke === null || shape.stroke.widthPx < MAIN_LINE_PX ? [] : [{ ...shape, stroke: PALE, fill: null }];

function shapesOf({ outline, view, mirrored }: Sheet): Shape[] {
  if (outline.kind === 'bench') return benchShapes(outline);
  if (outline.kind === 'own') return view === 'side' ? ownFromSide(outline) : ownFromAbove(outline);
  return view === 'side' ? fromSide(outline) : fromAbove(outline, mirrored);
}
