import { describe, expect, it } from 'vitest';
import { fittingById, runById } from '../../../src/plan/byId.ts';
import { newRun } from '../../../src/plan/create.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addOutput } from '../../../src/plan/edits/addOutput.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import { changeFitting } from '../../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../../src/plan/edits/changeRun.ts';
import { changeSettings } from '../../../src/plan/edits/changeSettings.ts';
import { changeSheet } from '../../../src/plan/edits/changeSheet.ts';
import { reconnectRun } from '../../../src/plan/edits/reconnectRun.ts';
import { removeOutput } from '../../../src/plan/edits/removeOutput.ts';
import { removeRun } from '../../../src/plan/edits/removeRun.ts';
import { renamePlan } from '../../../src/plan/edits/renamePlan.ts';
import { setInput } from '../../../src/plan/edits/setInput.ts';
import { newFitting, newFittingIn } from '../../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../../src/plan/outline.ts';
import type { Plan } from '../../../src/plan/schema.ts';
import { at, lay, place, sampleVan } from '../support/samplePlan.ts';

/** Each edit is refused: the very same plan comes back. */
function expectRefused(edits: Record<string, (plan: Plan) => Plan>): void {
  const plan = sampleVan();
  for (const [why, edit] of Object.entries(edits)) expect(edit(plan), why).toBe(plan);
}

describe('addFitting and addRun', () => {
  it('a fitting comes last, its place to 0.1 mm', () => {
    const after = place(sampleVan(), 'ground', 'new', at(1.00006, 0.5));
    expect(after.fittings.at(-1)).toMatchObject({ id: 'new', kind: 'ground', at: at(1.0001, 0.5) });
  });

  it('refuse what a file would be refused for', () => {
    const ground = newFitting('ground', { id: 'new', name: '', sheetId: 'sheet', at: at(1, 1) });
    const run = newRun({
      id: 'new',
      name: '',
      kind: 'power',
      sheetId: 'sheet',
      from: { fittingId: 'battery', terminal: 'positive' },
      to: { fittingId: 'front', terminal: 'supply' },
      bends: [],
    });
    expect(addRun(sampleVan(), run).runs).toHaveLength(8);
    expectRefused({
      'id of a run': (plan) => addFitting(plan, { ...ground, id: 'feed' }),
      'id of the plan': (plan) => addFitting(plan, { ...ground, id: 'van' }),
      'no such sheet': (plan) => addFitting(plan, { ...ground, sheetId: 'other' }),
      'no place': (plan) => addFitting(plan, { ...ground, at: at(Number.NaN, 1) }),
      'a name too long': (plan) => addFitting(plan, { ...ground, name: 'x'.repeat(201) }),
      'half a character': (plan) => addFitting(plan, { ...ground, name: '\ud83d' }),
      'from a terminal to itself': (plan) => addRun(plan, { ...run, to: run.from }),
      'no such terminal': (plan) => addRun(plan, { ...run, to: { fittingId: 'front', terminal: 'bus' } }),
      'no such fitting': (plan) => addRun(plan, { ...run, to: { fittingId: 'none', terminal: 'bus' } }),
      'another sheet': (plan) => addRun(plan, { ...run, sheetId: 'other' }),
      'id in use': (plan) => addRun(plan, { ...run, id: 'feed' }),
      'an unknown size': (plan) => addRun(plan, { ...run, conductor: { ...run.conductor, size: 'sae:5' } }),
    });
  });

  it('two runs may join the same two terminals, and two terminals of one fitting', () => {
    const twice = lay(sampleVan(), 'feed2', 'battery.positive', 'fuse.in');
    expect(twice.runs).toHaveLength(8);
    expect(lay(twice, 'short', 'battery.positive', 'battery.negative').runs).toHaveLength(9);
  });
});

describe('changeFitting and changeRun', () => {
  it('change what is told and keep the place in the list', () => {
    const after = changeFitting(sampleVan(), 'fuse', { link: { ratingA: 80, family: 'iso8820-5-SF30' }, zone: 'bay' });
    expect(after.fittings[1]).toMatchObject({ id: 'fuse', zone: 'bay', link: { ratingA: 80 } });
    const run = changeRun(sampleVan(), 'long', { tapedM: 4.12345, underCarpet: true });
    expect(run.runs[2]).toMatchObject({ id: 'long', tapedM: 4.1235, underCarpet: true });
  });

  it('refuse what is out of bounds or not of that kind', () => {
    expectRefused({
      'the same name': (plan) => changeFitting(plan, 'fuse', { name: 'Name of fuse' }),
      'a rating on a ground': (plan) => changeFitting(plan, 'bolt', { ratedW: { value: 100, origin: 'told' } }),
      'no load': (plan) => changeFitting(plan, 'front', { loadOhm: 0 }),
      'unknown fitting': (plan) => changeFitting(plan, 'none', { name: 'x' }),
      'a taped length below 0.1 mm': (plan) => changeRun(plan, 'feed', { tapedM: 0.00004 }),
      'a taped length of no number': (plan) => changeRun(plan, 'feed', { tapedM: Number.POSITIVE_INFINITY }),
      'negative rise': (plan) => changeRun(plan, 'feed', { riseM: -0.1 }),
      'unknown run': (plan) => changeRun(plan, 'none', { riseM: 1 }),
      'an output in use left out': (plan) =>
        changeFitting(plan, 'block', { outputs: [{ terminal: 'out1', link: null }] }),
      'an output twice': (plan) =>
        changeFitting(plan, 'block', {
          outputs: ['out1', 'out2', 'out2'].map((terminal) => ({ terminal, link: null })),
        }),
    });
  });

  it('an assumed efficiency follows the class; a told one stays', () => {
    const ab = changeFitting(sampleVan(), 'front', { ampClass: 'AB' });
    expect(fittingById(ab, 'front')).toMatchObject({ efficiency: { value: 0.55, origin: 'assumed' } });
    expect(changeFitting(ab, 'front', { ampClass: 'D' })).toEqual(sampleVan());
    const told = setInput(sampleVan(), 'front.efficiency', 0.7, 'told');
    expect(fittingById(changeFitting(told, 'front', { ampClass: 'AB' }), 'front')).toMatchObject({
      efficiency: { value: 0.7, origin: 'told' },
    });
  });
});

describe('outputs of a block', () => {
  it('are added under the first free name, fused or not', () => {
    const third = addOutput(sampleVan(), 'block');
    expect(fittingById(third, 'block')).toMatchObject({
      outputs: [{ terminal: 'out1' }, { terminal: 'out2' }, { terminal: 'out3', link: { ratingA: 'auto' } }],
    });
    const again = addOutput(removeOutput(third, 'block', 'out2'), 'block', null);
    expect(fittingById(again, 'block')).toMatchObject({
      outputs: [{ terminal: 'out1' }, { terminal: 'out3' }, { terminal: 'out2', link: null }],
    });
  });

  it('are removed with the runs joined to them', () => {
    const after = removeOutput(sampleVan(), 'block', 'out1');
    expect(runById(after, 'toFront')).toBeUndefined();
    expect(after.runs).toHaveLength(6);
  });

  it('24 are the most and one the least', () => {
    let plan = sampleVan();
    for (let count = 0; count < 30; count++) plan = addOutput(plan, 'block');
    expect(fittingById(plan, 'block')).toHaveProperty('outputs.length', 24);
    const one = removeOutput(sampleVan(), 'block', 'out2');
    expect(removeOutput(one, 'block', 'out1')).toBe(one);
  });

  it('stay on a locked block and under a locked run', () => {
    const locked = changeFitting(sampleVan(), 'block', { locked: true });
    expect(removeOutput(locked, 'block', 'out1')).toBe(locked);
    const run = changeRun(sampleVan(), 'toFront', { locked: true });
    expect(removeOutput(run, 'block', 'out1')).toBe(run);
  });

  it('are no one else’s', () => {
    expectRefused({
      'added to a fuse': (plan) => addOutput(plan, 'fuse'),
      'removed from a fuse': (plan) => removeOutput(plan, 'fuse', 'out'),
      'removed where none is': (plan) => removeOutput(plan, 'block', 'out9'),
    });
  });
});

describe('reconnectRun and removeRun', () => {
  it('joins one end to another terminal', () => {
    const after = reconnectRun(sampleVan(), 'feed', 'to', { fittingId: 'block', terminal: 'bus' });
    expect(runById(after, 'feed')?.to).toEqual({ fittingId: 'block', terminal: 'bus' });
  });

  it('refuses a terminal that is not there, its own other end, and a locked run', () => {
    expectRefused({
      'not there': (plan) => reconnectRun(plan, 'feed', 'to', { fittingId: 'block', terminal: 'out3' }),
      'its other end': (plan) => reconnectRun(plan, 'feed', 'to', { fittingId: 'battery', terminal: 'positive' }),
      'where it is': (plan) => reconnectRun(plan, 'feed', 'to', { fittingId: 'fuse', terminal: 'in' }),
    });
    const locked = changeRun(sampleVan(), 'feed', { locked: true });
    expect(reconnectRun(locked, 'feed', 'to', { fittingId: 'block', terminal: 'bus' })).toBe(locked);
  });

  it('takes out one run and leaves its fittings', () => {
    const after = removeRun(sampleVan(), 'feed');
    expect(after.runs).toHaveLength(6);
    expect(after.fittings).toHaveLength(8);
  });
});

describe('setInput', () => {
  it('sets settings, fields of fittings and of runs, and drops the source of the old value', () => {
    expect(setInput(sampleVan(), 'settings.bodyOhm', 0.002, 'measured').settings.bodyOhm).toEqual({
      value: 0.002,
      origin: 'measured',
    });
    const strap = setInput(sampleVan(), 'battery.strap.lengthM', 0.60004, 'told');
    expect(fittingById(strap, 'battery')).toMatchObject({ strap: { lengthM: { value: 0.6, origin: 'told' } } });
    const run = setInput(sampleVan(), 'feed.conductor.insulationC', 60, 'told');
    expect(runById(run, 'feed')?.conductor.insulationC).toEqual({ value: 60, origin: 'told' });
    expect(setInput(sampleVan(), 'sheet.scale', 1.02, 'measured').sheets[0]?.scale.value).toBe(1.02);
  });

  it('sets what was not told at all', () => {
    const after = setInput(sampleVan(), 'front.ratedW', 800, 'told');
    expect(fittingById(after, 'front')).toMatchObject({ ratedW: { value: 800, origin: 'told' } });
  });

  it('the same value may become told; the source then goes', () => {
    expect(setInput(sampleVan(), 'settings.duty', 1 / 3, 'told').settings.duty).toEqual({
      value: 1 / 3,
      origin: 'told',
    });
  });

  it('refuses paths that lead nowhere and values out of bounds', () => {
    expectRefused({
      'no change': (plan) => setInput(plan, 'settings.bodyOhm', 0.001, 'assumed'),
      'no setting': (plan) => setInput(plan, 'settings.colour', 1, 'told'),
      'settings alone': (plan) => setInput(plan, 'settings', 1, 'told'),
      nothing: (plan) => setInput(plan, '', 1, 'told'),
      'of the prototype': (plan) => setInput(plan, 'settings.__proto__.value', 1, 'told'),
      'no input': (plan) => setInput(plan, 'settings.ruleSet', 'boatCfr', 'told'),
      'below nothing': (plan) => setInput(plan, 'front.ratedW.value.more', 1, 'told'),
      'out of bounds': (plan) => setInput(plan, 'settings.duty', 2, 'told'),
      'not a number': (plan) => setInput(plan, 'settings.duty', Number.NaN, 'told'),
      'a wrong type': (plan) => setInput(plan, 'front.regulated', 'yes', 'told'),
      'no fitting': (plan) => setInput(plan, 'none.efficiency', 0.5, 'told'),
    });
  });
});

describe('settings, sheet and plan', () => {
  it('another size system brings its own stock, unless told which', () => {
    const metric = changeSettings(sampleVan(), { sizeSystem: 'mm2' });
    expect(metric.settings.stock).toEqual([
      ...['mm2:10', 'mm2:16', 'mm2:25', 'mm2:35', 'mm2:50', 'mm2:70', 'mm2:95', 'mm2:120'],
    ]);
    expect(changeSettings(sampleVan(), { sizeSystem: 'mm2', stock: ['mm2:25'] }).settings.stock).toEqual(['mm2:25']);
    expect(changeSettings(metric, { sizeSystem: 'mm2' })).toBe(metric);
  });

  it('refuse what a file would be refused for', () => {
    expectRefused({
      'no stock': (plan) => changeSettings(plan, { stock: [] }),
      'an unknown size': (plan) => changeSettings(plan, { stock: ['sae:5'] }),
      'no change of settings': (plan) => changeSettings(plan, { engineAlwaysRunning: false }),
      'no such sheet': (plan) => changeSheet(plan, 'none', { name: 'x' }),
      'a van too long': (plan) =>
        changeSheet(plan, 'sheet', {
          outline: { ...DEFAULT_OUTLINES.panelVan, lengthM: 13, widthM: 2, bayM: 1, cabM: 1 },
        }),
      'the same plan name': (plan) => renamePlan(plan, 'Van'),
      'a plan name too long': (plan) => renamePlan(plan, 'x'.repeat(201)),
      'half a character': (plan) => renamePlan(plan, 'Van \udc00'),
    });
  });

  it('a name may hold any writing of at most 200', () => {
    expect(renamePlan(sampleVan(), 'Фургон 🚐 «№ 7»').name).toBe('Фургон 🚐 «№ 7»');
  });

  it('an outline is kept to 0.1 mm', () => {
    const outline = { ...DEFAULT_OUTLINES.panelVan, lengthM: 5.00004, widthM: 2, bayM: 1.10006, cabM: 1.5 } as const;
    expect(changeSheet(sampleVan(), 'sheet', { outline }).sheets[0]?.outline).toEqual({
      ...outline,
      lengthM: 5,
      bayM: 1.1001,
    });
  });
});

describe('newFittingIn', () => {
  const where = { id: 'second', name: '', sheetId: 'sheet', at: at(4, 1) };

  it('assumes the vehicle’s strap on the first battery only', () => {
    const first = newFittingIn({ ...sampleVan(), fittings: [] }, 'battery', where);
    expect(first).toMatchObject({ strap: { lengthM: { value: 0.4 }, areaMm2: { value: 25 } } });
    expect(newFittingIn(sampleVan(), 'battery', where)).toMatchObject({ strap: null });
  });
});
