/** The shipped example in the words and lengths of a device. */
import { readFileSync } from 'node:fs';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { exampleHere } from '../../src/app/example.ts';
import { assess } from '../../src/assess/assess.ts';
import { choose, restoreChoices } from '../../src/look/choices.ts';
import { openPlan } from '../../src/plan/open.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { type LanguageId, speakIn } from '../../src/words/language.ts';

function shipped(): Plan {
  const opened = openPlan(readFileSync('public/demo.plan.json', 'utf8'));
  if (!opened.ok) throw new Error('the example does not open');
  return opened.plan;
}

const namesOf = (plan: Plan) => [plan.name, ...[...plan.sheets, ...plan.fittings].map(({ name }) => name)];

async function onDevice(language: LanguageId, asked: readonly string[]): Promise<Plan> {
  vi.spyOn(navigator, 'languages', 'get').mockReturnValue(asked);
  await speakIn(language);
  return exampleHere(shipped());
}

beforeEach(() => {
  localStorage.clear();
  restoreChoices();
});
afterEach(async () => {
  vi.restoreAllMocks();
  await speakIn('en');
});

describe('the example', () => {
  it('is as it was shipped where English of no country is asked for', async () => {
    expect(savePlan(await onDevice('en', ['en']))).toBe(savePlan(shipped()));
  });

  it('has every name in German, each of its own, and opens', async () => {
    const plan = await onDevice('de', ['de-AT', 'en']);
    const names = namesOf(plan);
    const english = namesOf(shipped());
    expect(names.filter((name) => english.includes(name))).toEqual([]);
    expect(new Set(names).size).toBe(new Set(english).size);
    expect(names).toContain('Hauptsicherung');
    expect(plan.settings.showLength).toBe('m');
    expect(openPlan(savePlan(plan))).toMatchObject({ ok: true });
  });

  it('says bulkhead in British English', async () => {
    const names = namesOf(await onDevice('en-GB', ['en-GB']));
    expect(names).toContain('Bulkhead pass-through');
    expect(names.join(' ')).not.toContain('Firewall');
  });

  it('shows feet in the United States, and metres again where those were chosen with the language', async () => {
    expect((await onDevice('en', ['en-US', 'en'])).settings.showLength).toBe('ft-in');
    choose('language', 'en-GB');
    expect((await onDevice('en-GB', ['en-US', 'en'])).settings.showLength).toBe('m');
  });

  it('keeps its cables, its stock and its rule set everywhere, and so its answer', async () => {
    const plain = shipped();
    for (const [language, asked] of [
      ['de', ['de']],
      ['en', ['en-US']],
    ] as const) {
      const plan = await onDevice(language, asked);
      expect(plan.settings).toEqual({ ...plain.settings, showLength: plan.settings.showLength });
      expect(plan.runs).toEqual(plain.runs);
      expect(assess(plan).figures).toEqual(assess(plain).figures);
    }
  });
});
