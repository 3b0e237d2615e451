import { afterEach, describe, expect, it } from 'vitest';
import type { Finding, RuleId, Severity } from '../../src/assess/answer.ts';
import { newPlan, newRun } from '../../src/plan/create.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { FittingKind, Plan } from '../../src/plan/schema.ts';
import { remedyOf, sentenceOf, words } from '../../src/words/answer.ts';
import { speakIn } from '../../src/words/language.ts';

const OUTLINE = { ...DEFAULT_OUTLINES.panelVan, lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 } as const;
const KINDS: readonly FittingKind[] = ['battery', 'fuse', 'block', 'amplifier', 'ground', 'passThrough'];

function planWithAll(): Plan {
  const plan = newPlan({ id: 'p', name: 'P', sheetId: 's', outline: OUTLINE, mirrored: false });
  const fittings = KINDS.map((kind) =>
    newFitting(kind, { id: kind, name: `The ${kind}`, sheetId: 's', at: { xM: 1, yM: 1 } }),
  );
  const from = { fittingId: 'battery', terminal: 'positive' };
  const to = { fittingId: 'fuse', terminal: 'in' };
  return {
    ...plan,
    fittings,
    runs: [newRun({ id: 'run', name: '', kind: 'power', sheetId: 's', from, to, bends: [] })],
  };
}

const plan = planWithAll();
const RULES = Object.keys(words.findings.findings) as RuleId[];
const SEVERITIES: readonly Severity[] = ['stop', 'fix', 'note'];

function finding(rule: RuleId, severity: Severity, more: Partial<Finding> = {}): Finding {
  const places = [{ kind: 'fitting', id: 'battery' }] as const;
  return {
    id: rule,
    rule,
    severity,
    places,
    params: {},
    source: 'feedrunRules',
    provisional: false,
    decidedBy: [],
    why: null,
    ...more,
  };
}

/** Nothing that shows a gap in the words: no 'undefined', no doubled or leading blanks, one sentence end. */
function expectPlain(text: string): void {
  expect(text).not.toMatch(/undefined|NaN|null|Infinity|\[object| {2}| [.,;]|^\s|\s$/);
  expect(text).toMatch(/^[A-Z0-9'].*[.?]$/);
}

afterEach(() => speakIn('en'));

describe('a finding in words', () => {
  it.each(RULES.flatMap((rule) => SEVERITIES.map((severity) => [rule, severity] as const)))(
    '%s as %s has a sentence and a remedy, also where the finding carries no figure and its place is gone',
    (rule, severity) => {
      for (const places of [
        [{ kind: 'fitting', id: 'amplifier' }],
        [{ kind: 'run', id: 'run' }],
        [{ kind: 'fitting', id: 'gone' }],
        [],
      ] as const) {
        const one = finding(rule, severity, { places });
        expectPlain(sentenceOf(one, plan));
        expectPlain(remedyOf(one, plan));
      }
    },
  );

  it('says a fuse too far away as the rules put it', () => {
    const places = [
      { kind: 'run', id: 'run' },
      { kind: 'fitting', id: 'battery' },
    ] as const;
    const params = { unprotectedM: 1.2, limitM: 0.45 };
    const one = finding('unprotected-length', 'stop', { places, params });
    expect(sentenceOf(one, plan)).toBe(
      'The first fuse is 1.2 m of cable from The battery. If that stretch touches the body it burns, and nothing opens.',
    );
    expect(remedyOf(one, plan)).toBe('Bring it within 45 cm.');
  });

  it('says that a drawn length or an assumption decides it', () => {
    const text = sentenceOf(
      finding('drop-whole', 'note', { provisional: true, decidedBy: ['settings.bodyOhm', 'amplifier.efficiency'] }),
      plan,
    );
    expect(text).toContain('Provisional: tape it.');
    expect(text).toContain('Decided by an assumption: body resistance, efficiency of The amplifier.');
  });

  it("calls a family of the user's own by the name it was given", () => {
    const own = { family: 'own1', seat: 'holder', ratingsA: [60], breakingA: 3000, ratedV: 32 } as const;
    const named = (name: string): Plan => ({
      ...plan,
      settings: { ...plan.settings, ownLinks: [{ ...own, ratingsA: [...own.ratingsA], name }] },
    });
    const notMade = finding('rating-not-held', 'fix', { params: { ratingA: 70, family: 'own1' } });
    expect(sentenceOf(notMade, named('Bolt links, blue box'))).toContain('(Bolt links, blue box)');
    expect(sentenceOf(notMade, named(''))).toContain('(Own 1)');
    const inStock = finding('rating-not-held', 'note', { params: { ratingA: 60, heldBy: ['own1', 'iso8820-3-E'] } });
    expect(remedyOf(inStock, named('Bolt links, blue box'))).toContain(
      'Bolt links, blue box; Blade, ISO 8820-3 type E',
    );
    const short = finding('breaking-capacity', 'stop', {
      params: { verdict: 'belowTable', helpFamily: 'own1', helpRatingA: 60 },
    });
    expect(remedyOf(short, named('Bolt links, blue box'))).toBe(
      'Fit a type whose stated breaking capacity is sufficient, such as Bolt links, blue box at 60 A.',
    );
  });

  it('names each part that nothing is chosen for with what it is to bear, an output of a block by its terminal', async () => {
    const parts = ['block', 'fuse', 'battery'].map((id) => ({ kind: 'fitting', id }) as const);
    const undecided = finding('supply-wiring', 'fix', {
      places: [...parts, { kind: 'fitting', id: 'amplifier' }],
      params: {
        ...{ what: 'undecided', parts: 3, supplyA: 40 },
        ...{
          heatingA: 40,
          neededA: 50,
          terminal: 'out2',
          heatingA1: 30,
          neededA1: 37.5,
          terminal1: null,
          heatingA2: 30,
        },
      },
    });
    expect(remedyOf(undecided, plan)).toMatch(
      /: The block, output 2 to at least 50 A; The fuse to at least 37\.5 A; The battery for at least 30 A\.$/,
    );
    await speakIn('de');
    expect(remedyOf(undecided, plan)).toMatch(
      /: The block, Abgang 2 auf mindestens 50 A; The fuse auf mindestens 37,5 A; The battery für mindestens 30 A\.$/,
    );
    expect(sentenceOf(undecided, plan)).toMatch(/^The block, Abgang 2 und 2 weitere im Weg von /);
  });

  it('shows lengths as the plan wants them', () => {
    const inches: Plan = { ...plan, settings: { ...plan.settings, showLength: 'ft-in' } };
    const one = finding('unprotected-length', 'stop', { params: { unprotectedM: 0.6, limitM: 0.45 } });
    expect(remedyOf(one, inches)).toBe('Bring it within 17 3/4 in.');
  });
});
