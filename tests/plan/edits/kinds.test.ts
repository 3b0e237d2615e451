/** Edits on what version 2 brought: sources, switches, breakers, reducers, second inputs, own links, measured joints. */

import { describe, expect, it } from 'vitest';
import { fittingById, runById } from '../../../src/plan/byId.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { changeFitting } from '../../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../../src/plan/edits/changeRun.ts';
import { changeSettings } from '../../../src/plan/edits/changeSettings.ts';
import { mirrorSheet } from '../../../src/plan/edits/mirrorSheet.ts';
import { moveFitting } from '../../../src/plan/edits/moveFitting.ts';
import { reconnectRun } from '../../../src/plan/edits/reconnectRun.ts';
import { conductorJoined, removeFitting } from '../../../src/plan/edits/removeFitting.ts';
import { removeRun } from '../../../src/plan/edits/removeRun.ts';
import { setInput } from '../../../src/plan/edits/setInput.ts';
import { slideFitting } from '../../../src/plan/edits/slideFitting.ts';
import { splitRun } from '../../../src/plan/edits/splitRun.ts';
import { firstFault } from '../../../src/plan/faults.ts';
import { newFitting } from '../../../src/plan/newFitting.ts';
import {
  type Conductor,
  type Fitting,
  type FittingKind,
  fittingSchema,
  type OwnLink,
  type Plan,
} from '../../../src/plan/schema.ts';
import { INLINE_KINDS, inlineTerminals, terminalsOf } from '../../../src/plan/terminals.ts';
import { at, emptyVan, lay, place, sampleVan } from '../support/samplePlan.ts';

/** A continuation point needs a second sheet: it has tests of its own. */
const KINDS = fittingSchema.options
  .map(({ entries }) => entries.kind.literal)
  .filter((kind) => kind !== 'continuation');
const own: OwnLink = { family: 'own1', name: 'Ours', seat: 'holder', ratingsA: [60], breakingA: null, ratedV: 32 };

/** Battery at x = 0, amplifier at x = 4, one measured run of every property between them. */
function measuredLine(): Plan {
  const plan = place(place(emptyVan(), 'battery', 'battery', at(0, 1)), 'amplifier', 'amp', at(4, 1));
  return lay(plan, 'feed', 'battery.positive', 'amp.supply', {
    ...{
      tapedM: 4.4,
      riseM: 0.4,
      slackPercent: 5,
      bundled: 3,
      bendRadiusMm: 50,
      fromJointOhm: 0.0002,
      toJointOhm: 0.0003,
    },
  });
}

const fitting = (kind: FittingKind, id = 'new'): Fitting =>
  newFitting(kind, { id, name: '', sheetId: 'sheet', at: at(1, 1) });
const joints = (plan: Plan) => plan.runs.map(({ fromJointOhm, toJointOhm }) => [fromJointOhm, toJointOhm]);

describe('an inline fitting', () => {
  it.each([
    ['fuse', 'in', 'out'],
    ['breaker', 'in', 'out'],
    ['relay', 'in', 'out'],
    ['switch', 'in', 'out'],
    ['reducer', 'wide', 'narrow'],
    ['passThrough', 'through', 'through'],
  ] as const)('%s: comes in at %s, leaves at %s, slides, and gives back the run when it goes', (kind, into, outOf) => {
    expect(inlineTerminals(kind)).toEqual([into, outOf]);
    const plan = measuredLine();
    const split = splitRun(plan, 'feed', at(1, 1), fitting(kind), 'rest');
    expect(split.runs).toMatchObject([
      { id: 'feed', to: { fittingId: 'new', terminal: into }, tapedM: 1.1, riseM: 0.1, bundled: 3, bendRadiusMm: 50 },
      {
        id: 'rest',
        from: { fittingId: 'new', terminal: outOf },
        tapedM: 3.3,
        riseM: 0.3,
        bundled: 3,
        bendRadiusMm: 50,
      },
    ]);
    expect(joints(split)).toEqual([
      [0.0002, null],
      [null, 0.0003],
    ]);
    expect(slideFitting(split, 'new', at(2, 1)).runs.map(({ tapedM }) => tapedM)).toEqual([2.2, 2.2]);
    expect(moveFitting(split, 'new', at(2, 1)).runs.map(({ tapedM }) => tapedM)).toEqual([2.2, 2.2]);
    expect(removeFitting(split, 'new')).toEqual(plan);
  });

  it.each(KINDS.filter((kind) => !INLINE_KINDS.has(kind)))('%s is none', (kind) => {
    const plan = measuredLine();
    expect(splitRun(plan, 'feed', at(1, 1), fitting(kind), 'rest')).toBe(plan);
  });

  it('the vehicle’s own cable, split, stays the vehicle’s own on both sides', () => {
    const plan = changeRun(measuredLine(), 'feed', { kind: 'factory' });
    const split = splitRun(plan, 'feed', at(1, 1), fitting('fuse'), 'rest');
    expect(split.runs.map(({ kind }) => kind)).toEqual(['factory', 'factory']);
    // joined to a cable that was added it is not one cable, and both go
    expect(removeFitting(changeRun(split, 'rest', { kind: 'power' }), 'new').runs).toEqual([]);
  });
});

describe('runs that become one never come out calmer', () => {
  /** From battery to amplifier by a switch, each run laid either way round. */
  function twoRuns(isFirstTurned: boolean, isSecondTurned: boolean): Plan {
    let plan = place(removeRun(measuredLine(), 'feed'), 'switch', 'switch', at(2, 1));
    const [first, second] = [
      ['battery.positive', 'switch.in'],
      ['switch.out', 'amp.supply'],
    ] as const;
    const joint = (isTurned: boolean, farOhm: number, isFarFrom: boolean) =>
      isTurned === isFarFrom ? { fromJointOhm: 0.9, toJointOhm: farOhm } : { fromJointOhm: farOhm, toJointOhm: 0.9 };
    plan = lay(plan, 'a', first[isFirstTurned ? 1 : 0], first[isFirstTurned ? 0 : 1], joint(isFirstTurned, 0.1, true));
    return lay(
      plan,
      'b',
      second[isSecondTurned ? 1 : 0],
      second[isSecondTurned ? 0 : 1],
      joint(isSecondTurned, 0.2, false),
    );
  }

  it.each([
    [false, false],
    [false, true],
    [true, false],
    [true, true],
  ])('joints measured at the far ends stay at them: turned %s, %s', (isFirstTurned, isSecondTurned) => {
    const [run, ...others] = removeFitting(twoRuns(isFirstTurned, isSecondTurned), 'switch').runs;
    expect(others).toEqual([]);
    const atBattery = run?.from.fittingId === 'battery' ? run.fromJointOhm : run?.toJointOhm;
    const atAmp = run?.from.fittingId === 'amp' ? run.fromJointOhm : run?.toJointOhm;
    expect([atBattery, atAmp]).toEqual([0.1, 0.2]);
  });

  it('the greater bundle, the tighter bend, a loom and a carpet of either', () => {
    let plan = twoRuns(false, false);
    plan = changeRun(plan, 'a', { bundled: 2, bendRadiusMm: null, underCarpet: true });
    plan = changeRun(plan, 'b', { bundled: 5, bendRadiusMm: 40, inLoom: true });
    expect(removeFitting(plan, 'switch').runs[0]).toMatchObject({
      ...{ bundled: 5, bendRadiusMm: 40, inLoom: true, underCarpet: true },
    });
    plan = changeRun(plan, 'a', { bendRadiusMm: 30 });
    expect(removeFitting(plan, 'switch').runs[0]?.bendRadiusMm).toBe(30);
  });
});

describe('the one conductor of runs that become one', () => {
  /** The end for the amplifier is laid first, so that it is not by their order. */
  function throughReducer(narrow: Partial<Conductor>, wide: Partial<Conductor>): Plan {
    const { conductor } = runById(measuredLine(), 'feed') ?? {};
    if (conductor === undefined) throw new Error('There is a feed.');
    const plan = place(removeRun(measuredLine(), 'feed'), 'reducer', 'reducer', at(2, 1));
    const first = lay(plan, 'thin', 'reducer.narrow', 'amp.supply', { conductor: { ...conductor, ...narrow } });
    return lay(first, 'thick', 'battery.positive', 'reducer.wide', { conductor: { ...conductor, ...wide } });
  }

  it('is what comes in at the wide end of a reducer, all of it: a fuse ahead is for that', () => {
    const cca = { value: 'cca10', origin: 'told' } as const;
    const plan = throughReducer({ size: 'sae:8' }, { size: 'sae:1/0', material: cca });
    const [run] = removeFitting(plan, 'reducer').runs;
    expect(run).toMatchObject({ id: 'thin', conductor: { size: 'sae:1/0', material: cca } });
    expect(conductorJoined(plan, 'reducer')).toEqual(run?.conductor);
  });

  it('is worked out where that of the wide end is, though the narrow end was told', () => {
    const plan = throughReducer({ size: 'sae:8' }, { size: 'auto' });
    expect(removeFitting(plan, 'reducer').runs[0]?.conductor.size).toBe('auto');
    expect(conductorJoined(plan, 'reducer')?.size).toBe('auto');
  });

  it('is told as changed only where the two were unlike, and only where they are joined', () => {
    const same = throughReducer({ size: 'sae:4' }, { size: 'sae:4' });
    expect(conductorJoined(same, 'reducer')).toBeNull();
    expect(conductorJoined(same, 'battery')).toBeNull();
    expect(conductorJoined(same, 'nothing')).toBeNull();
    const cooler = throughReducer({ insulationC: { value: 60, origin: 'told' } }, {});
    expect(conductorJoined(cooler, 'reducer')).toEqual(removeFitting(cooler, 'reducer').runs[0]?.conductor);
  });
});

describe('reconnectRun', () => {
  it('forgets what was measured of the joint that is made anew, and of no other', () => {
    const plan = place(measuredLine(), 'block', 'block', at(2, 1.5));
    const to = reconnectRun(plan, 'feed', 'to', { fittingId: 'block', terminal: 'bus' });
    expect(joints(to)).toEqual([[0.0002, null]]);
    const from = reconnectRun(plan, 'feed', 'from', { fittingId: 'block', terminal: 'bus' });
    expect(joints(from)).toEqual([[null, 0.0003]]);
    expect(reconnectRun(plan, 'feed', 'to', { fittingId: 'amp', terminal: 'supply' })).toBe(plan);
    expect(reconnectRun(plan, 'feed', 'to', { fittingId: 'amp', terminal: 'supply2' })).toBe(plan);
  });
});

describe('the second pair of terminals of an amplifier', () => {
  it('is there once told, and stays while a run is on it', () => {
    const one = sampleVan();
    const two = changeFitting(one, 'front', { supplyInputs: 'two' });
    expect(changeFitting(two, 'front', { supplyInputs: 'one' })).toEqual(one);
    for (const [terminal, from] of [
      ['supply2', 'block.bus'],
      ['ground2', 'bolt2.body'],
    ]) {
      expect(lay(one, 'second', from ?? '', `front.${terminal}`)).toBe(one);
      const used = lay(two, 'second', from ?? '', `front.${terminal}`);
      expect(used.runs).toHaveLength(8);
      expect(changeFitting(used, 'front', { supplyInputs: 'one' })).toBe(used);
      expect(changeFitting(used, 'front', { supplyInputs: 'one', name: 'Front' })).toBe(used);
      expect(changeFitting(removeRun(used, 'second'), 'front', { supplyInputs: 'one' })).toEqual(one);
    }
  });
});

describe('families of links of the user’s own', () => {
  const withOwn = (plan = sampleVan()) => changeSettings(plan, { ownLinks: [own] });
  const link = { ratingA: 60, family: 'own1' } as const;

  it.each<[string, (plan: Plan) => Plan]>([
    ['a fuse', (plan) => changeFitting(plan, 'fuse', { link })],
    [
      'an output',
      (plan) => changeFitting(plan, 'block', { outputs: ['out1', 'out2'].map((terminal) => ({ terminal, link })) }),
    ],
    ['the post of a battery', (plan) => changeFitting(plan, 'battery', { postLink: link })],
    [
      'a new breaker',
      (plan) =>
        addFitting(plan, { ...newFitting('breaker', { id: 'b', name: '', sheetId: 'sheet', at: at(1, 1) }), link }),
    ],
    [
      'a fuse dropped into a run',
      (plan) =>
        splitRun(
          plan,
          'long',
          at(2, 1.7),
          { ...newFitting('fuse', { id: 'f', name: '', sheetId: 'sheet', at: at(2, 1.7) }), link },
          'rest',
        ),
    ],
    ['the families held', (plan) => changeSettings(plan, { linkFamilies: ['own1', 'iso8820-3-E'] })],
  ])('%s may name one only once it is told, and then it cannot go', (_, edit) => {
    const untold = sampleVan();
    expect(edit(untold)).toBe(untold);
    const used = edit(withOwn());
    expect(used).not.toEqual(withOwn());
    expect(firstFault(used)).toBeNull();
    expect(changeSettings(used, { ownLinks: [] })).toBe(used);
    expect(changeSettings(used, { ownLinks: [{ ...own, family: 'own2' }] })).toBe(used);
    const changed = changeSettings(used, { ownLinks: [{ ...own, name: 'Others', ratingsA: [80], seat: 'post' }] });
    expect(changed.settings.ownLinks).toMatchObject([{ name: 'Others', ratingsA: [80], seat: 'post' }]);
  });

  it('go while nothing names them, or in the change that no longer holds them', () => {
    expect(changeSettings(withOwn(), { ownLinks: [] })).toEqual(sampleVan());
    const held = changeSettings(withOwn(), { linkFamilies: ['own1', 'iso8820-3-E'] });
    const gone = changeSettings(held, { ownLinks: [], linkFamilies: ['iso8820-3-E'] });
    expect(gone.settings).toMatchObject({ ownLinks: [], linkFamilies: ['iso8820-3-E'] });
  });

  it('are told once each', () => {
    const plan = sampleVan();
    expect(changeSettings(plan, { ownLinks: [own, { ...own, name: 'Again' }] })).toBe(plan);
    expect(changeSettings(plan, { ownLinks: [own, { ...own, family: 'own6' }] }).settings.ownLinks).toHaveLength(2);
  });
});

describe('figures of the new kinds', () => {
  it('are set by their path, kept to 0.1 mm, and refused out of bounds', () => {
    const plan = KINDS.reduce((current, kind, index) => place(current, kind, kind, at(index / 4, 1)), emptyVan());
    const set = (path: string, value: number) => setInput(plan, path, value, 'told');
    expect(fittingById(set('reducer.lengthM', 0.15004), 'reducer')).toMatchObject({ lengthM: { value: 0.15 } });
    expect(fittingById(set('takeOff.cable.lengthM', 2.00006), 'takeOff')).toMatchObject({
      cable: { lengthM: { value: 2.0001, origin: 'told' }, areaMm2: { value: 50, origin: 'assumed' } },
    });
    expect(fittingById(set('battery.internalOhm', 0.004), 'battery')).toMatchObject({
      internalOhm: { value: 0.004, origin: 'told' },
    });
    for (const [path, value] of [
      ['battery.internalOhm', 0],
      ['battery.capacityAh', 0],
      ['alternator.hotShare', 1.1],
      ['alternator.idleA', 1001],
      ['charger.efficiency', 1],
      ['charger.outputMaxA', 301],
      ['relay.contactOhm', 0.2],
      ['switch.closed', 1],
      ['bus.ratedA', 200],
      ['capacitor.capacitanceF', 0],
      ['capacitor.esrOhm', 0],
      ['load.currentA', 0],
      ['reducer.lengthM', 1.1],
      ['jumpPost.cable', 3],
    ] as const) {
      expect(set(path, value), path).toBe(plan);
    }
  });

  it('a size that is none is refused as what terminals take', () => {
    const plan = sampleVan();
    expect(changeFitting(plan, 'block', { takes: 'mm2:36' })).toBe(plan);
    expect(changeFitting(plan, 'block', { outputsTake: 'awg:5' })).toBe(plan);
    expect(changeFitting(plan, 'fuse', { outputsTake: 'awg:4' })).toBe(plan);
    expect(fittingById(changeFitting(plan, 'block', { takes: 'mm2:35', outputsTake: 'awg:4' }), 'block')).toMatchObject(
      {
        ...{ takes: 'mm2:35', outputsTake: 'awg:4' },
      },
    );
  });

  it('mirroring and moving change nothing but places', () => {
    const plan = KINDS.reduce((current, kind, index) => place(current, kind, kind, at(index / 4, 0.5)), emptyVan());
    const mirrored = mirrorSheet(plan, 'sheet');
    expect(mirrored.fittings).toEqual(plan.fittings.map((one) => ({ ...one, at: at(one.at.xM, 1.3) })));
    expect(mirrorSheet(mirrored, 'sheet')).toEqual(plan);
    for (const one of plan.fittings) {
      const moved = moveFitting(plan, one.id, at(3, 1));
      expect(fittingById(moved, one.id)).toEqual({ ...one, at: at(3, 1) });
    }
  });

  it('a fitting of any kind takes its runs with it', () => {
    for (const kind of KINDS) {
      const alone = place(place(emptyVan(), kind, 'one', at(1, 1)), 'ground', 'bolt', at(2, 1));
      const terminals = terminalsOf(fittingById(alone, 'one') ?? fitting('ground'));
      const plan = terminals.reduce((current, name) => lay(current, `r-${name}`, `one.${name}`, 'bolt.body'), alone);
      expect(plan.runs.map(({ id }) => id)).toEqual(terminals.map((name) => `r-${name}`));
      const after = removeFitting(plan, 'one');
      expect(fittingById(after, 'one')).toBeUndefined();
      expect(
        after.runs.some(({ from, to }) => [from, to].some(({ fittingId }) => fittingId === 'one')),
        kind,
      ).toBe(false);
      expect(runById(after, 'r-in')).toBeUndefined();
    }
  });
});
