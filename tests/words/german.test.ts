import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Finding, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { SOURCES, type Source, type SourceId } from '../../src/calc/sources.ts';
import { addOutput } from '../../src/plan/edits/addOutput.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { removeRun } from '../../src/plan/edits/removeRun.ts';
import { setInput } from '../../src/plan/edits/setInput.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { headlineOf, notCheckedOf, notToldOf, remedyOf, sentenceOf } from '../../src/words/answer.ts';
import { words as full } from '../../src/words/full.ts';
import { unitsFor, words } from '../../src/words/index.ts';
import { languageFor, measuresFor, speakIn } from '../../src/words/language.ts';
import { charged } from '../assess/plans.ts';
import { examplePlan } from '../panels/fixture.ts';
import { textsOf } from './leaves.ts';

/** What German writes like English: names, signs and words of the trade that both have. */
const ALIKE =
  /^(locale|app\.title|app\.pageTitle\(\d\)|topbar\.(label|alternatives)|saveStates\.idle|sketch\.(tab\(\d\)|live\.separator)|whys\.(unitSigns\.|why\.symbol)|summary\.(noFigure|mayCarry\(\d\))|inspector\.(name|origin\(\d\)|ofPart\(\d\))|settings\.(awg|mm2)|fieldLabels\.(battery\.ccaStandards\.|settings\.(volts|ownName))|shorts\.(seconds|minutes)\(\d\)|list\.name|newPlanDialog\.name|refusals\.|fittings\.(materials\.aluminium|runName))/;

const PATHS: Record<'en' | 'de', [string, string][]> = { en: [], de: [] };
const said: { path: string; english: string; german: string }[] = [];

beforeAll(async () => {
  PATHS.en = textsOf(full);
  await speakIn('de');
  PATHS.de = textsOf(full);
  const german = new Map(PATHS.de);
  said.push(...PATHS.en.map(([path, english]) => ({ path, english, german: german.get(path) ?? '' })));
});
afterAll(() => speakIn('en'));

const ENGLISH = /\b(the|and|with|is|are|of|to|your|for|from|this|no|not|it|cable|fuse|run|plan's|body)\b/i;
const HOLES = /undefined|NaN|\[object|Infinity/;

describe('German', () => {
  it('says all that English says, in its own words', () => {
    expect(said.length).toBeGreaterThan(800);
    expect(PATHS.de.map(([path]) => path).sort()).toEqual(PATHS.en.map(([path]) => path).sort());
    expect(said.filter(({ english, german }) => (english === '') !== (german === ''))).toEqual([]);
    expect(said.filter(({ path, english, german }) => english === german && !ALIKE.test(path))).toEqual([]);
  });

  it('holds no English word, no hole, and calls nothing safe', () => {
    const texts = said.map(({ german }) => german.replace(TITLES, ''));
    expect(texts.filter((text) => ENGLISH.test(text))).toEqual([]);
    expect(texts.filter((text) => HOLES.test(text))).toEqual([]);
    expect(texts.filter((text) => /\bsicher(e|er|es|en)?\b|\bdu\b/.test(text))).toEqual([]);
  });

  it('counts in German: one and several', () => {
    expect(full.list.fittings(1)).toBe('1 Bauteil');
    expect(full.list.fittings(2)).toBe('2 Bauteile');
    expect(full.headline.notTold([{ kind: 'lengthsNotTaped', ids: ['a'] }])).toBe('1 Länge nicht nachgemessen');
  });

  it('calls an act by what it is done to', () => {
    expect(words.act('move', 'Bat$&')).toBe('Bat$& bewegen');
    expect(words.act('addBend', null)).toBe('Knick einfügen');
    expect(words.act('remove', null)).toBe('löschen');
  });

  it('warns of the hood and the firewall by the names the trade has for them', () => {
    expect(full.fittingCautions.passThrough).toMatch(/Scharnieren und Schloss der Motorhaube/);
    expect(full.newPlanDialog.bayM).toMatch(/Spritzwand/);
  });

  it('calls the buttons of an outline what stands on them', () => {
    expect(full.outlineEditor.undo).toContain(full.history.undo);
    expect(full.outlineEditor.redo).toContain(full.history.redo);
  });

  it('writes figures with a decimal comma, and keeps lists of them apart', () => {
    const units = unitsFor(examplePlan());
    expect(units.voltage(12.6)).toBe('12,60 V');
    expect(units.list([units.current(7.5), units.current(20)])).toBe('7,5 A; 20 A');
  });

  it('is spoken where it is asked for', () => {
    expect(languageFor('auto', ['fr', 'de-AT', 'en'])).toBe('de');
    expect(languageFor('auto', ['den', 'en'])).toBe('en');
    expect(measuresFor('auto', ['de'])).toEqual({ showLength: 'm', sizeSystem: 'mm2' });
  });
});

/** Documents that go by the title they were published under. */
const TITLES =
  /^(ASTM B\d+|SAE J\d+( \/ J\d+)?|IEC 60\d+(-\d+)*|NFPA 70 \(NEC\)( \d+\.\d+\(\w\))?|NBS Handbook 100, Copper Wire Tables|FAA AC 43\.13-1B|ISO \d+(-\d)?(:\d{4})?|CTA-2006|33 CFR 183\.\d+|US Coast Guard Electrical System Compliance Guideline|BS 7671|Industrial Power Engineering and Applications Handbook|ABYC E-11|FCS 1362:2010|UL 248-15|EN 50342-1|DIN 43539-2)(?=,|$)/;

describe('a source in German', () => {
  const sources: [id: string, source: Source][] = Object.entries(SOURCES);
  beforeAll(() => speakIn('de'));

  it.each(sources)('%s: the title as published, all that is ours in German', (id, { document, section }) => {
    const german = full.sourceLine(id as SourceId);
    const isTitle = document.replace(TITLES, '') === '';
    if (isTitle) expect(german.startsWith(document)).toBe(true);
    else expect(german.startsWith(document)).toBe(false);
    const own = `${isTitle ? '' : document} ${section ?? ''}`;
    const words = own.match(/\b[a-z]{4,}\b/g) ?? [];
    expect(words.filter((word) => new RegExp(`\\b${word}\\b`).test(german))).toEqual([]);
    if (section !== undefined && /[a-z]{3}/.test(section)) expect(german).not.toContain(section);
  });

  it('keeps every figure, with a decimal comma', () => {
    const figures = (text: string) =>
      [...text.matchAll(/\d+(?:[.,]\d+)*/g)].map(([figure]) => figure.replace(/,/g, '.'));
    for (const [id, { document, section = '' }] of sources) {
      const german = full.sourceLine(id as SourceId);
      // '20 hour rate', 'second hand': what is said in words stays in words
      expect([id, figures(german).sort()]).toEqual([id, figures(`${document}, ${section}`).sort()]);
    }
    expect(full.sourceLine('iec60364part433')).toBe('IEC 60364-4-43, 433.1, I2 <= 1,45 Iz (aus dem Gedächtnis)');
    expect(full.sourceLine('commonPractice')).toBe('Übliche Praxis (aus dem Gedächtnis)');
    expect(full.sourceNote('userTold')).toBe('Angabe des Benutzers (unsere Wahl)');
    expect(full.sourceNote('am Auto gemessen')).toBe('am Auto gemessen');
  });
});

describe('a finding without figures and places', () => {
  it('is a whole German sentence all the same', () => {
    for (const rule of Object.keys(full.findings.findings) as RuleId[]) {
      for (const severity of ['stop', 'fix', 'note'] as const) {
        const finding: Finding = {
          ...{ id: rule, rule, severity, places: [], params: {}, source: 'feedrunRules' },
          ...{ provisional: true, decidedBy: ['settings.bodyOhm'], why: null },
        };
        const text = `${sentenceOf(finding, examplePlan())} ${remedyOf(finding, examplePlan())}`;
        expect(text).not.toMatch(HOLES);
        expect(text).not.toMatch(/ {2}| [.,;:]|^\s|\s$/);
        expect(text).not.toMatch(ENGLISH);
        expect(text).toMatch(/^[A-ZÄÖÜ0-9].*[.?]$/);
      }
    }
  });
});

const plan = examplePlan();
const thin = {
  size: 'sae:8',
  material: { value: 'cca10', origin: 'told' },
  insulationC: { value: 60, origin: 'told' },
  strands: null,
  copperThrough: null,
} as const;

const PLANS: Readonly<Record<string, Plan>> = {
  'as drawn': plan,
  taped: changeRun(plan, 'batToFuse', { tapedM: 0.3 }),
  'no fuse': removeFitting(plan, 'mainFuse'),
  'fuse at the far end': moveFitting(plan, 'mainFuse', { xM: 3, yM: 0.5 }),
  'no ground': removeRun(plan, 'fromRear'),
  'not told': changeFitting(plan, 'rear', { ratedW: null, onboardFusesA: null, loadOhm: null }),
  'too thin by hand': changeRun(plan, 'passToBlock', { conductor: structuredClone(thin) }),
  'too large a fuse': changeFitting(plan, 'mainFuse', { link: { ratingA: 400, family: 'auto' } }),
  'too small a fuse': changeFitting(plan, 'mainFuse', { link: { ratingA: 30, family: 'auto' } }),
  "above the maker's": changeFitting(plan, 'rear', { externalFuseMaxA: 40 }),
  'an unused output': addOutput(plan, 'block'),
  charged: charged(),
  unregulated: setInput(plan, 'rear.regulated', false, 'told'),
};

/** The names in the example are English, as a user's may be: they are taken out before the text is looked at. */
function withoutNames(text: string, { fittings, runs }: Plan): string {
  const names = [...runs, ...fittings].map(({ name }) => name).filter((name) => name !== '');
  return names.sort((a, b) => b.length - a.length).reduce((rest, name) => rest.replaceAll(name, 'X'), text);
}

describe.each(Object.entries(PLANS))('the German answer for a plan: %s', (_title, of) => {
  it('has a sentence and a remedy for every finding, and words for all around them', () => {
    const answer = assess(of);
    const lines = answer.findings.map((finding) => `${sentenceOf(finding, of)} ${remedyOf(finding, of)}`);
    const all = [...lines, headlineOf(answer), notToldOf(answer), notCheckedOf(answer)];
    const texts = all.map((text) => withoutNames(text, of));
    expect(texts.filter((text) => HOLES.test(text) || /ohne Namen/.test(text))).toEqual([]);
    expect(texts.filter((text) => ENGLISH.test(text))).toEqual([]);
    expect(texts.filter((text) => /\d\.\d/.test(text.replace(/\d+ CFR [\d.]+/g, '')))).toEqual([]);
    for (const line of lines) expect(line).toMatch(/\.$/);
  });
});
