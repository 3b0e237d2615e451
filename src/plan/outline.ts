/** What the outlines are, in metres of the sheet: the nose at x = 0, the rear at lengthM, y from 0 to widthM. */
import type { Box } from '../geom/box.ts';
import type { Point as Place } from '../geom/point.ts';
import { type Stretch, stretchesByRegion } from '../geom/stretches.ts';
import type { Body, Outline, OutlineOf, Sheet } from './schema.ts';

/** Zones that an outline tells apart by itself; wing, hot and under are marked by hand. */
export type OutlineZone = 'bay' | 'cabin' | 'cargo';

/** A part of the outline from x to x, across its whole width. */
export interface OutlineRegion {
  readonly zone: OutlineZone;
  readonly fromXM: number;
  readonly toXM: number;
}

type Vehicle = OutlineOf<'vehicle'>;

const vehicle = (body: Body, sizes: Omit<Vehicle, 'kind' | 'body'>): Vehicle => ({ kind: 'vehicle', body, ...sizes });

/**
 * Sizes of a new outline, m: middling ones of their kind, to be corrected by tape; and a bench board that fits a table.
 * Source: our choice, from memory of ordinary vehicles.
 */
export const DEFAULT_OUTLINES: { readonly [K in Body]: Vehicle } & { readonly bench: OutlineOf<'bench'> } = {
  hatchback: vehicle('hatchback', {
    ...{ lengthM: 4.1, widthM: 1.78, heightM: 1.48, frontAxleM: 0.86, wheelbaseM: 2.58 },
    ...{ bayM: 1.1, cabM: 2.15, sillM: 0.12 },
  }),
  saloon: vehicle('saloon', {
    ...{ lengthM: 4.7, widthM: 1.82, heightM: 1.45, frontAxleM: 0.9, wheelbaseM: 2.78 },
    ...{ bayM: 1.25, cabM: 2.25, sillM: 0.12 },
  }),
  estate: vehicle('estate', {
    ...{ lengthM: 4.75, widthM: 1.82, heightM: 1.5, frontAxleM: 0.9, wheelbaseM: 2.78 },
    ...{ bayM: 1.25, cabM: 2.2, sillM: 0.12 },
  }),
  pickup: vehicle('pickup', {
    ...{ lengthM: 5.3, widthM: 1.86, heightM: 1.8, frontAxleM: 0.95, wheelbaseM: 3.2 },
    ...{ bayM: 1.25, cabM: 2.15, sillM: 0.14 },
  }),
  panelVan: vehicle('panelVan', {
    ...{ lengthM: 4.4, widthM: 1.8, heightM: 1.85, frontAxleM: 0.66, wheelbaseM: 2.79 },
    ...{ bayM: 1, cabM: 1.5, sillM: 0.12 },
  }),
  smallBus: vehicle('smallBus', {
    ...{ lengthM: 5.1, widthM: 1.92, heightM: 1.95, frontAxleM: 0.9, wheelbaseM: 3.1 },
    ...{ bayM: 1.05, cabM: 3.1, sillM: 0.14 },
  }),
  bench: { kind: 'bench', lengthM: 2.4, widthM: 0.8 },
};

/** The regions from nose to rear; without a firewall there is one, as cool as a cabin. None reaches beyond the rear. */
export function outlineRegions(outline: Outline): OutlineRegion[] {
  const { lengthM } = outline;
  const wallXM = firewallXM(outline);
  if (outline.kind === 'bench' || wallXM === null) return [{ zone: 'cabin', fromXM: 0, toXM: lengthM }];
  const cabinToXM = Math.min(wallXM + (outline.cabM ?? lengthM), lengthM);
  const regions: OutlineRegion[] = [
    { zone: 'bay', fromXM: 0, toXM: Math.min(wallXM, lengthM) },
    { zone: 'cabin', fromXM: Math.min(wallXM, lengthM), toXM: cabinToXM },
  ];
  return outline.cabM === null ? regions : [...regions, { zone: 'cargo', fromXM: cabinToXM, toXM: lengthM }];
}

/** Where the firewall stands, m from the nose; null when the outline has none. */
export const firewallXM = (outline: Outline): number | null => (outline.kind === 'bench' ? null : outline.bayM);

/** The whole outline, seen from above. */
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

/** What a sheet shows of its outline: a part of it, from above or from the side. A part that is not there is the whole. */
export function sheetBox({ outline, part, view }: Pick<Sheet, 'outline' | 'part' | 'view'>): Box {
  const region = outlineRegions(outline).find(({ zone }) => zone === part);
  const [minXM, maxXM] = region === undefined ? [0, outline.lengthM] : [region.fromXM, region.toXM];
  const maxYM = view === 'side' && outline.kind !== 'bench' ? outline.heightM : outline.widthM;
  return { minXM, minYM: 0, maxXM, maxYM };
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
