/** A van with one of every kind of fitting and run in it: for the pictures, not a good job. */
import { newPlan, newRun } from '../../src/plan/create.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { addRun } from '../../src/plan/edits/addRun.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { FittingKind, Plan, RunKind } from '../../src/plan/schema.ts';
import { terminalRef } from './terminal.ts';

const SHEET = 'sheet';

const FITTINGS: readonly (readonly [id: string, kind: FittingKind, name: string, xM: number, yM: number])[] = [
  ['battery', 'battery', 'Battery', 0.45, 1.35],
  ['alternator', 'alternator', 'Alternator', 0.4, 0.6],
  ['mainFuse', 'fuse', 'Main fuse', 0.75, 1.45],
  ['firewall', 'passThrough', 'Pass-through', 1, 1.3],
  ['jumpPost', 'jumpPost', 'Jump post', 0.8, 0.25],
  ['relay', 'relay', 'Isolating relay', 1.8, 1.5],
  ['second', 'battery', 'Second battery', 3.2, 1.5],
  ['secondFuse', 'fuse', 'Fuse', 2.7, 1.5],
  ['breaker', 'breaker', 'Thermal breaker', 1.8, 0.9],
  ['block', 'block', 'Distribution block', 2.4, 0.9],
  ['charger', 'charger', 'DC-DC charger', 3.2, 1.1],
  ['amp', 'amplifier', 'Rear amplifier', 3.5, 0.55],
  ['capacitor', 'capacitor', 'Capacitor', 3, 0.7],
  ['load', 'load', 'Other load', 2.6, 0.3],
  ['takeOff', 'takeOff', 'Fused take-off', 1.6, 0.4],
  ['switch', 'switch', 'Battery switch', 2.1, 0.35],
  ['reducer', 'reducer', 'Reducer', 3.1, 0.35],
  ['bus', 'bus', 'Bus bar', 3.9, 0.9],
  ['ground', 'ground', 'Ground point', 4.1, 1.3],
];

const RUNS: readonly (readonly [kind: RunKind, from: string, to: string])[] = [
  ['factory', 'alternator.positive', 'battery.positive'],
  ['power', 'battery.positive', 'mainFuse.in'],
  ['power', 'mainFuse.out', 'firewall.through'],
  ['power', 'firewall.through', 'relay.in'],
  ['power', 'relay.out', 'secondFuse.in'],
  ['power', 'secondFuse.out', 'second.positive'],
  ['power', 'firewall.through', 'breaker.in'],
  ['power', 'breaker.out', 'block.bus'],
  ['power', 'block.out1', 'reducer.wide'],
  ['power', 'reducer.narrow', 'amp.supply'],
  ['power', 'block.out2', 'charger.input'],
  ['power', 'charger.output', 'second.positive'],
  ['power', 'capacitor.positive', 'amp.supply'],
  ['power', 'takeOff.stud', 'switch.in'],
  ['power', 'switch.out', 'load.supply'],
  ['ground', 'amp.ground', 'bus.bus'],
  ['ground', 'capacitor.negative', 'bus.bus'],
  ['ground', 'load.ground', 'bus.bus'],
  ['ground', 'charger.ground', 'bus.bus'],
  ['ground', 'bus.bus', 'ground.body'],
  ['ground', 'second.negative', 'ground.body'],
];

export function everyFitting(): Plan {
  const outline = DEFAULT_OUTLINES.panelVan;
  const empty = newPlan({ id: 'every', name: 'Every fitting', sheetId: SHEET, outline, mirrored: false });
  const placed = FITTINGS.reduce(
    (plan, [id, kind, name, xM, yM]) =>
      addFitting(plan, newFittingIn(plan, kind, { id, name, sheetId: SHEET, at: { xM, yM } })),
    empty,
  );
  return RUNS.reduce(
    (plan, [kind, from, to], index) =>
      addRun(
        plan,
        newRun({
          id: `run${index}`,
          name: '',
          kind,
          sheetId: SHEET,
          from: terminalRef(from),
          to: terminalRef(to),
          bends: [],
        }),
      ),
    placed,
  );
}
