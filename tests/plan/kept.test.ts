/** Files of every version, kept for ever: what was saved once must open for good. */
import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { openPlan } from '../../src/plan/open.ts';
import { savePlan } from '../../src/plan/save.ts';
import { fittingSchema, type Plan, runSchema } from '../../src/plan/schema.ts';
import { keptFiles } from './support/kept.ts';

function opened(text: string): Plan {
  const result = openPlan(text);
  if (!result.ok) throw new Error(`${result.reason.code} at ${result.reason.where}`);
  return result.plan;
}

const LISTS = ['sheets', 'runs', 'areas', 'ties', 'mounts', 'pictures'] as const;

describe('files of version 1', () => {
  it('are byte for byte what they were', () => {
    const digests = keptFiles(1).map(([name, text]) => [name, createHash('sha256').update(text).digest('hex')]);
    expect(digests).toEqual([
      ['bench.json', 'f454dfdd18b1bcd9bd44a4eed8cb3c5bcc45b2a0aeb5414284a3a7a4d71b64e0'],
      ['van.json', 'f61311f01ddea93c0a06dd9e8892cbbf0066c8f69de57486277b9f771f657801'],
    ]);
  });

  it.each(keptFiles(1))('%s opens as a plan of today, and from then on is one', (_, text) => {
    expect(openPlan(text)).toMatchObject({ ok: true, migratedFrom: 1 });
    const saved = savePlan(opened(text));
    expect(openPlan(saved)).toEqual({ ok: true, plan: opened(text), migratedFrom: null });
    expect(savePlan(opened(saved))).toBe(saved);
  });

  it('hold every kind of fitting there was, every list, and things taped, told, measured and locked', () => {
    const texts = keptFiles(1).map(([, text]) => text);
    const plans = texts.map(opened);
    const kinds = new Set(plans.flatMap(({ fittings }) => fittings.map(({ kind }) => kind)));
    expect([...kinds].sort()).toEqual(['amplifier', 'battery', 'block', 'fuse', 'ground', 'passThrough']);
    for (const list of LISTS) {
      expect(
        plans.some((plan) => plan[list].length > 0),
        list,
      ).toBe(true);
    }
    for (const said of [
      ...['"told"', '"measured"', '"assumed"', '"locked": true', '"tapedM": 0.61', '"link": null', '"remote"'],
    ]) {
      expect(texts.join('')).toContain(said);
    }
  });
});

describe('files of version 2', () => {
  it('are byte for byte what they were', () => {
    const digests = keptFiles(2).map(([name, text]) => [name, createHash('sha256').update(text).digest('hex')]);
    expect(digests).toEqual([
      ['bench.json', '4807a4fc9b9d7f87b52a53b4c6950d67afc67fe429569cb2828a856a4683aa4e'],
      ['everything.json', 'f603f03c195ebcaebae6413f5c8e569fbd59ea988cab910776cded9acc9f463e'],
      ['van.json', '222b2f354ce690fa4e509a23ad319edf9718d4cce4254ee4d45840781f3a6d0b'],
    ]);
  });

  it.each(keptFiles(2))('%s opens as a plan of today, and from then on is one', (_, text) => {
    expect(openPlan(text)).toMatchObject({ ok: true, migratedFrom: 2 });
    const saved = savePlan(opened(text));
    expect(openPlan(saved)).toEqual({ ok: true, plan: opened(text), migratedFrom: null });
  });
});

describe('files of version 3', () => {
  it('are byte for byte what they were', () => {
    const digests = keptFiles(3).map(([name, text]) => [name, createHash('sha256').update(text).digest('hex')]);
    expect(digests).toEqual([
      ['bench.json', 'c40a4c8be0f80aab183cd338429cb8969429675c5d49074de0f61b786806e792'],
      ['everything.json', 'f0c37732a470d8de43a1efd30e80726b755efef9dd97ec83a9fb44b0c298f0df'],
      ['sheets.json', '82d0152f547d4af21f6652ad8ae02821c885c0c1118b42435f1ff77007adfc88'],
      ['van.json', 'bc2c1c0f506363eef8ae481cea3831cb370cb0cfd6723a94ec15fb6d0fefc23a'],
    ]);
  });

  it.each(keptFiles(3))('%s opens as a plan of today, and from then on is one', (_, text) => {
    expect(openPlan(text)).toMatchObject({ ok: true, migratedFrom: 3 });
    const saved = savePlan(opened(text));
    expect(openPlan(saved)).toEqual({ ok: true, plan: opened(text), migratedFrom: null });
    // what was taped then was taken as measured from end to end
    expect(opened(text).runs.every(({ tapedAs }) => tapedAs === 'run')).toBe(true);
  });
});

describe('files of version 4', () => {
  const files = keptFiles(4);
  const plans = files.map(([, text]) => opened(text));
  const fittings = plans.flatMap((plan) => plan.fittings);
  const runs = plans.flatMap((plan) => plan.runs);

  it('are a van, a bench, one of everything and a vehicle on several sheets', () => {
    expect(files.map(([name]) => name)).toEqual(['bench.json', 'everything.json', 'sheets.json', 'van.json']);
  });

  it.each(files)('%s opens and is saved to the same bytes', (_, text) => {
    expect(openPlan(text)).toMatchObject({ ok: true, migratedFrom: null });
    expect(savePlan(opened(text))).toBe(text);
  });

  it('hold every kind of fitting and of run there is, and 12 and 24 V', () => {
    const kinds = fittingSchema.options.map(({ entries }) => entries.kind.literal);
    expect(kinds).toHaveLength(18);
    expect(new Set(fittings.map(({ kind }) => kind))).toEqual(new Set(kinds));
    expect(new Set(runs.map(({ kind }) => kind))).toEqual(new Set(runSchema.entries.kind.options));
    expect(new Set(plans.map(({ settings }) => settings.systemV))).toEqual(new Set([12, 24]));
  });

  it('tell everything that may be told, and leave it untold too', () => {
    const saidOf = (parts: readonly object[]) => {
      const said = new Map<string, { told: boolean; untold: boolean }>();
      for (const part of parts) {
        for (const [key, value] of Object.entries(part)) {
          const { told = false, untold = false } = said.get(key) ?? {};
          said.set(key, { told: told || value !== null, untold: untold || value === null });
        }
      }
      return said;
    };
    const both = { told: true, untold: true };
    const ofFittings = saidOf(fittings);
    const ofRuns = saidOf([...runs, ...runs.map(({ conductor }) => conductor)]);
    const optional = [
      ...['takes', 'internalOhm', 'postLink', 'sensedNegative', 'strap', 'grommetInsideMm', 'outputsTake', 'ratedA'],
      ...['ratedW', 'loadOhm', 'onboardFusesA', 'externalFuseMaxA', 'duty'],
    ];
    for (const key of optional) expect(ofFittings.get(key), key).toEqual(both);
    for (const key of [
      ...['tapedM', 'bendRadiusMm', 'fromJointOhm', 'toJointOhm', 'strands', 'copperThrough', 'nearerImpossible'],
    ]) {
      expect(ofRuns.get(key), key).toEqual(both);
    }
    expect(runs.some(({ bundled }) => bundled > 1)).toBe(true);
    expect(new Set(runs.map(({ tapedAs }) => tapedAs))).toEqual(new Set(['run', 'share', 'outdated']));
  });

  it('show every outline, part and view, and a run that goes on on another sheet', () => {
    const sheets = plans.flatMap((plan) => plan.sheets);
    expect(new Set(sheets.map(({ outline }) => outline.kind))).toEqual(new Set(['vehicle', 'own', 'bench']));
    expect(new Set(sheets.map(({ part }) => part))).toEqual(new Set(['whole', 'bay', 'cargo']));
    expect(new Set(sheets.map(({ view }) => view))).toEqual(new Set(['above', 'side']));
    const own = sheets.flatMap(({ outline }) => (outline.kind === 'own' ? [outline] : []));
    expect(new Set(own.map(({ bayM }) => bayM === null))).toEqual(new Set([true, false]));
    const goesOn = fittings.find(({ kind }) => kind === 'continuation');
    const through = runs.filter(({ from, to }) => [from, to].some(({ fittingId }) => fittingId === goesOn?.id));
    expect(new Set(through.map(({ sheetId }) => sheetId)).size).toBe(2);
  });

  it('have links of the user’s own, one for each seat, that links name', () => {
    const own = plans.flatMap(({ settings }) => settings.ownLinks);
    expect(new Set(own.map(({ seat }) => seat))).toEqual(new Set(['holder', 'post', 'breaker']));
    expect(own.some(({ breakingA }) => breakingA === null)).toBe(true);
    const texts = JSON.stringify(fittings);
    for (const { family } of own) expect(texts).toContain(`"family":"${family}"`);
  });

  it('have every choice of battery, two inputs, an open switch, and values told, measured and assumed', () => {
    const text = JSON.stringify(plans);
    for (const said of [
      ...['"leadAcid"', '"lithium"', '"supercapacitor"', '"sae"', '"en"', '"din"'],
      ...['"supplyInputs":"two"', '"terminal":"supply2"', '"terminal":"ground2"', '"closed":false', '"closed":true'],
      ...['"precharged":true', '"told"', '"measured"', '"assumed"', '"copperThrough":false', '"sensedNegative":false'],
    ]) {
      expect(text).toContain(said);
    }
  });
});
