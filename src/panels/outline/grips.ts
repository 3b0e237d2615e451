/** What a finger takes hold of on an outline, and what it makes of it. */
import { distance, distanceToSegment } from '../../geom/point.ts';
import { sidesOf } from '../../geom/polygon.ts';
import type { OutlineOf, Point } from '../../plan/schema.ts';

type Own = OutlineOf<'own'>;

export type Grip = { kind: 'corner'; index: number } | { kind: 'firewall' } | { kind: 'cargo' };

/** Half of a 56 px and of a 44 px target. */
const CORNER_PX = 28;
const LINE_PX = 22;
/** Corners and lines are put to whole centimetres. */
const STEP_M = 0.01;
/** A line stays this far inside the outline, and from the other. */
const APART_M = 0.1;

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
const stepped = (m: number) => Math.round(Math.round(m / STEP_M) * STEP_M * 1e4) / 1e4;

/** Where the cargo begins, m from the nose; null where there is none. */
export const cargoXM = ({ bayM, cabM }: Own): number | null => (bayM === null || cabM === null ? null : bayM + cabM);

/** The outline with its firewall there; the cargo line stays where it was. Without a firewall there is no cargo. */
export function withFirewall(own: Own, xM: number | null): Own {
  const cargo = cargoXM(own);
  if (xM === null) return { ...own, bayM: null, cabM: null };
  return { ...own, bayM: xM, cabM: cargo === null ? null : stepped(Math.max(APART_M, cargo - xM)) };
}

export function withCargo(own: Own, xM: number | null): Own {
  if (own.bayM === null) return own;
  return { ...own, cabM: xM === null ? null : stepped(Math.max(APART_M, xM - own.bayM)) };
}

export const withCorner = (own: Own, index: number, at: Point): Own => ({
  ...own,
  edge: own.edge.map((corner, place) =>
    place === index ? { xM: stepped(clamp(at.xM, 0, own.lengthM)), yM: stepped(clamp(at.yM, 0, own.widthM)) } : corner,
  ),
});

/** A corner more, behind that one. */
export function withNewCorner(own: Own, index: number, at: Point): Own {
  const edge = [...own.edge.slice(0, index + 1), at, ...own.edge.slice(index + 1)];
  return withCorner({ ...own, edge }, index + 1, at);
}

export const withoutCorner = (own: Own, index: number): Own =>
  own.edge.length <= 3 ? own : { ...own, edge: own.edge.filter((_, place) => place !== index) };

/** What lies under a finger; on the bare edge a new corner, which is part of the outline it answers. */
export function gripAt(own: Own, at: Point, pxPerM: number): { grip: Grip; own: Own } | null {
  const [near] = own.edge
    .map((corner, index) => ({ index, px: distance(corner, at) * pxPerM }))
    .sort((a, b) => a.px - b.px);
  if (near !== undefined && near.px <= CORNER_PX) return { grip: { kind: 'corner', index: near.index }, own };
  const sides = [...sidesOf(own.edge)].map(([a, b], index) => ({ index, px: distanceToSegment(a, b, at) * pxPerM }));
  const [side] = sides.sort((a, b) => a.px - b.px);
  for (const [kind, xM] of [
    ['firewall', own.bayM],
    ['cargo', cargoXM(own)],
  ] as const) {
    const px = xM === null ? Number.POSITIVE_INFINITY : Math.abs(xM - at.xM) * pxPerM;
    // where a line meets the edge the nearer of the two is meant
    if (px <= LINE_PX && px <= (side?.px ?? px)) return { grip: { kind }, own };
  }
  if (side === undefined || side.px > LINE_PX) return null;
  const behind = (side.index - 1 + own.edge.length) % own.edge.length;
  return { grip: { kind: 'corner', index: behind + 1 }, own: withNewCorner(own, behind, at) };
}

/** The outline with what is held brought to a place. */
export function dragged(own: Own, grip: Grip, at: Point): Own {
  if (grip.kind === 'corner') return withCorner(own, grip.index, at);
  const last = own.lengthM - APART_M;
  if (grip.kind === 'cargo') return withCargo(own, stepped(clamp(at.xM, APART_M, last)));
  return withFirewall(own, stepped(clamp(at.xM, APART_M, (cargoXM(own) ?? own.lengthM) - APART_M)));
}
