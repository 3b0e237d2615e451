/** An outline drawn by the user: its edge as it was drawn, its firewall and its cargo line across it. */
import { outlineRegions } from '../../plan/outline.ts';
import type { OutlineOf } from '../../plan/schema.ts';
import type { Shape } from '../shapes.ts';
import { area, EDGE, FINE, line, WALL } from './pens.ts';

export function ownFromAbove(own: OutlineOf<'own'>): Shape[] {
  const edge = own.edge.flatMap(({ xM, yM }) => [xM, yM]);
  const walls = outlineRegions(own)
    .slice(1)
    .flatMap(({ zone, fromXM }) =>
      across(own, fromXM).map((points) => line(points, zone === 'cabin' ? WALL : { ...FINE, widthPx: 2 })),
    );
  return [area(edge, null, 'vehicleFill'), ...walls, area(edge, EDGE, null)];
}

/** From the side only its measures are known: a box, and where the firewall and the cargo are. */
export function ownFromSide(own: OutlineOf<'own'>): Shape[] {
  const { lengthM: l, heightM: h } = own;
  const edge = [0, 0, l, 0, l, h, 0, h];
  const walls = outlineRegions(own)
    .slice(1)
    .map(({ zone, fromXM }) => line([fromXM, 0, fromXM, h], zone === 'cabin' ? WALL : FINE));
  return [area(edge, null, 'vehicleFill'), ...walls, area(edge, EDGE, null)];
}

/** The parts of the line at x that lie inside the edge. */
function across({ edge }: OutlineOf<'own'>, x: number): number[][] {
  const ys = edge
    .flatMap((a, index) => {
      const b = edge[(index + 1) % edge.length] ?? a;
      if (a.xM <= x === b.xM <= x) return [];
      return [a.yM + ((x - a.xM) / (b.xM - a.xM)) * (b.yM - a.yM)];
    })
    .sort((a, b) => a - b);
  return Array.from({ length: Math.floor(ys.length / 2) }, (_, i) => [x, ys[2 * i] ?? 0, x, ys[2 * i + 1] ?? 0]);
}
