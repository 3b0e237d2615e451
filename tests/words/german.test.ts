import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Finding, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
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

/** Every text that stands without being asked for, by the path to it. Functions say what they give for sample arguments. */
function textsOf(tree: unknown, path = ''): [string, string][] {
  if (typeof tree === 'string') return [[path, tree]];
  if (typeof tree === 'function') {
    const sample = SAMPLES.find(([where]) => where.test(path));
    const calls = sample === undefined ? [Array.from({ length: tree.length }, () => 'X')] : sample[1];
    return calls.flatMap((args, nth) => textsOf(tree(...args), `${path}(${nth})`));
  }
  if (typeof tree !== 'object' || tree === null) return [];
  return Object.entries(tree).flatMap(([key, value]) => textsOf(value, path === '' ? key : `${path}.${key}`));
}

const COUNTS = [[0], [1], [2]];
const PROBLEMS = ['empty', 'unreadable', 'negative', 'twoDecimalSigns', 'tooShort', 'tooLong'];

/** Arguments for functions that take more than names; none for the findings, which the plans below ask. */
const SAMPLES: readonly (readonly [RegExp, readonly (readonly unknown[])[]])[] = [
  [/^findings\.findings/, []],
  [/^findings\.decidedBy$/, [[['A', 'B']]]],
  [/^(sourceLine|sourceNote)$/, [['cfr183425Table5']]],
  [/^messages\./, [[{ name: 'X', size: 'sae:4', time: 0 }]]],
  [/^(openRefused|refused)$/, [[{ code: 'missingKey', key: 'k', where: 'fittings[3]', name: 'X' }]]],
  [/^sketch\.describePane$/, [['X', { fittings: 2, runs: 1, unprotected: '1 m' }]]],
  [/^sketch\.tab$/, [['positive', 'X']]],
  [/^act$/, [['move', 'X']]],
  [
    /^history\./,
    [
      ['X', 0],
      ['X', 1],
      ['X', 2],
    ],
  ],
  [/^fittings\.terminal$/, [['out2'], ['stud']]],
  [/^fittings\.terminalOf$/, [['X', 'out2']]],
  [/^assumption$/, [['a.efficiency', () => 'X']]],
  [/^governs$/, [['drop']]],
  [
    /^headline\.headline$/,
    ['stop', 'fix', 'provisional', 'nothing', 'empty'].map((kind) => [{ kind, count: 1 }, 'vehicle']),
  ],
  [
    /^headline\.notTold$/,
    ['lengthsNotTaped', 'surroundingsNotMarked', 'batteryAssumed', 'cableUnmarked', 'loadUnknown'].flatMap((kind) => [
      [[{ kind, ids: ['a'] }]],
      [[{ kind, ids: ['a', 'b'] }]],
    ]),
  ],
  [/^headline\.notChecked$/, [[[{ rule: 'charging' }]]]],
  [
    /^headline\.brief$/,
    [
      [0, 0],
      [1, 1],
      [2, 2],
    ],
  ],
  [/^headline\.notesCount$|^customer\.(notFinished|toMeasure)$|^customer\.topics/, COUNTS],
  [/^(list\.(fittings|runs)|inspector\.bends|proposing\.parts)$/, COUNTS],
  [/^newPlanDialog\.chosen$/, [[[100, 200]]]],
  [/^fields\.lengthProblem$/, PROBLEMS.map((problem) => [problem, 'X', '1', '2'])],
  [
    /^fields\.numberProblem$/,
    ['empty', 'unreadable', 'tooSmall', 'tooLarge'].map((problem) => [problem, 'X', '1', '2']),
  ],
  [/^customer\.sits$/, [['bay', { length: '1 m', source: 'X' }]]],
  [/^customer\.covers$/, [['X', ['A', 'B', 'C']]]],
  [/^proposing\.why$/, [['X', 'firstFuse']]],
  [/^whys\.step$/, [['Iz']]],
];

/** What German writes like English: names, signs and words of the trade that both have. */
const ALIKE =
  /^(locale|app\.title|app\.pageTitle\(\d\)|topbar\.(label|alternatives)|saveStates\.idle|sketch\.(tab\(\d\)|live\.separator)|whys\.(unitSigns\.|why\.symbol)|summary\.(noFigure|mayCarry\(\d\))|inspector\.(name|origin\(\d\)|ofPart\(\d\))|settings\.(awg|mm2)|fieldLabels\.(battery\.ccaStandards\.|settings\.(volts|ownName))|list\.name|newPlanDialog\.name|refusals\.|fittings\.(materials\.aluminium|runName))/;

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
    const texts = said.map(({ german }) => german);
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
