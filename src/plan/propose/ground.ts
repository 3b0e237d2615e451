/** The ground a way is laid over: what is inside the outline, where its walls, sills and the steering column are. */
import { type Box, boxHolds, growBox } from '../../geom/box.ts';
import type { Point } from '../../geom/point.ts';
import { polygonHolds } from '../../geom/polygon.ts';
import { bayBox, firewallXM, type OutlineZone, outlineRegions, sheetBox, zoneAt } from '../outline.ts';
import type { Sheet } from '../schema.ts';

/** From the edge to the middle of a sill where the outline does not tell its width, m. */
const EDGE_M = 0.06;
/** Nothing is placed nearer to the edge, m. */
const MARGIN_M = 0.05;
/** What is this near to the edge lies along the sill, m; a slanted edge is kept further from. */
const BESIDE_M = 0.15;
const BESIDE_SLANT_M = 0.45;

export interface Ground {
  readonly box: Box;
  readonly wallXM: number | null;
  /** The stretch in which cables lie along a sill; null on a bench. */
  readonly cabin: { readonly fromXM: number; readonly toXM: number } | null;
  /** y of the middle of either sill. */
  readonly sillsYM: readonly [number, number];
  /** What is this near to the edge lies along it, m. */
  readonly besideM: number;
  /** Where the steering column and the pedals are; null where there are none. */
  readonly column: Box | null;
  holds(p: Point): boolean;
  zone(p: Point): OutlineZone;
  /** -1 in the bay, 1 behind the firewall; 1 where there is none. */
  side(p: Point): -1 | 1;
}

/**
 * Steering column and pedals: from a little before the firewall to behind the wheel, about the middle of the driver's
 * seat. Source: common practice, from memory of ordinary vehicles.
 */
function columnOf({ outline, mirrored }: Sheet): Box | null {
  const wallXM = firewallXM(outline);
  if (wallXM === null) return null;
  const yM = outline.widthM * (mirrored ? 0.3 : 0.7);
  return { minXM: wallXM - 0.3, maxXM: wallXM + 0.7, minYM: yM - 0.16, maxYM: yM + 0.16 };
}

export function groundOf(sheet: Sheet): Ground {
  const { outline } = sheet;
  const box = growBox(sheetBox(sheet), -MARGIN_M);
  const bay = bayBox(outline);
  const cabin = outline.kind === 'bench' ? undefined : outlineRegions(outline).find(({ zone }) => zone === 'cabin');
  const sillM = outline.kind === 'vehicle' ? outline.sillM / 2 : EDGE_M;
  return {
    box,
    wallXM: bay === null ? null : bay.maxXM,
    cabin: cabin === undefined ? null : { fromXM: cabin.fromXM, toXM: cabin.toXM },
    sillsYM: [sillM, outline.widthM - sillM],
    besideM: outline.kind === 'own' ? BESIDE_SLANT_M : BESIDE_M,
    column: columnOf(sheet),
    holds: (p) => boxHolds(box, p) && (outline.kind !== 'own' || polygonHolds(outline.edge, p)),
    zone: (p) => zoneAt(outline, p),
    side: ({ xM }) => (bay !== null && xM <= bay.maxXM ? -1 : 1),
  };
}
