import type { Context } from 'konva/lib/Context';
import { type PaneSize, toScreen } from '../../desk/camera.ts';
import type { Camera } from '../../desk/desk.ts';
import type { HazardShape } from '../../drawing/shapes.ts';
import { Shape } from '../konva.ts';
import type { Palette } from '../palette.ts';

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

function trace(context: Context, flatPx: readonly number[]): void {
  context.beginPath();
  for (let i = 0; i + 1 < flatPx.length; i += 2) {
    const [x = 0, y = 0] = [flatPx[i], flatPx[i + 1]];
    if (i === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
}

function strokeWith(context: Context, style: string | CanvasPattern, widthPx: number): void {
  context.setAttr('strokeStyle', style);
  context.setAttr('lineWidth', widthPx);
  context.stroke();
}

/** The stretch that nothing protects: black on yellow, held in screen px, over everything else. */
export function Hazard(props: { hazard: HazardShape; camera: Camera; size: PaneSize; palette: Palette }) {
  const { hazard, camera, size, palette } = props;
  const flatPx = hazard.points.flatMap((xM, index) => {
    if (index % 2 === 1) return [];
    const point = toScreen(camera, size, { xM, yM: hazard.points[index + 1] ?? 0 });
    return [point.xPx, point.yPx];
  });
  return (
    <Shape
      name={`hazard ${hazard.runId}`}
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context) => {
        context.setAttr('lineJoin', 'round');
        context.setAttr('lineCap', 'butt');
        trace(context, flatPx);
        strokeWith(context, palette.casing, hazard.widthPx + HALO_PX);
        strokeWith(context, palette.hazardInk, hazard.widthPx + EDGE_PX);
        const pattern = context._context.createPattern(stripeTile(palette.hazard, palette.hazardInk), 'repeat');
        if (pattern === null) return;
        // tied to the start of the stretch: the bands move with the sheet, by whole px so that tiles meet
        pattern.setTransform({ a: 0.5, d: 0.5, e: Math.round(flatPx[0] ?? 0), f: Math.round(flatPx[1] ?? 0) });
        strokeWith(context, pattern, hazard.widthPx);
      }}
    />
  );
}
