import { describe, expect, it } from 'vitest';
import { migrate, oldestVersion } from '../../../src/plan/migrate/migrate.ts';
import { isJsonObject, type JsonObject, type Step } from '../../../src/plan/migrate/step.ts';
import { STEPS } from '../../../src/plan/migrate/steps.ts';
import { openPlan } from '../../../src/plan/open.ts';
import { savePlan } from '../../../src/plan/save.ts';
import { PLAN_VERSION } from '../../../src/plan/schema.ts';
import { keptFiles } from '../support/kept.ts';
import { metresAndConductor } from './metresAndConductor.ts';

/** Frozen to its depths: a step that touches what it is given throws. */
function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) Object.values(Object.freeze(value)).forEach(frozen);
  return value;
}

const rename = (from: string, to: string, version: number): Step => ({
  name: `${from} to ${to}`,
  to: version,
  up: ({ [from]: value, ...rest }) => ({ ...rest, [to]: value }),
});
const steps = [rename('a', 'b', 1), rename('b', 'c', 2), rename('c', 'd', 3)];

const ALL_STEPS = [metresAndConductor, ...STEPS];

/** A van as version 0 would have kept it, written down by hand; its settings are those of a file of version 1. */
const VERSION_0 = {
  format: 'feedrun-plan',
  version: 0,
  id: 'van',
  name: 'Old van',
  settings: JSON.parse(keptFiles(1)[0]?.[1] ?? '').settings,
  sheets: [
    {
      id: 'sheet',
      name: '',
      outline: { kind: 'panelVan', lengthMm: 4400, widthMm: 1800, bayMm: 1000, cabMm: 1500 },
      scale: { value: 1, origin: 'told' },
      mirrored: false,
    },
  ],
  fittings: [
    {
      id: 'fuse',
      name: 'Old fuse',
      sheetId: 'sheet',
      at: { xMm: 800, yMm: 1400.5 },
      zone: 'auto',
      locked: false,
      kind: 'fuse',
      link: { ratingA: 80, family: 'auto' },
    },
    {
      id: 'bolt',
      name: 'Old bolt',
      sheetId: 'sheet',
      at: { xMm: 3400, yMm: 1700 },
      zone: 'auto',
      locked: false,
      kind: 'ground',
    },
  ],
  runs: [
    {
      id: 'old',
      name: 'Old run',
      kind: 'power',
      sheetId: 'sheet',
      from: { fittingId: 'fuse', terminal: 'out' },
      to: { fittingId: 'bolt', terminal: 'body' },
      bends: [{ xMm: 1250, yMm: 900 }],
      riseMm: 350,
      slackPercent: 5,
      tapedMm: 1234.5,
      zone: 'auto',
      sheathed: false,
      nearerImpossible: null,
      inLoom: false,
      underCarpet: false,
      gauge: 'sae:4',
      locked: true,
    },
  ],
  areas: [],
  ties: [],
  mounts: [],
  pictures: [],
};

describe('migrate', () => {
  it('takes every step beyond the version, in order, and sets the version', () => {
    expect(migrate({ version: 0, a: 1 }, 0, steps)).toEqual({ version: 3, d: 1 });
    expect(migrate({ version: 1, b: 1 }, 1, steps)).toEqual({ version: 3, d: 1 });
    expect(migrate({ version: 3, d: 1 }, 3, steps)).toEqual({ version: 3, d: 1 });
  });

  it('never touches what it is given', () => {
    const document: JsonObject = frozen({ version: 0, a: { deep: [1] } });
    expect(migrate(document, 0, steps)).toEqual({ version: 3, d: { deep: [1] } });
    expect(document).toEqual({ version: 0, a: { deep: [1] } });
  });

  it('steps count up by one to the newest version', () => {
    expect(oldestVersion(steps, 3)).toBe(0);
    expect(oldestVersion([], 1)).toBe(1);
    for (const wrong of [
      [rename('a', 'b', 1), rename('b', 'c', 3)],
      [rename('a', 'b', 2), rename('b', 'c', 2)],
      [rename('a', 'b', 3), rename('b', 'c', 2)],
      [rename('a', 'b', 1)],
    ]) {
      expect(() => oldestVersion(wrong, 3)).toThrow(/leads to version/);
    }
  });

  it('the real steps lead from version 1 to the version of today', () => {
    expect(oldestVersion(STEPS, PLAN_VERSION)).toBe(1);
    for (const step of STEPS) expect(step.name).toMatch(/^[A-Z][A-Za-z]+$/);
  });
});

describe('an invented version 0', () => {
  const text = JSON.stringify(VERSION_0);

  it('is refused without its step, in words of its own', () => {
    expect(openPlan(text)).toMatchObject({
      ok: false,
      reason: { code: 'olderVersion', params: { found: 0, known: PLAN_VERSION } },
    });
  });

  it('opens with its step: millimetres become metres, the gauge a conductor', () => {
    const result = openPlan(text, ALL_STEPS);
    if (!result.ok) throw new Error(JSON.stringify(result.reason));
    expect(result.migratedFrom).toBe(0);
    expect(result.plan.version).toBe(PLAN_VERSION);
    expect(result.plan.name).toBe('Old van');
    expect(result.plan.sheets[0]?.outline).toMatchObject({
      body: 'panelVan',
      lengthM: 4.4,
      widthM: 1.8,
      bayM: 1,
      cabM: 1.5,
    });
    expect(result.plan.fittings[0]?.at).toEqual({ xM: 0.8, yM: 1.4005 });
    expect(result.plan.runs[0]).toMatchObject({
      bends: [{ xM: 1.25, yM: 0.9 }],
      riseM: 0.35,
      tapedM: 1.2345,
      conductor: { size: 'sae:4', material: { value: 'copper', origin: 'assumed' }, strands: null },
      bundled: 1,
      locked: true,
    });
  });

  it('is from then on a file of the version of today', () => {
    const first = openPlan(text, ALL_STEPS);
    const saved = first.ok ? savePlan(first.plan) : '';
    expect(openPlan(saved)).toMatchObject({ ok: true, migratedFrom: null });
    expect(openPlan(saved, ALL_STEPS)).toMatchObject({ ok: true, migratedFrom: null });
  });

  it('its step touches nothing it is given', () => {
    const document: unknown = frozen(JSON.parse(text));
    if (!isJsonObject(document)) throw new Error('It is an object');
    expect(metresAndConductor.up(document)).toMatchObject({ name: 'Old van' });
    expect(JSON.stringify(document)).toBe(text);
  });

  it('goes through the same checks as any other once it is up to date', () => {
    const dangling = text.replace('"fittingId":"bolt"', '"fittingId":"gone"');
    expect(openPlan(dangling, ALL_STEPS)).toMatchObject({ ok: false, reason: { code: 'unknownFitting' } });
    const gauge = text.replace('"sae:4","locked"', '"sae:5","locked"');
    expect(openPlan(gauge, ALL_STEPS)).toMatchObject({ ok: false, reason: { code: 'unknownGauge' } });
  });

  it('that breaks its own promise is refused, not thrown', () => {
    for (const broken of [text.replace('"runs":[', '"runs":[7,'), text.replace('"sheets":[{', '"sheets":[null,{')]) {
      expect(openPlan(broken, ALL_STEPS)).toMatchObject({
        ok: false,
        reason: { code: 'migrationFailed', params: { found: 0, known: PLAN_VERSION } },
      });
    }
  });
});
