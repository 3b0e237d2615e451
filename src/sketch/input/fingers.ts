import type { ClientPoint, Device } from './gestures.ts';

export { isPalm } from '../../look/palm.ts';

/** A finger, pen or mouse button that is down. */
export interface Finger {
  readonly pointerId: number;
  readonly device: Device;
  readonly from: ClientPoint;
  at: ClientPoint;
}

export function deviceOf(event: PointerEvent): Device {
  return event.pointerType === 'mouse' || event.pointerType === 'pen' ? event.pointerType : 'touch';
}

export const pointOf = (event: { clientX: number; clientY: number }): ClientPoint => ({
  xPx: event.clientX,
  yPx: event.clientY,
});

export const distancePx = (a: ClientPoint, b: ClientPoint): number => Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx);

/** Middle of the fingers and how far apart the first two are; one finger alone has no spread. */
export function graspOf(fingers: readonly Finger[]): { centre: ClientPoint; spreadPx: number } {
  const [first, second] = fingers;
  if (first === undefined) return { centre: { xPx: 0, yPx: 0 }, spreadPx: 0 };
  if (second === undefined) return { centre: first.at, spreadPx: 0 };
  const centre = { xPx: (first.at.xPx + second.at.xPx) / 2, yPx: (first.at.yPx + second.at.yPx) / 2 };
  return { centre, spreadPx: distancePx(first.at, second.at) };
}
