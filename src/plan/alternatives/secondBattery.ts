import { fittingById } from '../byId.ts';
import { Builder, type ProposedNames } from '../propose/builder.ts';
import { groundSource, joinSource } from '../propose/propose.ts';
import type { Plan, TerminalRef } from '../schema.ts';
import { likelyOther } from './otherAmplifier.ts';

/** From what it is joined to, m, as drawn: near, with room for its fuse and ground between. */
const BATTERY_FROM_HUB_M = [0.6, 0.75, 0.45];
/** Battery, fuse, ground, and the three runs between: with less the plan was full, or a run was refused. */
const PARTS = 6;

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

/**
 * The plan with a battery beside the largest amplifier, laid as a proposal would: a fuse of its own near its post, joined
 * to what feeds that amplifier, and grounded. Null when no amplifier is rated, or the plan has no room for it.
 */
export function secondBattery(plan: Plan, names: ProposedNames, newId: () => string): Plan | null {
  const largest = likelyOther(plan);
  const amplifier = largest === null ? undefined : fittingById(plan, largest.fittingId);
  const sheet = plan.sheets.find(({ id }) => id === amplifier?.sheetId);
  if (amplifier === undefined || sheet === undefined) return null;
  const builder = new Builder(plan, sheet, names, newId);
  const hub = hubOf(plan, amplifier.id);
  const from = builder.at(hub);
  const at = builder.spot({ from, radiiM: BATTERY_FROM_HUB_M, towards: from, sameZone: true });
  const batteryId = builder.place('battery', at, { why: 'feeds' });
  const battery = fittingById(builder.plan, batteryId);
  if (battery === undefined) return null;
  joinSource(builder, battery, hub);
  groundSource(builder, battery);
  return builder.proposal.length < PARTS ? null : builder.plan;
}
