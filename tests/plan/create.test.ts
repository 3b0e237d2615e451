import { describe, expect, it } from 'vitest';
import { ALL_GAUGES, DEFAULT_STOCK } from '../../src/calc/conductor/gauge.ts';
import { SOURCES } from '../../src/calc/sources.ts';
import { systemFigures } from '../../src/calc/supply/systemVolts.ts';
import { LINK_FAMILY_IDS, linkFamily } from '../../src/calc/tables/links.ts';
import { assumedVolts, defaultSettings, newId, newPlan, newRun } from '../../src/plan/create.ts';
import { changeSettings } from '../../src/plan/edits/changeSettings.ts';
import { setInput } from '../../src/plan/edits/setInput.ts';
import { defaultStock, KNOWN_GAUGES } from '../../src/plan/gauges.ts';
import { newFitting, newFittingIn } from '../../src/plan/newFitting.ts';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import { type FittingKind, fittingSchema, type Input, settingsSchema } from '../../src/plan/schema.ts';
import { terminalsOf } from '../../src/plan/terminals.ts';
import { at } from './support/samplePlan.ts';

const place = { id: 'x', name: 'X', sheetId: 'sheet', at: at(1, 1) };
const given = (input: { value: unknown }) => input.value;

describe('the calc room and the plan room hold the same lists', () => {
  it('of sizes', () => {
    expect([...KNOWN_GAUGES]).toEqual([...ALL_GAUGES]);
  });

  it('of default stock', () => {
    for (const system of ['sae', 'awg', 'mm2'] as const) expect(defaultStock(system)).toEqual(DEFAULT_STOCK[system]);
  });

  it('of link families; those on by default state what they break', () => {
    const families = settingsSchema.entries.linkFamilies.item.options;
    const own = families.filter((family) => family.startsWith('own'));
    expect([...families].sort()).toEqual([...LINK_FAMILY_IDS, ...own].sort());
    expect(own).toEqual(['own1', 'own2', 'own3', 'own4', 'own5', 'own6']);
    for (const id of defaultSettings().linkFamilies) expect(linkFamily(id).breakingA).not.toBeNull();
  });
});

describe('defaultSettings', () => {
  it('are the figures of the rules', () => {
    const settings = defaultSettings();
    expect(settings).toMatchObject({
      ruleSet: 'vehicle',
      sizeSystem: 'sae',
      stock: ['sae:8', 'sae:4', 'sae:2', 'sae:1/0', 'sae:2/0', 'sae:4/0'],
      engineAlwaysRunning: false,
    });
    const { restV, chargingV, duty, dropLimit, cutOutV, bodyOhm, jointOhm, linkDropV } = settings;
    expect([restV, chargingV, duty, dropLimit, cutOutV].map(given)).toEqual([12.6, 14.4, 1 / 3, 0.03, 10.5]);
    expect([bodyOhm, jointOhm, linkDropV].map(given)).toEqual([0.001, 0.0001, 0.075]);
    const { bayC, wingC, hotC, cabinC, cargoC, underC } = settings;
    expect([bayC, wingC, hotC, cabinC, cargoC, underC].map(given)).toEqual([80, 65, 100, 50, 50, 50]);
  });

  it('on a bench the return is the board’s bar and the air is a room’s', () => {
    const bench = newPlan({ id: 'p', name: 'Bench', sheetId: 's', outline: DEFAULT_OUTLINES.bench, mirrored: false });
    expect(bench.settings.bodyOhm.value).toBe(0.0001);
    expect(bench.settings.cabinC.value).toBe(30);
    expect(bench.settings.bayC.value).toBe(80);
  });

  it('every assumed value names a source that the calc room lists', () => {
    const isInput = (value: unknown): value is Input<unknown> =>
      typeof value === 'object' && value !== null && 'origin' in value;
    const kinds = fittingSchema.options.map(({ entries }) => entries.kind.literal);
    const parts = [defaultSettings(), ...kinds.map((kind) => newFitting(kind, place))];
    const values = (part: object): unknown[] =>
      Object.values(part).flatMap((value: unknown) =>
        isInput(value) || typeof value !== 'object' || value === null ? [value] : values(value),
      );
    const assumed = parts.flatMap(values).filter(isInput);
    // settings 16; battery 2 and its strap's 2; amplifier 3; reducer, load, relay, switch 1 each; alternator 3; jump post
    // 4; take-off 5; charger 3; capacitor 2
    expect(assumed).toHaveLength(44);
    for (const input of assumed) {
      expect(input).toMatchObject({ origin: 'assumed', source: expect.any(String) });
      expect(Object.keys(SOURCES)).toContain(input.source);
    }
  });
});

describe('a system of 24 V', () => {
  it('goes by the voltages that the calc room knows for it', () => {
    for (const systemV of [12, 24] as const) {
      const { restV, chargingV, cutOutV } = systemFigures(systemV);
      const assumed = assumedVolts(systemV);
      expect([assumed.restV, assumed.chargingV, assumed.cutOutV].map(given)).toEqual([restV, chargingV, cutOutV]);
    }
  });

  it('brings them with it where they are assumed, to a charger too; what was told stays', () => {
    const base = newPlan({ id: 'p', name: '', sheetId: 'sheet', outline: DEFAULT_OUTLINES.panelVan, mirrored: false });
    const charger = newFittingIn(base, 'charger', place);
    const plan = { ...base, fittings: [charger, newFitting('battery', { ...place, id: 'y' })] };
    const told = setInput(plan, 'settings.restV', 25, 'told');
    const truck = changeSettings(told, { systemV: 24 });
    const { restV, chargingV, cutOutV } = truck.settings;
    expect([restV, chargingV, cutOutV].map(given)).toEqual([25, 28.8, 21]);
    expect(truck.fittings).toMatchObject([{ outputV: { value: 28.8, origin: 'assumed' } }, { kind: 'battery' }]);
    expect(truck.fittings[1]).toBe(plan.fittings[1]);
    expect(changeSettings(truck, { systemV: 12 })).toEqual(told);
    expect(newFittingIn(truck, 'charger', place)).toMatchObject({ outputV: { value: 28.8 } });
    const own = changeSettings(setInput(plan, 'x.outputV', 14.2, 'told'), { systemV: 24 });
    expect(own.fittings[0]).toMatchObject({ outputV: { value: 14.2, origin: 'told' } });
  });

  it('says otherwise in the same change', () => {
    const base = newPlan({ id: 'p', name: '', sheetId: 'sheet', outline: DEFAULT_OUTLINES.panelVan, mirrored: false });
    const chargingV = { value: 27.6, origin: 'told' as const };
    expect(changeSettings(base, { systemV: 24, chargingV }).settings).toMatchObject({
      systemV: 24,
      restV: { value: 25.2, origin: 'assumed' },
      chargingV,
    });
  });
});

describe('newFitting', () => {
  it('a battery of unknown make: 600 A, 60 Ah, strap 0.4 m of 25 mm2 in a vehicle, none on a bench', () => {
    expect(newFitting('battery', place)).toMatchObject({
      ccaA: { value: 600, origin: 'assumed' },
      capacityAh: { value: 60, origin: 'assumed' },
      strap: { lengthM: { value: 0.4, origin: 'assumed' }, areaMm2: { value: 25, origin: 'assumed' } },
    });
    expect(newFitting('battery', place, 'bench').strap).toBeNull();
  });

  it('has its keys in the schema’s order, and so have settings: equal parts are equal bytes', () => {
    for (const { entries } of fittingSchema.options) {
      const fitting = newFitting(entries.kind.literal, place);
      expect(Object.keys(fitting), entries.kind.literal).toEqual(Object.keys(entries));
    }
    expect(Object.keys(defaultSettings())).toEqual(Object.keys(settingsSchema.entries));
  });

  it('an amplifier of two inputs has a second pair of terminals', () => {
    expect(terminalsOf({ ...newFitting('amplifier', place), supplyInputs: 'two' })).toEqual([
      ...['supply', 'ground', 'remote', 'supply2', 'ground2'],
    ]);
  });

  it('an amplifier tells nothing that was not told', () => {
    expect(newFitting('amplifier', place)).toMatchObject({
      ratedW: null,
      loadOhm: null,
      onboardFusesA: null,
      externalFuseMaxA: null,
      ampClass: 'D',
      efficiency: { value: 0.8, origin: 'assumed' },
      regulated: { value: true, origin: 'assumed' },
    });
  });

  it.each([
    ['battery', ['positive', 'negative']],
    ['fuse', ['in', 'out']],
    ['passThrough', ['through']],
    ['block', ['bus', 'out1', 'out2']],
    ['amplifier', ['supply', 'ground', 'remote']],
    ['ground', ['body']],
    ['breaker', ['in', 'out']],
    ['bus', ['bus']],
    ['reducer', ['wide', 'narrow']],
    ['load', ['supply', 'ground']],
    ['alternator', ['positive']],
    ['jumpPost', ['stud']],
    ['takeOff', ['stud']],
    ['charger', ['input', 'output', 'ground']],
    ['relay', ['in', 'out']],
    ['switch', ['in', 'out']],
    ['capacitor', ['positive', 'negative']],
  ] satisfies [FittingKind, string[]][])(
    '%s has its terminals, stands where told and opens again',
    (kind, terminals) => {
      const fitting = newFitting(kind, { ...place, at: at(1.00004, 2) });
      expect(terminalsOf(fitting)).toEqual(terminals);
      expect(fitting).toMatchObject({ id: 'x', name: 'X', kind, zone: 'auto', locked: false, at: at(1, 2) });
      const plan = newPlan({ id: 'p', name: '', sheetId: 'sheet', outline: DEFAULT_OUTLINES.panelVan, mirrored: true });
      expect(openPlan(savePlan({ ...plan, fittings: [fitting] }))).toMatchObject({ ok: true });
    },
  );
});

describe('newRun and newId', () => {
  it('a run of any size in copper of 105 degC, assumed', () => {
    const from = { fittingId: 'a', terminal: 'out' };
    const to = { fittingId: 'b', terminal: 'in' };
    const run = newRun({ id: 'r', name: 'R', kind: 'ground', sheetId: 's', from, to, bends: [at(0.12345, 1)] });
    expect(run).toMatchObject({
      kind: 'ground',
      bends: [at(0.1235, 1)],
      tapedM: null,
      riseM: 0,
      conductor: {
        size: 'auto',
        material: { value: 'copper', origin: 'assumed' },
        insulationC: { value: 105, origin: 'assumed' },
      },
    });
  });

  it('ids are fit for a plan and differ', () => {
    const ids = Array.from({ length: 1000 }, newId);
    expect(new Set(ids).size).toBe(1000);
    for (const id of ids) expect(id).toMatch(/^[A-Za-z0-9_-]{21}$/);
  });
});
