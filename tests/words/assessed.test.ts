import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { boundsIn } from '../../src/panels/inputs.ts';
import { addOutput } from '../../src/plan/edits/addOutput.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { removeRun } from '../../src/plan/edits/removeRun.ts';
import { setInput } from '../../src/plan/edits/setInput.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { notCheckedOf, notToldOf, remedyOf, sentenceOf } from '../../src/words/answer.ts';
import { words } from '../../src/words/full.ts';
import { nameOfId } from '../../src/words/index.ts';
import { charged } from '../assess/plans.ts';
import { examplePlan } from '../panels/fixture.ts';

const plan = examplePlan();
const thin = {
  size: 'sae:8',
  material: { value: 'cca10', origin: 'told' },
  insulationC: { value: 60, origin: 'told' },
  strands: null,
  copperThrough: null,
} as const;

/** Plans that between them break many rules. */
const PLANS: Readonly<Record<string, Plan>> = {
  'as drawn': plan,
  taped: changeRun(plan, 'batToFuse', { tapedM: 0.3 }),
  'no fuse': removeFitting(plan, 'mainFuse'),
  'fuse at the far end': moveFitting(plan, 'mainFuse', { xM: 3, yM: 0.5 }),
  'no ground': removeRun(plan, 'fromRear'),
  'not told': changeFitting(plan, 'rear', { ratedW: null, onboardFusesA: null, loadOhm: null }),
  'by its own fuses': changeFitting(plan, 'rear', { ratedW: null }),
  'too thin by hand': changeRun(plan, 'passToBlock', { conductor: structuredClone(thin) }),
  'too large a fuse': changeFitting(plan, 'mainFuse', { link: { ratingA: 400, family: 'auto' } }),
  'too small a fuse': changeFitting(plan, 'mainFuse', { link: { ratingA: 30, family: 'auto' } }),
  "above the maker's": changeFitting(plan, 'rear', { externalFuseMaxA: 40 }),
  'an unused output': addOutput(plan, 'block'),
  charged: charged(),
  unregulated: setInput(plan, 'rear.regulated', false, 'told'),
};

const ANSWERS = Object.entries(PLANS).map(([title, of]) => [title, of, assess(of)] as const);

describe.each(ANSWERS)('the answer for a plan: %s', (_title, of, answer) => {
  it('has words for every finding', () => {
    for (const finding of answer.findings) {
      const text = `${sentenceOf(finding, of)} ${remedyOf(finding, of)}`;
      expect(text).not.toMatch(/undefined|NaN|null|Infinity|something|too much|too little/);
    }
  });

  it('has words for what governs, what was not told and what was not checked', () => {
    for (const { governs } of Object.values(answer.figures)) {
      if (governs !== null) expect(words.governs(governs)).not.toBe(governs);
    }
    expect(notToldOf(answer)).not.toMatch(/undefined/);
    expect(notCheckedOf(answer)).not.toMatch(/undefined/);
  });

  it('has words for every assumption', () => {
    for (const { path } of answer.assumptions) {
      const field = path.slice(path.indexOf('.') + 1);
      expect(words.assumption(path, (id) => nameOfId(of, id))).not.toBe(field);
    }
  });

  it('has words for every step of every why, and every assumption in one can be told there', () => {
    for (const { steps } of Object.values(answer.whys)) {
      for (const { symbol, label, edit, value } of steps) {
        const name = words.whys.step(label ?? symbol);
        expect([label ?? symbol, name]).not.toEqual([label ?? symbol, label ?? symbol]);
        if (edit === undefined || typeof value !== 'number') continue;
        const { min, max } = boundsIn(of, edit);
        expect([edit, value >= min && value <= max]).toEqual([edit, true]);
        expect(setInput(of, edit, value, 'measured'), edit).not.toBe(of);
      }
    }
  });
});

it('these plans break many rules between them', () => {
  const broken = new Set(ANSWERS.flatMap(([, , answer]) => answer.findings.map(({ rule }) => rule)));
  expect(broken.size).toBeGreaterThanOrEqual(12);
});
