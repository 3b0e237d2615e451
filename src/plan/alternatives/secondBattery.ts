import { fittingById } from '../byId.ts';
import { newFittingIn, newRun } from '../create.ts';
import { addFitting } from '../edits/addFitting.ts';
import { addRun } from '../edits/addRun.ts';
import { sheetBox } from '../outline.ts';
import { roundPoint } from '../round.ts';
import type { Fitting, FittingKind, Plan, Point, Run, Sheet, TerminalRef } from '../schema.ts';
import { likelyOther } from './otherAmplifier.ts';

/** As drawn, m: its fuse well within 0.45 m of cable, with what a drawn length may be off. */
const FUSE_FROM_BATTERY_M = 0.25;
const BATTERY_FROM_HUB_M = 0.6;
const GROUND_FROM_BATTERY_M = 0.3;
const MARGIN_M = 0.15;

type NameOf = (kind: FittingKind, plan: Plan) => string;

/** What feeds the amplifier: the block or bar at the other end of its supply's run, else its own supply. */
function hubOf(plan: Plan, amplifierId: string): TerminalRef {
  const supply = { fittingId: amplifierId, terminal: 'supply' };
  const run = plan.runs.find(({ from, to }) =>
    [from, to].some((end) => end.fittingId === amplifierId && end.terminal === 'supply'),
  );
  const far = run === undefined ? supply : run.from.fittingId === amplifierId ? run.to : run.from;
  const fitting = fittingById(plan, far.fittingId);
  return fitting?.kind === 'block' || fitting?.kind === 'bus' ? { fittingId: fitting.id, terminal: 'bus' } : supply;
}

function inside(sheet: Sheet, { xM, yM }: Point): Point {
  const { minXM, minYM, maxXM, maxYM } = sheetBox(sheet);
  const within = (value: number, low: number, high: number) =>
    Math.min(high - MARGIN_M, Math.max(low + MARGIN_M, value));
  return roundPoint({ xM: within(xM, minXM, maxXM), yM: within(yM, minYM, maxYM) });
}

/** Places that far from a point, round it, the one that is farthest from everything that stands on the sheet first. */
function freeSpot(plan: Plan, sheet: Sheet, from: Point, radiusM: number): Point {
  const others = plan.fittings.filter(({ sheetId }) => sheetId === sheet.id);
  const roomAt = ({ xM, yM }: Point) => Math.min(1, ...others.map(({ at }) => Math.hypot(at.xM - xM, at.yM - yM)));
  const around = Array.from({ length: 8 }, (_, eighth): Point => {
    const angle = (eighth * Math.PI) / 4;
    return inside(sheet, { xM: from.xM + radiusM * Math.cos(angle), yM: from.yM + radiusM * Math.sin(angle) });
  });
  return around.reduce((best, point) => (roomAt(point) > roomAt(best) ? point : best));
}

/**
 * The plan with a battery beside the largest amplifier, with a fuse of its own near its post, joined to what feeds that
 * amplifier, and grounded. Null when no amplifier is rated, or the plan has no room for it.
 */
export function secondBattery(plan: Plan, nameOf: NameOf, newId: () => string): Plan | null {
  const largest = likelyOther(plan);
  const amplifier = largest === null ? undefined : fittingById(plan, largest.fittingId);
  const sheet = plan.sheets.find(({ id }) => id === amplifier?.sheetId);
  if (amplifier === undefined || sheet === undefined) return null;
  const hub = hubOf(plan, amplifier.id);
  const hubAt = fittingById(plan, hub.fittingId)?.at ?? amplifier.at;
  let whole: Plan | null = plan;

  const place = (kind: FittingKind, from: Point, radiusM: number): Fitting | null => {
    if (whole === null) return null;
    const at = freeSpot(whole, sheet, from, radiusM);
    const made = newFittingIn(whole, kind, { id: newId(), name: nameOf(kind, whole), sheetId: sheet.id, at });
    const after: Plan = addFitting(whole, made);
    whole = after === whole ? null : after;
    return made;
  };
  const lay = (kind: Run['kind'], from: TerminalRef, to: TerminalRef): void => {
    if (whole === null) return;
    const after: Plan = addRun(whole, newRun({ id: newId(), name: '', kind, sheetId: sheet.id, from, to, bends: [] }));
    whole = after === whole ? null : after;
  };

  const battery = place('battery', hubAt, BATTERY_FROM_HUB_M);
  const fuse = battery === null ? null : place('fuse', battery.at, FUSE_FROM_BATTERY_M);
  const ground = battery === null ? null : place('ground', battery.at, GROUND_FROM_BATTERY_M);
  if (battery === null || fuse === null || ground === null) return null;
  lay('power', { fittingId: battery.id, terminal: 'positive' }, { fittingId: fuse.id, terminal: 'in' });
  lay('power', { fittingId: fuse.id, terminal: 'out' }, hub);
  lay('ground', { fittingId: battery.id, terminal: 'negative' }, { fittingId: ground.id, terminal: 'body' });
  return whole;
}
