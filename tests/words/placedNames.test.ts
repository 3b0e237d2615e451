/** A name that was given by the page is shown in the language spoken now; the plan keeps what was written. */
import { afterEach, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { drawLabels } from '../../src/drawing/labels.ts';
import { newPlan, newRun } from '../../src/plan/create.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { FittingKind, Plan } from '../../src/plan/schema.ts';
import { labelWords } from '../../src/sketch/labelWords.ts';
import { sentenceOf } from '../../src/words/answer.ts';
import { defaultName, nameOfId, runTitle, unitsFor, words } from '../../src/words/index.ts';
import { speakIn } from '../../src/words/language.ts';

const outline = { kind: 'bench', lengthM: 2, widthM: 1 } as const;

const planOf = (...named: (readonly [FittingKind, string])[]): Plan => ({
  ...newPlan({ id: 'p', name: 'P', sheetId: 's', outline, mirrored: false }),
  fittings: named.map(([kind, name], index) =>
    newFitting(kind, { id: `f${index}`, name, sheetId: 's', at: { xM: 0.2 + index / 10, yM: 0.5 } }),
  ),
});

const shown = (plan: Plan): (string | null)[] => plan.fittings.map(({ id }) => nameOfId(plan, id));

afterEach(() => speakIn('en'));

type Named = Parameters<typeof planOf>;

const fuse = (name: string): Named[number] => ['fuse', name];
const amplifier = (name: string): Named[number] => ['amplifier', name];

describe('a name given by the page', () => {
  it.each(['en', 'de'] as const)(
    'is shown in the other language when it was placed in %s, of every kind',
    async (placedIn) => {
      const kinds = Object.keys(words.fittings.kinds) as FittingKind[];
      await speakIn(placedIn);
      const place = (plan: Plan, kind: FittingKind): Plan => {
        const at = {
          id: `f${plan.fittings.length}`,
          name: defaultName(kind, plan),
          sheetId: 's',
          at: { xM: 1, yM: 0.5 },
        };
        return { ...plan, fittings: [...plan.fittings, newFitting(kind, at)] };
      };
      const all = [...kinds, ...kinds, 'fuse' as const];
      const plan = all.reduce(place, planOf());
      const bytes = savePlan(plan);
      const own = shown(plan);
      expect(own).toEqual(plan.fittings.map(({ name }) => name));
      await speakIn(placedIn === 'en' ? 'de' : 'en');
      // as it would have been named here from the start
      const here = all.reduce(place, planOf());
      expect(shown(plan)).toEqual(here.fittings.map(({ name }) => name));
      expect(savePlan(plan)).toBe(bytes);
      await speakIn(placedIn);
      expect(shown(plan)).toEqual(own);
    },
  );

  it('is shown so beside the sketch, in titles of runs and in findings', async () => {
    const plan = planOf(['battery', 'Battery'], ['fuse', 'Main fuse'], ['amplifier', 'Amplifier 2']);
    const from = { fittingId: 'f0', terminal: 'positive' };
    const run = newRun({
      id: 'r',
      name: '',
      kind: 'power',
      sheetId: 's',
      from,
      to: { fittingId: 'f1', terminal: 'in' },
      bends: [],
    });
    const whole: Plan = { ...plan, runs: [run] };
    await speakIn('de');
    expect(runTitle(whole, run)).toBe('Batterie – Hauptsicherung');
    const answer = assess(whole);
    const labels = drawLabels(whole, { sheetId: 's', ...whole }, answer, labelWords(unitsFor(whole)));
    expect(labels.filter(({ kind }) => kind === 'fitting').map(({ title }) => title)).toEqual([
      'Batterie',
      'Hauptsicherung',
      'Endstufe 2',
    ]);
    const said = answer.findings.map((one) => sentenceOf(one, whole)).join(' ');
    expect(said).toContain('Endstufe 2');
    expect(said).not.toMatch(/Battery|Main fuse|Amplifier/);
  });

  it('is told from one that a user gave', async () => {
    const named = [
      ['battery', 'Battery in front'],
      ['battery', 'Battery 1'],
      ['battery', 'Battery 02'],
      ['battery', 'battery'],
      ['load', 'Battery'],
      ['amplifier', 'Sub'],
    ] as const;
    await speakIn('de');
    expect(shown(planOf(...named))).toEqual(named.map(([, name]) => name));
  });

  it('stays where it would be the name of two', async () => {
    const plan = planOf(['battery', 'Battery'], ['battery', 'Batterie'], ['amplifier', 'Amplifier']);
    await speakIn('de');
    expect(shown(plan)).toEqual(['Battery', 'Batterie', 'Endstufe']);
    await speakIn('en');
    expect(shown(plan)).toEqual(['Battery', 'Batterie', 'Amplifier']);
  });

  it.each([
    ['one by the name its owner gave', [amplifier('Bass'), fuse('Bass fuse')], ['Bass', 'Sicherung Bass']],
    [
      'one by a name that is said in this language too',
      [amplifier('Amplifier 2'), fuse('Amplifier 2 fuse')],
      ['Endstufe 2', 'Sicherung Endstufe 2'],
    ],
    [
      'one by its kind where it has no name',
      [['load', ''], fuse('Other load fuse')],
      ['Anderer Verbraucher', 'Sicherung Anderer Verbraucher'],
    ],
    [
      'each input',
      [amplifier('Bass'), fuse('Bass fuse'), fuse('Bass fuse 2')],
      ['Bass', 'Sicherung Bass', 'Sicherung Bass 2'],
    ],
    [
      'one that was placed in yet another language',
      [amplifier('Endstufe'), fuse('Amplifier fuse')],
      ['Endstufe', 'Sicherung Endstufe'],
    ],
  ] as const)('tells of a branch fuse what it protects: %s', async (_, named, german) => {
    await speakIn('de');
    expect(shown(planOf(...named))).toEqual(german);
  });

  it('tells so in English of what was proposed in German', async () => {
    const named = [
      amplifier('Endstufe'),
      amplifier('Endstufe 2'),
      fuse('Sicherung Endstufe'),
      fuse('Sicherung Endstufe 2'),
    ];
    expect(shown(planOf(...named))).toEqual(['Amplifier', 'Amplifier 2', 'Amplifier fuse', 'Amplifier 2 fuse']);
    await speakIn('de');
    expect(shown(planOf(...named))).toEqual(named.map(([, name]) => name));
  });

  it.each<[where: string, named: Named, german?: string[]]>([
    ['nothing in the plan is called so', [amplifier('Sub'), fuse('Bass fuse')]],
    ['what is called so is fed by no branch', [['block', 'Rear'], fuse('Rear fuse')]],
    ['it is no fuse', [amplifier('Bass'), ['breaker', 'Bass fuse']]],
    [
      'there is more to it',
      [amplifier('Bass'), fuse('Bass fuse in the boot'), fuse('Old Bass fuse'), fuse('Bass fuse 02')],
    ],
    ['it would be the name of two', [amplifier('Bass'), fuse('Bass fuse'), fuse('Sicherung Bass')]],
    [
      'it may be said of two',
      [amplifier('Amplifier'), ['load', 'Amplifier'], fuse('Amplifier fuse')],
      ['Endstufe', 'Amplifier', 'Amplifier fuse'],
    ],
  ])('is left to a branch fuse where %s', async (_, named, german) => {
    await speakIn('de');
    expect(shown(planOf(...named))).toEqual(german ?? named.map(([, name]) => name));
  });

  it('is given to nothing else: a new one is numbered beside what is shown', async () => {
    await speakIn('de');
    const plan = planOf(['battery', 'Battery'], ['fuse', 'Main fuse'], ['fuse', 'Fuse']);
    expect(defaultName('battery', plan)).toBe('Batterie 2');
    expect(defaultName('fuse', plan)).toBe('Sicherung 2');
  });
});
