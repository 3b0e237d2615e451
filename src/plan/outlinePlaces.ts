/** Where things usually are in an outline, to start from; every place is only a likely one and is moved by hand. */
import type { Point as Place } from '../geom/point.ts';
import { polygonHolds } from '../geom/polygon.ts';
import { firewallXM, type OutlineRegion, outlineRegions } from './outline.ts';
import { ownFrom } from './ownOutline.ts';
import { isOnOneSpot, placeWithin, spansAt } from './placeWithin.ts';
import { roundPoint } from './round.ts';
import type { Outline, Point } from './schema.ts';

/** In the bay, under a front seat, or at the rear. */
export type BatteryPlace = 'front' | 'seat' | 'rear';

/** In metres of the outline: the nose at x = 0, the vehicle's right side at y = 0. */
export interface UsualPlaces {
  readonly battery: Point;
  /** Not farther than 0.3 m from the battery. */
  readonly mainFuse: Point;
  /** On the firewall, away from the steering column; null without a firewall inside the edge. */
  readonly passThrough: Point | null;
  readonly block: Point;
  readonly amplifiers: readonly Point[];
  /** One by each amplifier, in their order. */
  readonly grounds: readonly Point[];
  /** In the bay, for a battery that is not there; null without a bay. */
  readonly jumpPost: Point | null;
  /** Middle of the sill where cables to the rear lie, y in m. */
  readonly sills: { readonly driverYM: number; readonly otherYM: number };
}

/** Across the vehicle from the passenger's side, as shares of the width. Source: our choice; vehicles differ. */
const ACROSS = { passThrough: 0.3, passenger: 0.28, battery: 0.78, rearBattery: 0.14, block: 0.32, jumpPost: 0.7 };
const FUSE_FROM_BATTERY_M = 0.25;
/** A front seat's middle stands so far behind the firewall where the cabin is long enough. Common practice. */
const SEAT_BEHIND_WALL_M = 1;
const IN_A_ROW = 4;
/** Sill of an outline that tells none, as a share of its width. */
const SILL_SHARE = 0.06;

/**
 * Likely places for a feed of so many amplifiers. A panel van of 4.4 m x 1.8 m with a bay of 1 m and left-hand drive has
 * its front battery at x = 0.55 m, y = 1.404 m, in front of the driver. Source: our choice; vehicles differ.
 */
export function usualPlaces(
  outline: Outline,
  mirrored: boolean,
  batteryPlace: BatteryPlace = 'front',
  amplifiers = 1,
): UsualPlaces {
  const { lengthM, widthM } = outline;
  const wallXM = firewallXM(outline);
  const across = (share: number) => widthM * (mirrored ? 1 - share : share);
  const regions = outlineRegions(outline).filter(({ fromXM, toXM }) => toXM > fromXM);
  const whole: OutlineRegion = { zone: 'cabin', fromXM: 0, toXM: lengthM };
  const bay = regions.find(({ zone }) => zone === 'bay') ?? whole;
  const cabin = regions.find(({ zone }) => zone === 'cabin') ?? whole;
  const rear = regions.at(-1) ?? whole;
  const { edge } = ownFrom(outline);
  const taken: Point[] = [];
  const take = (place: Point): Point => {
    taken.push(place);
    return place;
  };
  const inside = (region: OutlineRegion, share: number, yM: number) => {
    const wished = { xM: region.fromXM + share * (region.toXM - region.fromXM), yM };
    const spot = placeWithin(edge, region, wished, taken);
    // a part too small for all that is to stand in it leaves the rest to the whole
    return take(isOnOneSpot(spot, taken) ? placeWithin(edge, whole, wished, taken) : spot);
  };
  // without a cargo of its own the rear half of the cabin holds the load
  const back = rear.zone === 'cargo' ? 0 : 0.5;
  const behind = (share: number) => back + share * (1 - back);

  const battery = () => {
    if (outline.kind === 'bench') return inside(whole, 0.15, widthM / 2);
    if (batteryPlace === 'rear') return inside(rear, behind(0.5), across(ACROSS.rearBattery));
    if (batteryPlace === 'front') return inside(bay, bay.zone === 'bay' ? 0.55 : 0.1, across(ACROSS.battery));
    const cabinM = cabin.toXM - cabin.fromXM;
    return inside(cabin, Math.min(SEAT_BEHIND_WALL_M / cabinM, 0.6), across(ACROSS.passenger));
  };
  const at = battery();
  const home = regions.find(({ toXM }) => at.xM <= toXM) ?? whole;
  const mainFuse = take(fuseBeside(at, edge, home, widthM));
  const spots = Array.from({ length: amplifiers }, (_, index) => spotOf(index, amplifiers));
  const sillM = outline.kind === 'vehicle' ? outline.sillM : SILL_SHARE * widthM;
  const hasBay = wallXM !== null && bay.zone === 'bay';
  return {
    battery: at,
    mainFuse,
    passThrough: wallXM === null ? null : onWall(edge, { xM: wallXM, yM: across(ACROSS.passThrough) }),
    block: inside(rear, behind(0.2), across(ACROSS.block)),
    amplifiers: spots.map(({ along, side }) => inside(rear, behind(along), across(side))),
    grounds: spots.map(({ along, side, depth }) => inside(rear, behind(along + depth), across(side))),
    jumpPost: hasBay ? inside(bay, 0.4, across(ACROSS.jumpPost)) : null,
    sills: { driverYM: across(1 - sillM / 2 / widthM), otherYM: across(sillM / 2 / widthM) },
  };
}

/** Amplifiers stand in rows across the rear, each with its ground bolt behind it; shares of the region and the width. */
function spotOf(index: number, count: number): { along: number; side: number; depth: number } {
  const rows = Math.ceil(count / IN_A_ROW);
  const inRow = Math.min(IN_A_ROW, count - IN_A_ROW * Math.floor(index / IN_A_ROW));
  const depth = 0.55 / rows;
  return {
    along: 0.4 + Math.floor(index / IN_A_ROW) * depth,
    side: 0.3 + (0.56 * ((index % IN_A_ROW) + 0.5)) / inRow,
    depth: depth / 2,
  };
}

const DIRECTIONS = 8;

/** Beside the battery and on its side of the firewall: towards the middle of the vehicle, or where the edge leaves room. */
function fuseBeside(battery: Place, edge: readonly Place[], { fromXM, toXM }: OutlineRegion, widthM: number): Point {
  const mostM = Math.min(FUSE_FROM_BATTERY_M, widthM / 4);
  const inwards = battery.yM > widthM / 2 ? -Math.PI / 2 : Math.PI / 2;
  const [best] = [1, 0.5, 0.25, 0.1]
    .flatMap((share) =>
      Array.from({ length: DIRECTIONS }, (_, index) => {
        const angle = inwards + (2 * Math.PI * index) / DIRECTIONS;
        const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
        return roundPoint({ xM: battery.xM + share * mostM * cos, yM: battery.yM + share * mostM * sin });
      }),
    )
    .filter((place) => place.xM >= fromXM && place.xM <= toXM && polygonHolds(edge, place));
  const near = { fromXM: Math.max(fromXM, battery.xM - mostM), toXM: Math.min(toXM, battery.xM + mostM) };
  return best ?? placeWithin(edge, near, battery, [battery]);
}

/** The place on the firewall, or the nearest on it that is well inside the edge; null where the edge does not reach it. */
function onWall(edge: readonly Place[], { xM, yM }: Place): Point | null {
  const [best] = spansAt(edge, xM)
    .map(([fromYM, toYM]) => {
      const insetM = (toYM - fromYM) / 10;
      return Math.min(toYM - insetM, Math.max(fromYM + insetM, yM));
    })
    .sort((a, b) => Math.abs(a - yM) - Math.abs(b - yM));
  return best === undefined ? null : roundPoint({ xM, yM: best });
}
