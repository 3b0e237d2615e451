/** How near the nearer pane goes: until the stretch from source to fuse has room for thumbs, and no nearer. */
import type { PaneSize } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import type { Bounds } from '../drawing/shapes.ts';
import { boundsOf } from '../geom/box.ts';
import { distance } from '../geom/point.ts';
import { firewallXM } from '../plan/outline.ts';
import type { Outline, Point } from '../plan/schema.ts';
import type { CloseUp } from './closeUp.ts';
import type { Stretch } from './stretches.ts';

/** A target for a big finger, css px: so much stays clear of the edges. */
const TARGET_PX = 56;
/** What a stretch is to be long on the screen: a target for the fuse and one beside it. */
const WISHED_PX = 2 * TARGET_PX;
/** The least that works: two fingertips. Between the two it is shorter only to show where the cable goes on. */
const LEAST_PX = 88;
/** Nearer than so many metres across, what is around can no longer be told: a stretch of a few cm stays short. */
const LEAST_SEEN_M = 0.7;
/** The way behind the fuse and the firewall are shown too where they are as near as this, m. */
const NEAR_M = 0.7;
/** A view that is a little less near than it could be is left alone. */
const NEAR_ENOUGH = 0.75;

interface Span {
  readonly from: number;
  readonly to: number;
}

const across = ({ minXM, maxXM }: Bounds): Span => ({ from: minXM, to: maxXM });
const down = ({ minYM, maxYM }: Bounds): Span => ({ from: minYM, to: maxYM });
const lengthOf = ({ from, to }: Span): number => to - from;
const clamp = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

const endsOf = (stretches: readonly Stretch[]): Point[] => stretches.flatMap(({ from, to }) => [from, to]);

/** The shortest of them; the plates of one that is no line at all cannot be drawn apart. */
const shortestM = (stretches: readonly Stretch[]): number =>
  Math.min(...stretches.map(({ from, to }) => distance(from, to)).filter((lengthM) => lengthM > 0));

/** The scale at which a box fits with a finger's room around it. */
const fits = (box: Bounds, { widthPx, heightPx }: PaneSize): number =>
  Math.min((widthPx - 2 * TARGET_PX) / lengthOf(across(box)), (heightPx - 2 * TARGET_PX) / lengthOf(down(box)));

const mostScale = ({ widthPx, heightPx }: PaneSize): number => Math.min(widthPx, heightPx) / LEAST_SEEN_M;

/** All stretches where they can be seen together from near enough, else the first. */
function shownOf(stretches: readonly Stretch[], size: PaneSize): readonly Stretch[] {
  const box = boundsOf(endsOf(stretches));
  const leastScale = Math.min(LEAST_PX / shortestM(stretches), mostScale(size));
  return box !== null && fits(box, size) >= leastScale ? stretches : stretches.slice(0, 1);
}

/** With what is near of the way on, and the firewall. */
function withWay(needed: Bounds, shown: readonly Stretch[], wallXM: number | null): Bounds {
  const ways = shown.flatMap(({ to, on }) => (on !== null && distance(to, on) <= NEAR_M ? [on] : []));
  const { minXM, minYM, maxXM, maxYM } = needed;
  const wall = wallXM !== null && wallXM > maxXM && wallXM - maxXM <= NEAR_M ? [{ xM: wallXM, yM: minYM }] : [];
  return boundsOf([{ xM: minXM, yM: minYM }, { xM: maxXM, yM: maxYM }, ...ways, ...wall]) ?? needed;
}

/**
 * The middle of a view along one axis: that of what it should show, no further out than the vehicle goes, and always so
 * that what it has to show is clear of the edges.
 */
function middle(viewM: number, insetM: number, spans: { needed: Span; wished: Span; within: Span }): number {
  const { needed, wished, within } = spans;
  const spareM = Math.max(0, lengthOf(within) - viewM) / 2;
  const middleOf = ({ from, to }: Span) => (from + to) / 2;
  const inside = clamp(middleOf(wished), middleOf(within) - spareM, middleOf(within) + spareM);
  const least = needed.to + insetM - viewM / 2;
  const most = needed.from - insetM + viewM / 2;
  return least > most ? middleOf(needed) : clamp(inside, least, most);
}

/** From nearer than `camera`, which shows the place at large; null where that is near enough. */
export function nearerCamera(
  camera: Camera,
  size: PaneSize,
  { of, stretches }: CloseUp,
  { outline, vehicle }: { outline: Outline; vehicle: Bounds },
): Camera | null {
  const shown = shownOf(stretches, size);
  const needed = boundsOf(endsOf(shown));
  const shortM = shortestM(shown);
  if (needed === null || !Number.isFinite(shortM)) return null;
  const wished = withWay(needed, shown, of === 'bay' ? firewallXM(outline) : null);
  const asWished = clamp(fits(wished, size), LEAST_PX / shortM, WISHED_PX / shortM);
  const pxPerM = Math.min(asWished, fits(needed, size), mostScale(size));
  if (pxPerM <= camera.pxPerM) return null;
  const at = (px: number, span: (box: Bounds) => Span): number =>
    middle(px / pxPerM, TARGET_PX / pxPerM, { needed: span(needed), wished: span(wished), within: span(vehicle) });
  return { ...camera, pxPerM, centreXM: at(size.widthPx, across), centreYM: at(size.heightPx, down) };
}

/** How far inside the edge a place has to be to count as visible, px: a plate there is seen whole. */
export const INSET_PX = 40;

/** Whether a view shows them all, and about as near as the one that was worked out for them; no for none. */
export function seesStretches(camera: Camera, fitted: Camera, size: PaneSize, stretches: readonly Stretch[]): boolean {
  const shown = shownOf(stretches, size);
  const isLongEnough = camera.pxPerM * shortestM(shown) >= LEAST_PX || camera.pxPerM >= NEAR_ENOUGH * fitted.pxPerM;
  const halfXM = (size.widthPx / 2 - INSET_PX) / camera.pxPerM;
  const halfYM = (size.heightPx / 2 - INSET_PX) / camera.pxPerM;
  const isInSight = ({ xM, yM }: Point) =>
    Math.abs(xM - camera.centreXM) <= halfXM && Math.abs(yM - camera.centreYM) <= halfYM;
  return shown.length > 0 && isLongEnough && endsOf(shown).every(isInSight);
}
