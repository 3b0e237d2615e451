import type { HazardShape } from '../../drawing/shapes.ts';
import { strokeWith, traceFlat, type View } from './pen.ts';

/** Width of one dark and one yellow band together, screen px, across the diagonal. */
const TILE_PX = 16;
const EDGE_PX = 3;
const HALO_PX = 7;

const tiles = new Map<string, HTMLCanvasElement>();

/** One tile of diagonal bands, ISO 3864: black on yellow, rising to the right. Twice the size, so that it is sharp. */
function stripeTile(yellow: string, black: string): HTMLCanvasElement {
  const key = `${yellow} ${black}`;
  const known = tiles.get(key);
  if (known !== undefined) return known;
  const side = 2 * TILE_PX;
  const tile = document.createElement('canvas');
  tile.width = side;
  tile.height = side;
  const context = tile.getContext('2d');
  if (context !== null) {
    context.fillStyle = yellow;
    context.fillRect(0, 0, side, side);
    context.strokeStyle = black;
    context.lineWidth = (side / 2) * Math.SQRT1_2;
    context.beginPath();
    // three lines, so that the bands meet those of the next tile
    for (const shift of [-side, 0, side]) {
      context.moveTo(shift - side, 2 * side);
      context.lineTo(shift + 2 * side, -side);
    }
    context.stroke();
  }
  tiles.set(key, tile);
  return tile;
}

const patterns = new Map<HTMLCanvasElement, CanvasPattern>();

/** One pattern of a tile serves every canvas: it is moved to where it is wanted. */
function patternOf(context: CanvasRenderingContext2D, tile: HTMLCanvasElement): CanvasPattern | null {
  const known = patterns.get(tile) ?? context.createPattern(tile, 'repeat');
  if (known !== null) patterns.set(tile, known);
  return known;
}

/** The stretch that nothing protects: black on yellow, held in screen px, over everything else. */
export function paintHazard(context: CanvasRenderingContext2D, hazard: HazardShape, view: View): void {
  const { palette, frame } = view;
  traceFlat(context, hazard.points, frame);
  strokeWith(context, { colour: palette.casing, widthPx: hazard.widthPx + HALO_PX });
  strokeWith(context, { colour: palette.hazardInk, widthPx: hazard.widthPx + EDGE_PX });
  const pattern = patternOf(context, stripeTile(palette.hazard, palette.hazardInk));
  if (pattern === null) return;
  // tied to the start of the stretch: the bands move with the sheet, by whole px so that tiles meet
  const [xM = 0, yM = 0] = hazard.points;
  const [e, f] = [Math.round(xM * frame.scale + frame.x), Math.round(yM * frame.scale + frame.y)];
  pattern.setTransform({ a: 0.5, d: 0.5, e, f });
  strokeWith(context, { colour: pattern, widthPx: hazard.widthPx });
}
