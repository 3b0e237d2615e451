/**
 * A drawing surface that accepts every call and draws nothing.
 *
 * happy-dom has no canvas and answers null from getContext, at which Konva fails while it makes its first
 * layer. Tests of the DOM projects look at the node tree and at what was asked for, never at pixels.
 */
const IMAGE_DATA_CHANNELS = 4;

function blankImage(width: number, height: number): ImageData {
  const data = new Uint8ClampedArray(width * height * IMAGE_DATA_CHANNELS);
  return { data, width, height, colorSpace: 'srgb' };
}

function stubContext(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const kept = new Map<string | symbol, unknown>([
    ['canvas', canvas],
    ['measureText', (text: string) => ({ width: text.length * 8, actualBoundingBoxAscent: 8 })],
    ['getImageData', (_x: number, _y: number, width: number, height: number) => blankImage(width, height)],
    ['createImageData', blankImage],
    ['createPattern', () => ({ setTransform: () => undefined })],
    ['createLinearGradient', () => ({ addColorStop: () => undefined })],
  ]);
  return new Proxy({} as CanvasRenderingContext2D, {
    get: (_target, name) => (kept.has(name) ? kept.get(name) : () => undefined),
    set: (_target, name, value) => {
      kept.set(name, value);
      return true;
    },
  });
}

const contexts = new WeakMap<HTMLCanvasElement, CanvasRenderingContext2D>();

Object.defineProperty(HTMLCanvasElement.prototype, 'getContext', {
  configurable: true,
  value(this: HTMLCanvasElement, kind: string) {
    if (kind !== '2d') return null;
    const known = contexts.get(this) ?? stubContext(this);
    contexts.set(this, known);
    return known;
  },
});
