/** Pens of the outlines: soft grey and few, so that cables stand out on them. */
import type { OutlineOf } from '../../plan/schema.ts';
import { mirrorY } from '../curve.ts';
import type { Shape, Stroke } from '../shapes.ts';

export type Vehicle = OutlineOf<'vehicle'>;

export const EDGE: Stroke = { colour: 'vehicleLine', widthPx: 2, dashPx: [] };
export const FINE: Stroke = { colour: 'vehicleLine', widthPx: 1, dashPx: [] };
export const RIB: Stroke = { colour: 'rule', widthPx: 1, dashPx: [] };
/** The firewall is what a cable must be led through: the one strong line of the outline. */
export const WALL: Stroke = { colour: 'ruleStrong', widthPx: 4, dashPx: [] };

export const line = (points: readonly number[], stroke: Stroke): Shape => ({
  kind: 'line',
  points,
  closed: false,
  stroke,
  fill: null,
});

export const area = (points: readonly number[], stroke: Stroke | null, fill: Shape['fill']): Shape => ({
  kind: 'line',
  points,
  closed: true,
  stroke,
  fill,
});

/** What is drawn once on either side of the middle line. */
export const onBothSides = (points: readonly number[], widthM: number): readonly number[][] => [
  [...points],
  mirrorY(points, widthM),
];

/** Half of a shape, from the middle line to the middle line along y = 0, closed by its mirror image. */
export function closedHalf(half: readonly number[], widthM: number): number[] {
  const other = mirrorY(half, widthM);
  const back = Array.from({ length: other.length / 2 }, (_, i) => other.slice(2 * i, 2 * i + 2)).reverse();
  return [...half, ...back.flat()];
}
