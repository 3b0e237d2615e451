import { type Box, boxHolds } from './box.ts';
import { between, distance, type Point, shareAlongSegment } from './point.ts';
import { crossingShare, polygonHolds, sidesOf } from './polygon.ts';
import { segmentsOf } from './polyline.ts';

/** A named part of the plane: a box along the axes, or a polygon. */
export type Region<Name> = { readonly name: Name } & ({ readonly box: Box } | { readonly corners: readonly Point[] });

/** A part of a polyline that lies in one region. */
export interface Stretch<Name> {
  /** null outside every region. */
  readonly region: Name | null;
  readonly lengthM: number;
  /** The part itself, its ends on the edges of the region. */
  readonly points: readonly Point[];
}

/**
 * Cuts a polyline wherever it crosses into another region, in order along it. Of overlapping regions the first holds.
 * Parts of no length are left out. (0,0), (4,0) over 'bay' x <= 1 and 'cabin' x >= 1: 1 m in bay, 3 m in cabin.
 */
export function stretchesByRegion<Name>(points: readonly Point[], regions: readonly Region<Name>[]): Stretch<Name>[] {
  const stretches: { region: Name | null; lengthM: number; points: Point[] }[] = [];
  for (const [a, b] of segmentsOf(points)) {
    const cuts = crossings(a, b, regions);
    for (const [index, end] of cuts.entries()) {
      const start = cuts[index - 1];
      if (start === undefined || end <= start) continue;
      const from = between(a, b, start);
      const to = between(a, b, end);
      const region = regionAt(between(a, b, (start + end) / 2), regions);
      const current = stretches.at(-1);
      if (current !== undefined && current.region === region) {
        current.lengthM += distance(from, to);
        current.points.push(to);
      } else {
        stretches.push({ region, lengthM: distance(from, to), points: [from, to] });
      }
    }
  }
  return stretches.filter(({ lengthM }) => lengthM > 0);
}

/** Shares of the segment at which it meets an edge of any region, ends included, ascending. */
function crossings<Name>(a: Point, b: Point, regions: readonly Region<Name>[]): number[] {
  const shares = [0, 1];
  for (const region of regions) {
    if ('corners' in region) {
      for (const side of sidesOf(region.corners)) shares.push(crossingShare(a, b, side) ?? Number.NaN);
      // a segment along a side crosses none; it may begin or end at one of the corners
      for (const corner of region.corners) shares.push(shareAlongSegment(a, b, corner));
    } else {
      const { box } = region;
      for (const xM of [box.minXM, box.maxXM]) shares.push((xM - a.xM) / (b.xM - a.xM));
      for (const yM of [box.minYM, box.maxYM]) shares.push((yM - a.yM) / (b.yM - a.yM));
    }
  }
  // a segment along an edge divides by zero: what is not a number, or beyond the ends, is no crossing
  return shares.filter((share) => share >= 0 && share <= 1).sort((one, other) => one - other);
}

function regionAt<Name>(p: Point, regions: readonly Region<Name>[]): Name | null {
  const holds = (region: Region<Name>): boolean =>
    'corners' in region ? polygonHolds(region.corners, p) : boxHolds(region.box, p);
  return regions.find(holds)?.name ?? null;
}
