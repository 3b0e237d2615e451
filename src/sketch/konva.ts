/** Konva with only the shapes that are drawn; a shape not listed here fails at run time, not when it is built. */
import { Konva } from 'konva/lib/Core';
import 'konva/lib/shapes/Circle';
import 'konva/lib/shapes/Line';

/** Sharp enough for any screen; a phone's 3 would cost twice the memory and time of 2. */
const MAX_PIXEL_RATIO = 2;

Konva.pixelRatio = Math.min(globalThis.devicePixelRatio ?? 1, MAX_PIXEL_RATIO);

export { Circle, Group, Layer, Line, Shape, Stage } from 'react-konva/lib/ReactKonvaCore';
