import { newPlan, newRun } from '../../../src/plan/create.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import { changeFitting } from '../../../src/plan/edits/changeFitting.ts';
import { changeSettings } from '../../../src/plan/edits/changeSettings.ts';
import { newFitting } from '../../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../../src/plan/outline.ts';
import type { FittingKind, Plan, Point, Run } from '../../../src/plan/schema.ts';
import { terminalRef } from '../../support/terminal.ts';

export const at = (xM: number, yM: number): Point => ({ xM, yM });

/** An empty van, left-hand drive. */
export const emptyVan = (): Plan =>
  newPlan({ id: 'van', name: 'Van', sheetId: 'sheet', outline: DEFAULT_OUTLINES.panelVan, mirrored: false });

export function place(plan: Plan, kind: FittingKind, id: string, where: Point): Plan {
  return addFitting(plan, newFitting(kind, { id, name: `Name of ${id}`, sheetId: 'sheet', at: where }));
}

/** A run 'id' from 'battery.positive' to 'amp.supply', ends written with a dot. */
export function lay(plan: Plan, id: string, from: string, to: string, change: Partial<Run> = {}): Plan {
  const run = newRun({
    id,
    name: `Name of ${id}`,
    kind: 'power',
    sheetId: 'sheet',
    from: terminalRef(from),
    to: terminalRef(to),
    bends: [],
  });
  return addRun(plan, { ...run, ...change });
}

/** Battery, fuse, pass-through, block, two amplifiers, their grounds: eight fittings, seven runs. */
export function sampleVan(): Plan {
  let plan = emptyVan();
  plan = place(plan, 'battery', 'battery', at(0.5, 1.4));
  plan = place(plan, 'fuse', 'fuse', at(0.8, 1.4));
  plan = place(plan, 'passThrough', 'wall', at(1, 1.2));
  plan = place(plan, 'block', 'block', at(3.2, 1));
  plan = place(plan, 'amplifier', 'front', at(3.6, 0.5));
  plan = place(plan, 'amplifier', 'rear', at(3.6, 1.5));
  plan = place(plan, 'ground', 'bolt', at(3.4, 1.7));
  plan = place(plan, 'ground', 'bolt2', at(3.4, 0.2));
  plan = lay(plan, 'feed', 'battery.positive', 'fuse.in');
  plan = lay(plan, 'wallFeed', 'fuse.out', 'wall.through', { bends: [at(0.9, 1.4), at(0.9, 1.2)] });
  plan = lay(plan, 'long', 'wall.through', 'block.bus', { bends: [at(1, 1.7), at(3, 1.7)], riseM: 0.4 });
  plan = lay(plan, 'toFront', 'block.out1', 'front.supply');
  plan = lay(plan, 'toRear', 'block.out2', 'rear.supply');
  plan = lay(plan, 'frontGround', 'front.ground', 'bolt2.body', { kind: 'ground' });
  plan = lay(plan, 'rearGround', 'rear.ground', 'bolt.body', { kind: 'ground' });
  return plan;
}

/** The sample with a fitting of every other kind in it, its own family of links, and two inputs on an amplifier in use. */
export function sampleOfAll(): Plan {
  let plan = changeFitting(sampleVan(), 'rear', { supplyInputs: 'two' });
  plan = changeSettings(plan, {
    ownLinks: [{ family: 'own1', name: 'Ours', seat: 'holder', ratingsA: [60], breakingA: null, ratedV: 32 }],
  });
  const others: FittingKind[] = [
    ...(['breaker', 'bus', 'reducer', 'load', 'alternator', 'jumpPost', 'takeOff'] as const),
    ...(['charger', 'relay', 'switch', 'capacitor'] as const),
  ];
  for (const [index, kind] of others.entries()) plan = place(plan, kind, kind, at(0.4 + index / 3, 0.9));
  plan = changeFitting(plan, 'breaker', { link: { ratingA: 60, family: 'own1' } });
  plan = lay(plan, 'charging', 'alternator.positive', 'battery.positive', { kind: 'factory' });
  plan = lay(plan, 'second', 'block.bus', 'rear.supply2', { toJointOhm: 0.0004, bundled: 2 });
  plan = lay(plan, 'toRelay', 'jumpPost.stud', 'relay.in', { fromJointOhm: 0.0002 });
  plan = lay(plan, 'toBus', 'relay.out', 'bus.bus', { bends: [at(2, 0.4)], tapedM: 2.5 });
  plan = lay(plan, 'toWide', 'bus.bus', 'reducer.wide');
  return lay(plan, 'toLoad', 'reducer.narrow', 'load.supply', { bendRadiusMm: 30 });
}
