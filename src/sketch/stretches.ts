/** The stretches that nothing protects, as the nearer pane has to show them: from a source to what first protects. */
import { fittingById, runsAt } from '../plan/byId.ts';
import { placeOn, runPoints } from '../plan/runs.ts';
import type { Fitting, FittingKind, Plan, Point, Run } from '../plan/schema.ts';

export interface Stretch {
  /** The source. */
  readonly from: Point;
  /** The fuse, or what stands for it. */
  readonly to: Point;
  /** Where the cable goes next behind it; null where it goes nowhere yet. */
  readonly on: Point | null;
}

const PROTECTS: ReadonlySet<FittingKind> = new Set(['fuse', 'breaker', 'block']);
/** A cable goes on behind these as it came. */
const LEADS_ON: ReadonlySet<FittingKind> = new Set(['passThrough', 'switch', 'relay', 'reducer', 'bus']);

const isVehiclesOwn = (fitting: Fitting): boolean => fitting.kind === 'battery' && fitting.strap !== null;

const farEnd = ({ from, to }: Run, id: string): string => (from.fittingId === id ? to.fittingId : from.fittingId);

/** Those of the vehicle's own battery first, then as the sources come. */
export function firstStretches(plan: Plan, sources: readonly Fitting[], sheetId: string): Stretch[] {
  const ordered = [...sources.filter(isVehiclesOwn), ...sources.filter((source) => !isVehiclesOwn(source))];
  return ordered.flatMap((source) => stretchesFrom(plan, source, sheetId));
}

function stretchesFrom(plan: Plan, source: Fitting, sheetId: string): Stretch[] {
  const from = placeOn(source, sheetId);
  const found: Stretch[] = [];
  if (from === null) return found;
  const feedsAt = (id: string) => runsAt(plan, id).filter((run) => run.kind === 'power' && run.sheetId === sheetId);
  const seen = new Set([source.id]);
  const waiting = [source.id];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    for (const run of feedsAt(id)) {
      const next = fittingById(plan, farEnd(run, id));
      const to = next === undefined ? null : placeOn(next, sheetId);
      if (next === undefined || to === null || seen.has(next.id)) continue;
      seen.add(next.id);
      if (LEADS_ON.has(next.kind)) waiting.push(next.id);
      if (!PROTECTS.has(next.kind)) continue;
      const behind = feedsAt(next.id).find((other) => other !== run);
      found.push({ from, to, on: behind === undefined ? null : secondPoint(plan, behind, next.id) });
    }
  }
  return found;
}

/** The first bend of a run as seen from one end, or its other end. */
function secondPoint(plan: Plan, run: Run, fromId: string): Point | null {
  const points = runPoints(plan, run);
  return (run.from.fittingId === fromId ? points : points.reverse())[1] ?? null;
}
