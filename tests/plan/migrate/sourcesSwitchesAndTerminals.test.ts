/** From version 1 to version 2: what is added is written down by hand here; nothing else may change. */
import { describe, expect, it } from 'vitest';
import { newPlan, newRun } from '../../../src/plan/create.ts';
import { sourcesSwitchesAndTerminals } from '../../../src/plan/migrate/sourcesSwitchesAndTerminals.ts';
import { isJsonObject, type JsonObject } from '../../../src/plan/migrate/step.ts';
import { newFitting } from '../../../src/plan/newFitting.ts';
import { openPlan } from '../../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../../src/plan/outline.ts';
import type { Plan } from '../../../src/plan/schema.ts';
import { keptFiles } from '../support/kept.ts';
import { at } from '../support/samplePlan.ts';

const NEW_SETTINGS = {
  ownLinks: [],
  usableShare: { value: 0.5, origin: 'assumed', source: 'feedrunRules' },
  peukert: { value: 1.2, origin: 'assumed', source: 'feedrunRules' },
};
const NEW_RUN = { bundled: 1, bendRadiusMm: null, fromJointOhm: null, toJointOhm: null };
const NEW_CONDUCTOR = { strands: null, copperThrough: null };
const NEW_FITTING: Record<string, object> = {
  battery: {
    takes: null,
    chemistry: 'leadAcid',
    ccaStandard: 'sae',
    internalOhm: null,
    postLink: null,
    sensedNegative: null,
  },
  fuse: { takes: null },
  passThrough: { takes: null, grommetInsideMm: null },
  block: { takes: null, outputsTake: null },
  amplifier: {
    takes: null,
    supplyInputs: 'one',
    idleA: { value: 1, origin: 'assumed', source: 'commonPractice' },
    duty: null,
  },
  ground: { takes: null },
};

/** A file of version 1 as it is parsed: its parts, of which this test knows the names. */
type Version1 = Record<string, unknown> & {
  settings: object;
  fittings: { kind: string }[];
  runs: { conductor: object }[];
};

/** What a file of version 1 is to become, whatever the order of the keys. */
const expected = (document: Version1): unknown => ({
  ...document,
  version: 2,
  settings: { ...document.settings, ...NEW_SETTINGS },
  fittings: document.fittings.map((fitting) => ({ ...fitting, ...NEW_FITTING[fitting.kind] })),
  runs: document.runs.map((run) => ({ ...run, ...NEW_RUN, conductor: { ...run.conductor, ...NEW_CONDUCTOR } })),
});

function opened(text: string): Plan {
  const result = openPlan(text);
  if (!result.ok) throw new Error(`${result.reason.code} at ${result.reason.where}`);
  expect(result.migratedFrom).toBe(1);
  return result.plan;
}

describe('a file of version 1', () => {
  it.each(keptFiles(1))('%s: what is new is not told or as the defaults were, all else is the same', (_, text) => {
    const document: unknown = JSON.parse(text);
    if (!isJsonObject(document)) throw new Error('It is an object');
    expect({ ...sourcesSwitchesAndTerminals.up(document), version: 2 }).toEqual(expected(JSON.parse(text)));
  });

  it('the van’s two batteries and its bass amplifier, to the last key', () => {
    const plan = opened(keptFiles(1)[1]?.[1] ?? '');
    expect(plan.fittings.find(({ name }) => name === 'Battery under the hood')).toEqual({
      id: 'pcwuGNxmuUnVVR-Yddrxl',
      name: 'Battery under the hood',
      sheetId: 'bKuTMlY9l7MkGow8MvlHm',
      at: at(0.55, 0.4),
      zone: 'auto',
      takes: null,
      locked: false,
      kind: 'battery',
      chemistry: 'leadAcid',
      ccaA: { value: 720, origin: 'told' },
      ccaStandard: 'sae',
      capacityAh: { value: 60, origin: 'assumed', source: 'feedrunRules' },
      internalOhm: null,
      postLink: null,
      sensedNegative: null,
      strap: {
        lengthM: { value: 0.4, origin: 'assumed', source: 'feedrunRules' },
        areaMm2: { value: 25, origin: 'assumed', source: 'feedrunRules' },
      },
    });
    expect(plan.fittings.find(({ name }) => name === 'Amplifier, bass')).toEqual({
      id: 'JnyR_wLy5eMyKogzs1jcA',
      name: 'Amplifier, bass',
      sheetId: 'bKuTMlY9l7MkGow8MvlHm',
      at: at(3.6, 1.4),
      zone: 'auto',
      takes: null,
      locked: false,
      kind: 'amplifier',
      ratedW: { value: 1000, origin: 'told' },
      loadOhm: 2,
      ampClass: 'D',
      efficiency: { value: 0.8, origin: 'assumed', source: 'commonPractice' },
      regulated: { value: false, origin: 'measured' },
      onboardFusesA: [],
      externalFuseMaxA: 120,
      supplyInputs: 'one',
      idleA: { value: 1, origin: 'assumed', source: 'commonPractice' },
      duty: null,
    });
    expect(plan.runs.find(({ name }) => name === 'Branch to bass amplifier')).toMatchObject({
      bundled: 1,
      conductor: {
        size: 'sae:4',
        material: { value: 'cca15', origin: 'measured' },
        insulationC: { value: 60, origin: 'told' },
        strands: null,
        copperThrough: null,
      },
    });
    expect(plan.settings).toMatchObject({ systemV: 12, engineAlwaysRunning: true, ...NEW_SETTINGS });
  });

  it('a new fitting or run of today, as version 1 kept it, comes back as itself', () => {
    const without = (part: object, keys: object) =>
      Object.fromEntries(Object.entries(part).filter(([key]) => !Object.hasOwn(keys, key)));
    const outline = DEFAULT_OUTLINES.panelVan;
    const empty = newPlan({ id: 'p', name: '', sheetId: 'sheet', outline, mirrored: false });
    const kinds = ['battery', 'fuse', 'passThrough', 'block', 'amplifier', 'ground'] as const;
    const fittings = kinds.map((kind) => newFitting(kind, { id: kind, name: '', sheetId: 'sheet', at: at(1, 1) }));
    const ends = { from: { fittingId: 'fuse', terminal: 'out' }, to: { fittingId: 'block', terminal: 'bus' } };
    const run = newRun({ id: 'r', name: '', kind: 'power', sheetId: 'sheet', ...ends, bends: [] });
    const plan: Plan = { ...empty, fittings, runs: [run] };
    const version1 = {
      ...plan,
      version: 1,
      settings: without(plan.settings, NEW_SETTINGS),
      fittings: fittings.map((fitting) => without(fitting, NEW_FITTING[fitting.kind] ?? {})),
      runs: [{ ...without(run, NEW_RUN), conductor: without(run.conductor, NEW_CONDUCTOR) }],
    };
    expect(opened(JSON.stringify(version1))).toEqual(plan);
  });
});

describe('the step', () => {
  it('touches nothing that it is given', () => {
    const text = keptFiles(1)[1]?.[1] ?? '';
    const frozen = (value: unknown): void => {
      if (typeof value === 'object' && value !== null) Object.values(Object.freeze(value)).forEach(frozen);
    };
    const document: unknown = JSON.parse(text);
    frozen(document);
    if (!isJsonObject(document)) throw new Error('It is an object');
    sourcesSwitchesAndTerminals.up(document);
    expect(JSON.stringify(document)).toBe(JSON.stringify(JSON.parse(text)));
  });

  it.each([
    ['no settings', { settings: null }],
    ['a list of settings', { settings: [] }],
    ['fittings that are none', { fittings: [7, null, 'fuse', []] }],
    ['fittings in no list', { fittings: {} }],
    ['kinds that are none', { fittings: [{ kind: '__proto__' }, { kind: 'constructor' }, { kind: 3 }, {}] }],
    ['a run without a conductor', { runs: [{}, { conductor: null }, { conductor: [] }] }],
    ['nothing at all', {}],
  ])('leaves %s for the schema to refuse', (_, broken) => {
    const document: JsonObject = { format: 'feedrun-plan', version: 1, ...broken };
    expect(() => sourcesSwitchesAndTerminals.up(document)).not.toThrow();
    const result = openPlan(JSON.stringify(document));
    expect(result.ok).toBe(false);
    expect(!result.ok && result.reason.code).not.toBe('migrationFailed');
  });

  it('a kind that version 1 did not know is no fitting of it', () => {
    const text = (keptFiles(1)[0]?.[1] ?? '').replace('"kind": "ground"', '"kind": "capacitor"');
    expect(openPlan(text)).toMatchObject({ ok: false, reason: { code: 'missingKey' } });
  });
});
