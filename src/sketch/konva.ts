/** Konva's stage and layers; what lies on them is painted by our own pen. */
import { Konva } from 'konva/lib/Core';

/** Sharp enough for any screen; a phone's 3 would cost twice the memory and time of 2. */
const MAX_PIXEL_RATIO = 2;

/** Pixels of a canvas to one css px. */
export const PIXEL_RATIO = Math.min(globalThis.devicePixelRatio ?? 1, MAX_PIXEL_RATIO);

Konva.pixelRatio = PIXEL_RATIO;

export { Layer, Shape, Stage } from 'react-konva/lib/ReactKonvaCore';
