import { useEffect, useRef } from 'react';
import type { ScreenPoint } from '../desk/camera.ts';
import { LOUPE_PX } from './fingerLayout.ts';
import type { Palette } from './palette.ts';

/** How much larger than on the sheet. */
const ZOOM = 2;
/** As sharp as the sheet's own canvases are at most. */
const MAX_PIXEL_RATIO = 2;
const CROSS_PX = 16;

interface LoupeProps {
  /** The pane's surface, which holds the canvases. */
  surface: HTMLElement;
  /** Middle of what is magnified, and the exact place of what is held; px of the pane. */
  centre: ScreenPoint;
  exact: ScreenPoint;
  leftPx: number;
  topPx: number;
  palette: Palette;
}

/** What the finger hides, above it: the sheet under the fingertip, twice as large, with a cross at the exact place. */
export function Loupe({ surface, centre, exact, leftPx, topPx, palette }: LoupeProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const ratio = Math.min(globalThis.devicePixelRatio ?? 1, MAX_PIXEL_RATIO);
  const latest = useRef({ centre, exact, palette });
  latest.current = { centre, exact, palette };

  useEffect(() => {
    let frame = 0;
    const draw = () => {
      const context = canvas.current?.getContext('2d');
      if (context) paint(context, surface, latest.current, ratio);
      // the layers paint in a frame of their own, so the loupe looks at them in each
      frame = requestAnimationFrame(draw);
    };
    draw();
    return () => cancelAnimationFrame(frame);
  }, [surface, ratio]);

  return (
    <div
      className="sketch-loupe"
      aria-hidden="true"
      style={{ width: LOUPE_PX, height: LOUPE_PX, transform: `translate(${leftPx}px, ${topPx}px)` }}
    >
      <canvas ref={canvas} width={LOUPE_PX * ratio} height={LOUPE_PX * ratio} />
    </div>
  );
}

function paint(
  context: CanvasRenderingContext2D,
  surface: HTMLElement,
  { centre, exact, palette }: Pick<LoupeProps, 'centre' | 'exact' | 'palette'>,
  ratio: number,
): void {
  const sidePx = LOUPE_PX / ZOOM;
  const [left, top] = [centre.xPx - sidePx / 2, centre.yPx - sidePx / 2];
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.fillStyle = palette.sheet;
  context.fillRect(0, 0, LOUPE_PX, LOUPE_PX);
  for (const layer of surface.querySelectorAll('canvas')) {
    const scale = layer.width / Math.max(1, layer.clientWidth);
    const side = sidePx * scale;
    context.drawImage(layer, left * scale, top * scale, side, side, 0, 0, LOUPE_PX, LOUPE_PX);
  }
  drawCross(context, (exact.xPx - left) * ZOOM, (exact.yPx - top) * ZOOM, palette);
}

/** Light under dark, so that it is seen on any ground; open in the middle, so that it hides nothing. */
function drawCross(context: CanvasRenderingContext2D, x: number, y: number, palette: Palette): void {
  for (const [colour, width] of [
    [palette.raised, 5],
    [palette.ink, 2],
  ] as const) {
    context.beginPath();
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      context.moveTo(x + dx * 4, y + dy * 4);
      context.lineTo(x + dx * CROSS_PX, y + dy * CROSS_PX);
    }
    context.strokeStyle = colour;
    context.lineWidth = width;
    context.stroke();
  }
}
