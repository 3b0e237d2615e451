import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isAlike } from '../../src/plan/alike.ts';
import { changeFrom, withChange } from '../../src/plan/change.ts';
import { newSheet } from '../../src/plan/create.ts';
import { addSheet } from '../../src/plan/edits/addSheet.ts';
import { changeSettings } from '../../src/plan/edits/changeSettings.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { removeSheet } from '../../src/plan/edits/removeSheet.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { type Edit, randomEdits } from './support/randomEdits.ts';
import { at, emptyVan, lay, place, sampleOfAll } from './support/samplePlan.ts';

const applied = (plan: Plan, edits: readonly Edit[]): Plan => edits.reduce((so, edit) => edit(so), plan);

/** The items in the order of so many numbers: any order there is. */
const ordered = <T>(items: readonly T[], by: readonly number[]): T[] =>
  items
    .map((item, index) => ({ item, rank: by[index] ?? 0 }))
    .sort((one, other) => one.rank - other.rank)
    .map(({ item }) => item);

const ranks = fc.array(fc.nat(99), { minLength: 40, maxLength: 40 });

const reordering: fc.Arbitrary<Edit> = fc.record({ fittings: ranks, runs: ranks }).map((by) => (plan) => ({
  ...plan,
  fittings: ordered(plan.fittings, by.fittings),
  runs: ordered(plan.runs, by.runs),
}));

const sheetEdit: fc.Arbitrary<Edit> = fc.constantFrom<Edit>(
  (plan) =>
    addSheet(
      plan,
      newSheet({ id: `sheet-${plan.sheets.length}`, name: 'Bench', outline: DEFAULT_OUTLINES.bench, mirrored: false }),
    ),
  (plan) => removeSheet(plan, plan.sheets.at(-1)?.id ?? ''),
  (plan) => ({ ...plan, sheets: [...plan.sheets].reverse() }),
);

/** What a hand, a list and the settings do to a plan, and what nothing in the page does yet: another order. */
const acts: fc.Arbitrary<Edit[]> = fc
  .tuple(randomEdits, fc.array(fc.oneof(reordering, sheetEdit), { maxLength: 3 }))
  .map(([edits, more]) => [...edits, ...more]);

describe('a change between two plans', () => {
  it('leads from the one to the other, also where both were sent to another thread', () => {
    fc.assert(
      fc.property(randomEdits, acts, (earlier, later) => {
        const before = applied(sampleOfAll(), earlier);
        const after = applied(before, later);
        const change = changeFrom(before, after);
        expect(withChange(before, change)).toEqual(after);
        expect(withChange(structuredClone(before), structuredClone(change))).toEqual(after);
      }),
      { numRuns: 200, seed: 20261126 },
    );
  });

  it('leads back as well, and on from any of a row of drafts that all began at one plan', () => {
    fc.assert(
      fc.property(fc.array(acts, { minLength: 1, maxLength: 4 }), (drafts) => {
        const base = sampleOfAll();
        const sent = structuredClone(base);
        for (const edits of drafts) {
          const draft = applied(base, edits);
          expect(withChange(sent, structuredClone(changeFrom(base, draft)))).toEqual(draft);
          expect(withChange(draft, changeFrom(draft, base))).toEqual(base);
        }
        // the plan that is held there is never changed by a draft
        expect(sent).toEqual(base);
      }),
      { numRuns: 50, seed: 20261127 },
    );
  });

  it('takes nothing over from a plan of another document', () => {
    const other = place({ ...emptyVan(), id: 'other', name: 'Other' }, 'ground', 'bolt', at(1, 1));
    expect(withChange(sampleOfAll(), changeFrom(sampleOfAll(), other))).toEqual(other);
  });
});

describe('what a change tells', () => {
  /** 200 fittings in rows, a cable along each row. */
  function rows(): Plan {
    let plan = emptyVan();
    for (let index = 0; index < 200; index += 1) {
      plan = place(plan, 'passThrough', `p${index}`, at(0.2 + (index % 20) / 5, 0.2 + Math.floor(index / 20) / 8));
    }
    for (let row = 0; row < 10; row += 1)
      plan = lay(plan, `r${row}`, `p${20 * row}.through`, `p${20 * row + 1}.through`);
    return plan;
  }

  it('is one fitting of 200 when one has moved', () => {
    const before = rows();
    const after = moveFitting(before, 'p77', at(3.3, 0.77));
    expect(changeFrom(before, after)).toEqual({ fittings: { renewed: [[77, after.fittings[77]]] } });
  });

  it('is the places of those that stay when one is taken out, its run with it', () => {
    const before = rows();
    const change = changeFrom(before, removeFitting(before, 'p0'));
    expect(change.fittings).toEqual({ members: Array.from({ length: 199 }, (_, index) => index + 1) });
    expect(change.runs).toEqual({ members: [1, 2, 3, 4, 5, 6, 7, 8, 9] });
  });

  it('is nothing between a plan and itself', () => {
    const plan = sampleOfAll();
    expect(changeFrom(plan, plan)).toEqual({});
    expect(changeFrom(plan, { ...plan })).toEqual({});
  });

  it('is the part alone when settings or the name have changed', () => {
    const plan = sampleOfAll();
    const renamed = renamePlan(plan, 'Another name');
    expect(changeFrom(plan, renamed)).toEqual({ name: 'Another name' });
    const afloat = changeSettings(plan, { ruleSet: 'boatCfr' });
    expect(changeFrom(plan, afloat)).toEqual({ settings: { ...plan.settings, ruleSet: 'boatCfr' } });
  });
});

describe('two plans of which one was made of the other', () => {
  it('are alike only when they are saved alike', () => {
    fc.assert(
      fc.property(randomEdits, (edits) => {
        let before = sampleOfAll();
        for (const edit of edits) {
          const after = edit(before);
          if (isAlike(before, after)) expect(savePlan(after)).toBe(savePlan(before));
          before = after;
        }
      }),
      { numRuns: 100, seed: 20261128 },
    );
  });

  it('are alike when a thing was made anew where it was, and not when it moved, went, came or changed its place', () => {
    const plan = sampleOfAll();
    expect(isAlike(plan, plan)).toBe(true);
    expect(isAlike(plan, { ...plan, fittings: structuredClone(plan.fittings), runs: structuredClone(plan.runs) })).toBe(
      true,
    );
    expect(isAlike(plan, moveFitting(plan, 'fuse', at(0.8, 1.4001)))).toBe(false);
    expect(isAlike(plan, removeFitting(plan, 'bolt'))).toBe(false);
    expect(isAlike(removeFitting(plan, 'bolt'), plan)).toBe(false);
    expect(isAlike(plan, { ...plan, fittings: [...plan.fittings].reverse() })).toBe(false);
    expect(isAlike(plan, { ...plan, runs: [...plan.runs].reverse() })).toBe(false);
    expect(isAlike(plan, renamePlan(plan, 'Another name'))).toBe(false);
    expect(isAlike(plan, changeSettings(plan, { ruleSet: 'boatCfr' }))).toBe(false);
  });
});
