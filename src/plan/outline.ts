/** What the outlines are, in metres of the sheet: the nose at x = 0, the rear at lengthM, y from 0 to widthM. */
import type { Box } from '../geom/box.ts';
import type { Point as Place } from '../geom/point.ts';
import { type Stretch, stretchesByRegion } from '../geom/stretches.ts';
import { roundPoint } from './round.ts';
import type { Outline, Point } from './schema.ts';

/** Zones that an outline tells apart by itself; wing, hot and under are marked by hand. */
export type OutlineZone = 'bay' | 'cabin' | 'cargo';

/** A part of the outline from x to x, across its whole width. */
export interface OutlineRegion {
  readonly zone: OutlineZone;
  readonly fromXM: number;
  readonly toXM: number;
}

/** Sizes of a new outline: a small panel van, and a bench board that fits a table. Source: our choice. */
export const DEFAULT_OUTLINES: { readonly [K in Outline['kind']]: Extract<Outline, { kind: K }> } = {
  panelVan: { kind: 'panelVan', lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 },
  bench: { kind: 'bench', lengthM: 2.4, widthM: 0.8 },
};

/** The regions from nose to rear; a bench is one, as cool as a cabin. The cab never reaches beyond the rear. */
export function outlineRegions(outline: Outline): OutlineRegion[] {
  const { lengthM } = outline;
  if (outline.kind === 'bench') return [{ zone: 'cabin', fromXM: 0, toXM: lengthM }];
  const firewallXM = Math.min(outline.bayM, lengthM);
  const partitionXM = Math.min(outline.bayM + outline.cabM, lengthM);
  return [
    { zone: 'bay', fromXM: 0, toXM: firewallXM },
    { zone: 'cabin', fromXM: firewallXM, toXM: partitionXM },
    { zone: 'cargo', fromXM: partitionXM, toXM: lengthM },
  ];
}

/** Where the firewall stands, m from the nose; null when the outline has none. */
export const firewallXM = (outline: Outline): number | null => (outline.kind === 'bench' ? null : outline.bayM);

/** The whole outline. */
export const outlineBox = ({ lengthM, widthM }: Outline): Box => ({
  minXM: 0,
  minYM: 0,
  maxXM: lengthM,
  maxYM: widthM,
});

/** The bay alone; null when the outline has none. */
export function bayBox(outline: Outline): Box | null {
  const maxXM = firewallXM(outline);
  return maxXM === null ? null : { ...outlineBox(outline), maxXM };
}

/**
 * The zone a place is in. Beyond the nose counts as bay, beyond the rear as the last region, and beside the outline as
 * the region it is beside. On the firewall itself: bay, the hotter side.
 */
export function zoneAt(outline: Outline, place: Place): OutlineZone {
  const regions = outlineRegions(outline);
  return (regions.find(({ toXM }) => place.xM <= toXM) ?? regions.at(-1))?.zone ?? 'cabin';
}

/** An area marked by hand: what lies in it is in its zone, wherever the outline would put it. */
export interface MarkedArea<Zone extends string> {
  readonly zone: Zone;
  readonly corners: readonly Place[];
}

/**
 * A polyline cut where it passes from one zone to the next, in order along it; together they are the whole of it. Marked
 * areas come before the outline; of those that overlap the first holds.
 */
export function zoneStretches<Zone extends string = OutlineZone>(
  outline: Outline,
  points: readonly Place[],
  areas: readonly MarkedArea<Zone>[] = [],
): Stretch<Zone | OutlineZone>[] {
  const regions = outlineRegions(outline);
  const last = regions.length - 1;
  return stretchesByRegion<Zone | OutlineZone>(points, [
    ...areas.map(({ zone, corners }) => ({ name: zone, corners })),
    ...regions.map(({ zone, fromXM, toXM }, index) => ({
      name: zone,
      // open ended: a cable drawn past the bumper or along the outside has a zone too
      box: {
        minXM: index === 0 ? -Infinity : fromXM,
        maxXM: index === last ? Infinity : toXM,
        minYM: -Infinity,
        maxYM: Infinity,
      },
    })),
  ]);
}

/** Where things usually are, to start a new plan from. */
export interface UsualPlaces {
  readonly battery: Point;
}

/**
 * The likely place of the battery: in the bay on the driver's side, which is the far side of the screen's top edge for
 * left-hand drive; at the left end of a bench. Source: our choice; vehicles differ, so it is only where to begin.
 */
export function usualPlaces(outline: Outline, mirrored: boolean): UsualPlaces {
  if (outline.kind === 'bench') {
    return { battery: roundPoint({ xM: 0.15 * outline.lengthM, yM: 0.5 * outline.widthM }) };
  }
  const acrossShare = mirrored ? 0.22 : 0.78;
  return { battery: roundPoint({ xM: 0.55 * outline.bayM, yM: acrossShare * outline.widthM }) };
}
