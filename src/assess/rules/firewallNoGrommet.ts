import { polylineLength } from '../../geom/polyline.ts';
import { fittingById, runsAt } from '../../plan/byId.ts';
import { sheetOf } from '../../plan/drawnLength.ts';
import { firewallXM } from '../../plan/outline.ts';
import { placeOn, runPoints } from '../../plan/runs.ts';
import type { Plan, Point, Run, TerminalRef } from '../../plan/schema.ts';
import { finding, type Rule } from './rule.ts';

/** A pass-through this near along the run, m, is the one that the crossing goes through: sketches are not that exact. */
const NEAR_M = 0.3;

function wallOf(plan: Plan, run: Run): number | null {
  const outline = sheetOf(plan, run.sheetId)?.outline;
  return outline === undefined ? null : firewallXM(outline);
}

/** The side of the firewall on which a run leaves one of its ends: -1 or 1; 0 when it lies along it throughout. */
function sideLeft(plan: Plan, run: Run, fittingId: string, wallXM: number): number {
  const points = run.from.fittingId === fittingId ? runPoints(plan, run) : [...runPoints(plan, run)].reverse();
  return points.map(({ xM }) => Math.sign(xM - wallXM)).find((side) => side !== 0) ?? 0;
}

/** A fitting on the firewall itself is mounted on one side of it: where its runs are, or the bay's when they are on both. */
function mountedSide(plan: Plan, { fittingId }: TerminalRef, wallXM: number): number {
  const sides = runsAt(plan, fittingId).map((run) => sideLeft(plan, run, fittingId, wallXM));
  return sides.includes(-1) ? -1 : 1;
}

const isOnOneSide = (points: readonly Point[], wallXM: number): boolean =>
  points.every(({ xM }) => xM < wallXM) || points.every(({ xM }) => xM > wallXM);

/** Where a run crosses the firewall, m along it. A run that lies along it does not cross there. */
function crossingsM(plan: Plan, run: Run, points: readonly Point[], wallXM: number): number[] {
  const crossings: number[] = [];
  let side = 0;
  let alongM = 0;
  for (const [index, point] of points.entries()) {
    const before = points[index - 1];
    if (before !== undefined) alongM += polylineLength([before, point]);
    const end = index === 0 ? run.from : index === points.length - 1 ? run.to : null;
    const offWall = Math.sign(point.xM - wallXM);
    const here = offWall === 0 && end !== null ? mountedSide(plan, end, wallXM) : offWall;
    if (here === 0) continue;
    if (side !== 0 && here !== side && before !== undefined) {
      const span = point.xM - before.xM;
      const past = span === 0 ? 0 : (point.xM - wallXM) / span;
      crossings.push(alongM - past * polylineLength([before, point]));
    }
    side = here;
  }
  return crossings;
}

const wallSide = (plan: Plan, sheetId: string, { xM }: Point): number => {
  const outline = sheetOf(plan, sheetId)?.outline;
  const wallXM = outline === undefined ? null : firewallXM(outline);
  return wallXM === null ? 0 : Math.sign(xM - wallXM);
};

/** Where a cable leaves one sheet on one side of the firewall and goes on on the other side: it crosses between the two. */
function crossesBetweenSheets(plan: Plan, run: Run): boolean {
  return [run.from, run.to].some(({ fittingId }) => {
    const point = fittingById(plan, fittingId);
    if (point?.kind !== 'continuation') return false;
    const onOther = point.sheetId === run.sheetId ? point.other : point;
    const [here, there] = [placeOn(point, run.sheetId), onOther.at];
    if (here === null) return false;
    const [side, otherSide] = [wallSide(plan, run.sheetId, here), wallSide(plan, onOther.sheetId, there)];
    // told once: on the run that comes from the bay
    return side === -1 && otherSide === 1;
  });
}

/** 33 CFR 183.445(a): a conductor through a metal edge is protected from chafe: a run through the firewall needs its pass-through. */
export const firewallNoGrommet: Rule = {
  id: 'firewall-no-grommet',
  sensitive: false,
  check: ({ model: { plan } }) =>
    plan.runs.flatMap((run) => {
      const wallXM = wallOf(plan, run);
      if (wallXM === null) return [];
      const points = runPoints(plan, run);
      const between = crossesBetweenSheets(plan, run);
      // most runs stay on one side
      if (!between && isOnOneSide(points, wallXM)) return [];
      const isPassThrough = (fittingId: string): boolean => fittingById(plan, fittingId)?.kind === 'passThrough';
      const lengthM = polylineLength(points);
      const bare = crossingsM(plan, run, points, wallXM).filter((alongM) => {
        const atStart = isPassThrough(run.from.fittingId) && alongM <= NEAR_M;
        const atEnd = isPassThrough(run.to.fittingId) && lengthM - alongM <= NEAR_M;
        return !atStart && !atEnd;
      });
      if (bare.length === 0 && !between) return [];
      return [
        finding('firewall-no-grommet', { severity: 'fix', places: [{ kind: 'run', id: run.id }], source: 'cfr183445' }),
      ];
    }),
};
