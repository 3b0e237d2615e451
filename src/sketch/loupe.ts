/** What the finger hides, above it: the sheet under the fingertip, twice as large, with a cross at the exact place. */
import type { ScreenPoint } from '../desk/camera.ts';
import { LOUPE_PX } from './fingerLayout.ts';
import { PIXEL_RATIO } from './konva.ts';
import type { Palette } from './palette.ts';

/** How much larger than on the sheet. */
const ZOOM = 2;
const CROSS_PX = 16;

interface Looked {
  /** Middle of what is magnified, and the exact place of what is held; px of the pane. */
  centre: ScreenPoint;
  exact: ScreenPoint;
  palette: Palette;
}

export class Loupe {
  readonly #element = document.createElement('div');
  readonly #canvas = document.createElement('canvas');
  #looked: Looked | null = null;
  #frame = 0;

  /** `surface`: the pane's, which holds the canvases. */
  constructor(
    private readonly host: HTMLElement,
    private readonly surface: HTMLElement,
  ) {
    this.#element.className = 'sketch-loupe';
    this.#element.setAttribute('aria-hidden', 'true');
    this.#element.style.width = `${LOUPE_PX}px`;
    this.#element.style.height = `${LOUPE_PX}px`;
    this.#canvas.width = LOUPE_PX * PIXEL_RATIO;
    this.#canvas.height = LOUPE_PX * PIXEL_RATIO;
    this.#element.append(this.#canvas);
  }

  show({ leftPx, topPx }: { leftPx: number; topPx: number }, looked: Looked): void {
    const wasHidden = this.#looked === null;
    this.#looked = looked;
    this.#element.style.transform = `translate(${leftPx}px, ${topPx}px)`;
    if (!wasHidden) return;
    this.host.append(this.#element);
    this.#draw();
  }

  hide(): void {
    if (this.#looked === null) return;
    this.#looked = null;
    cancelAnimationFrame(this.#frame);
    this.#element.remove();
  }

  #draw = (): void => {
    if (this.#looked === null) return;
    const context = this.#canvas.getContext('2d');
    if (context) paint(context, this.surface, this.#looked, PIXEL_RATIO);
    // the layers paint in a frame of their own, so the loupe looks at them in each
    this.#frame = requestAnimationFrame(this.#draw);
  };
}

function paint(
  context: CanvasRenderingContext2D,
  surface: HTMLElement,
  { centre, exact, palette }: Looked,
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
