import type { Outline, Sheet } from '../plan/schema.ts';
import { benchShapes } from './bench.ts';
import type { Bounds, OutlineDrawing } from './shapes.ts';
import { vanShapes } from './van.ts';

/** Blank sheet round the outline, so that a ground bolt on the edge is not cut off. */
const MARGIN_M = 0.12;
/** How far behind the firewall the bay's pane looks: enough to see a run arrive in the cab. */
const BEHIND_FIREWALL_M = 0.28;

function boundsOf(x1: number, y1: number): Bounds {
  return { minXM: -MARGIN_M, minYM: -MARGIN_M, maxXM: x1 + MARGIN_M, maxYM: y1 + MARGIN_M };
}

/** The vehicle or the board under the plan. A board has no bay of its own. */
export function drawOutline(sheet: Sheet): OutlineDrawing {
  const outline: Outline = sheet.outline;
  const bounds = boundsOf(outline.lengthM, outline.widthM);
  if (outline.kind === 'bench') return { shapes: benchShapes(outline), bounds, bayBounds: null };
  const { bayM } = outline;
  return {
    shapes: outline.kind === 'own' ? [] : vanShapes(outline, sheet.mirrored),
    bounds,
    bayBounds: bayM === null ? null : { ...bounds, maxXM: bayM + BEHIND_FIREWALL_M },
  };
}
