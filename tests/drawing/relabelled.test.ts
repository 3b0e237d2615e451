import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { type GaugeId, isGaugeId } from '../../src/calc/conductor/gauge.ts';
import { drawLabels, type Labelled } from '../../src/drawing/labels.ts';
import { relabelled } from '../../src/drawing/relabelled.ts';
import type { LabelShape } from '../../src/drawing/shapes.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { speakIn } from '../../src/words/language.ts';
import '../../src/words/answer.ts';
import { anyPlan } from '../assess/anyPlan.ts';
import { answerWith, runAnswer, sourceAnswer } from '../support/answers.ts';
import { words } from './support/labelWords.ts';
import { feedPlan, SHEET, withFittings } from './support/plans.ts';

afterEach(() => speakIn('en'));

const allOn = ({ fittings, runs }: Plan, sheetId: string): Labelled => ({
  sheetId,
  fittings,
  runs: runs.filter((run) => run.sheetId === sheetId),
});

const all = (plan: Plan, sheetId: string, answer: Assessment) =>
  drawLabels(plan, allOn(plan, sheetId), answer, words).filter(({ kind }) => kind !== 'hazard');

const anew = (labels: readonly LabelShape[], plan: Plan, sheetId: string, before: Assessment, now: Assessment) =>
  relabelled(labels, plan, allOn(plan, sheetId), { before, now }, words);

const byKey = (labels: readonly LabelShape[]) =>
  labels.toSorted((one, other) => (one.key < other.key ? -1 : Number(one.key > other.key)));

function size(id: string): GaugeId {
  if (!isGaugeId(id)) throw new Error(`${id} is no size.`);
  return id;
}

const length = (lengthM: number, origin: 'drawn' | 'taped' = 'drawn') => ({ lengthM, origin, plusMinusM: 0 });

const fuseAnswer = (ratingA: number): Assessment['fuses'][number] => ({
  ...{ fittingId: 'fuse', terminal: null, ratingA, family: null, chosen: true, neededA: null },
  ...{ ceilingA: null, fullA: null, heatingA: null, why: null },
});

describe('labels after another answer to the same plan', () => {
  const plan = feedPlan();
  const answer = (patch: Partial<Assessment> = {}) =>
    answerWith({
      runs: [
        runAnswer('run1', { length: length(0.3), gauge: size('sae:4') }),
        runAnswer('run2', { length: length(0.5), gauge: size('sae:4') }),
        runAnswer('run3', { length: length(2.4), gauge: size('sae:4') }),
      ],
      fuses: [],
      ...patch,
    });
  const before = answer({ fuses: [fuseAnswer(100)] });
  const labels = all(plan, SHEET, before);
  const figuresOf = (list: readonly LabelShape[], key: string) => list.find((label) => label.key === key)?.figures;

  it('are the same list where nothing reads otherwise', () => {
    expect(anew(labels, plan, SHEET, before, answer({ fuses: [fuseAnswer(100)] }))).toBe(labels);
  });

  it('are the same objects but for what reads otherwise', () => {
    const now = answer({ fuses: [fuseAnswer(150)] });
    const made = anew(labels, plan, SHEET, before, now);
    expect(figuresOf(labels, 'fitting.fuse')).toBe('100 A');
    expect(figuresOf(made, 'fitting.fuse')).toBe('150 A');
    const others = labels.filter(({ key }) => key !== 'fitting.fuse');
    expect(others.length).toBeGreaterThan(4);
    for (const label of others) expect(made).toContain(label);
    expect(made).toHaveLength(labels.length);
    // where it stood in the order: the first come first to their places
    expect(made.map(({ key }) => key)).toEqual(labels.map(({ key }) => key));
  });

  it.each<[string, Partial<Parameters<typeof runAnswer>[1]>, string | undefined]>([
    ['another size', { length: length(0.5), gauge: size('sae:2') }, 'size sae:2, 0.5 m'],
    ['no size', { length: length(0.5), gauge: null }, '0.5 m'],
    ['another length', { length: length(0.6), gauge: size('sae:4') }, 'size sae:4, 0.6 m'],
    ['the same length, taped', { length: length(0.5, 'taped'), gauge: size('sae:4') }, 'size sae:4, taped 0.5 m'],
    ['nothing that protects it any more', { length: length(0.5), gauge: size('sae:4'), unprotectedM: 0.5 }, undefined],
  ])('say of a run %s, and again what they said before', (_, patch, figures) => {
    const runs = [before.runs[0], runAnswer('run2', patch), before.runs[2]].flatMap((run) => run ?? []);
    const now = answer({ runs, fuses: [fuseAnswer(100)] });
    const made = anew(labels, plan, SHEET, before, now);
    expect(figuresOf(made, 'run.run2')).toBe(figures);
    const back = anew(made, plan, SHEET, now, before);
    expect(byKey(back)).toEqual(byKey(labels));
  });

  it('say the same of an unprotected run however long it is: its own figure stands beside the stripe', () => {
    const bare = (unprotectedM: number) =>
      answer({
        runs: [runAnswer('run1', { length: length(0.3), gauge: size('sae:4'), unprotectedM })],
        sources: [sourceAnswer('battery', { unprotectedM, runIds: ['run1'] })],
      });
    const drawn = all(plan, SHEET, bare(0.3));
    expect(anew(drawn, plan, SHEET, bare(0.3), bare(0.2))).toBe(drawn);
  });
});

it('labels of a part of a sheet call its things what the whole plan calls them', async () => {
  const plan = withFittings(feedPlan(), [['ground', 'ground', 1, 1]]);
  const nameOf: Record<string, string> = { fuse: 'Main fuse', ground: 'Hauptsicherung' };
  const named = { ...plan, fittings: plan.fittings.map((one) => ({ ...one, name: nameOf[one.id] ?? one.name })) };
  const fuse = named.fittings.filter(({ id }) => id === 'fuse');
  const answers = { before: answerWith({}), now: answerWith({ fuses: [fuseAnswer(100)] }) };
  await speakIn('de');
  const [label] = relabelled([], named, { sheetId: SHEET, fittings: fuse, runs: [] }, answers, words);
  // were it said in German, two would be called the same
  expect(label?.title).toBe('Main fuse');
  expect(label?.figures).toBe('100 A');
});

describe('labels of any plan, after the answer to any change of it', () => {
  it('read as those that are drawn of the new answer', { timeout: 600_000 }, () => {
    const change = fc.record({ of: fc.nat(), tapedM: fc.constantFrom(null, 0.1, 0.15, 1, 4, 9), lavish: fc.boolean() });
    fc.assert(
      fc.property(anyPlan, fc.array(change, { minLength: 1, maxLength: 3 }), (plan, changes) => {
        const answers = changes.map(({ of, tapedM, lavish }) =>
          assess({
            ...plan,
            settings: { ...plan.settings, dropLimit: { ...plan.settings.dropLimit, value: lavish ? 0.1 : 0.03 } },
            runs: plan.runs.map((run, place) => (place === of % plan.runs.length ? { ...run, tapedM } : run)),
          }),
        );
        const first = assess(plan);
        for (const { id: sheetId } of plan.sheets) {
          let [before, labels]: [Assessment, readonly LabelShape[]] = [first, all(plan, sheetId, first)];
          for (const now of answers) {
            labels = anew(labels, plan, sheetId, before, now);
            expect(byKey(labels)).toEqual(byKey(all(plan, sheetId, now)));
            before = now;
          }
        }
      }),
      { numRuns: process.env.FEEDRUN_LONG === undefined ? 20 : 500, seed: 20261126 },
    );
  });
});
