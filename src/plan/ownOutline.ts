/** An outline that the user draws: how one begins, and what is wrong with one. */
import { crossingShare, sidesOf } from '../geom/polygon.ts';
import { firewallXM, outlineBox } from './outline.ts';
import { roundPoint } from './round.ts';
import type { Outline, OutlineOf, Point } from './schema.ts';

type Own = OutlineOf<'own'>;

/** What an outline of no height, such as a board, gets until it is told, m. */
const NO_HEIGHT_M = 1.2;

/** The outline as one to draw on: its own edge where it has one, else the rectangle round it. */
export function ownFrom(outline: Outline): Own {
  if (outline.kind === 'own') return outline;
  const { lengthM, widthM } = outline;
  const { minXM, minYM, maxXM, maxYM } = outlineBox(outline);
  const edge = [
    { xM: minXM, yM: minYM },
    { xM: maxXM, yM: minYM },
    { xM: maxXM, yM: maxYM },
    { xM: minXM, yM: maxYM },
  ];
  const heightM = outline.kind === 'bench' ? NO_HEIGHT_M : outline.heightM;
  const cabM = outline.kind === 'bench' ? null : outline.cabM;
  return { kind: 'own', lengthM, widthM, heightM, edge, bayM: firewallXM(outline), cabM };
}

/** The outline stretched to another length and width: corners go with it, the firewall and the cargo line stay. */
export function stretched(own: Own, lengthM: number, widthM: number): Own {
  const [x, y] = [lengthM / own.lengthM, widthM / own.widthM];
  return { ...own, lengthM, widthM, edge: own.edge.map(({ xM, yM }) => ({ xM: xM * x, yM: yM * y })) };
}

/** The outline as in a mirror: an edge that was drawn changes sides; all others are alike on either side. */
export function mirroredOutline(outline: Outline): Outline {
  if (outline.kind !== 'own') return outline;
  const edge = outline.edge.map(({ xM, yM }) => roundPoint({ xM, yM: outline.widthM - yM }));
  return { ...outline, edge };
}

export type OwnFault = 'crosses' | 'bayTooLong';

/** Why it cannot be used; null when it can. */
export function ownFault({ edge, lengthM, bayM, cabM }: Own): OwnFault | null {
  if (crossesItself(edge)) return 'crosses';
  return (bayM ?? 0) + (cabM ?? 0) >= lengthM ? 'bayTooLong' : null;
}

/** Whether two sides that are not neighbours meet, or a side comes back over its neighbour, or has no length. */
export function crossesItself(edge: readonly Point[]): boolean {
  const sides = [...sidesOf(edge)];
  return sides.some(([a, b], index) => {
    if (a.xM === b.xM && a.yM === b.yM) return true;
    return sides.some(([c, d], other) => {
      if (other <= index) return false;
      const isNext = other === index + 1 || (index === 0 && other === sides.length - 1);
      return isNext ? foldsBack(index === 0 && other !== 1 ? [c, d, b] : [a, b, d]) : meet(a, b, c, d);
    });
  });
}

/** Two sides at a corner that lie over one another. */
function foldsBack([from, corner, to]: readonly [Point, Point, Point]): boolean {
  const [ux, uy] = [from.xM - corner.xM, from.yM - corner.yM];
  const [vx, vy] = [to.xM - corner.xM, to.yM - corner.yM];
  return ux * vy - uy * vx === 0 && ux * vx + uy * vy > 0;
}

function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  const share = crossingShare(a, b, [c, d]);
  if (share !== null) return share >= 0 && share <= 1;
  // parallel: they meet where they lie on one line and overlap
  const isOnLine = (p: Point) => (b.xM - a.xM) * (p.yM - a.yM) === (b.yM - a.yM) * (p.xM - a.xM);
  if (!isOnLine(c)) return false;
  const along = (p: Point) => (p.xM - a.xM) * (b.xM - a.xM) + (p.yM - a.yM) * (b.yM - a.yM);
  const [low, high] = [Math.min(along(c), along(d)), Math.max(along(c), along(d))];
  return high >= 0 && low <= along(b);
}
