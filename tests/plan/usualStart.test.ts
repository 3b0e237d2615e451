/** What a new plan begins with, on every outline. */
import { describe, expect, it } from 'vitest';
import { newPlan } from '../../src/plan/create.ts';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES, sheetBox } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import { withUsualStart } from '../../src/plan/usualStart.ts';

const KINDS = Object.keys(DEFAULT_OUTLINES) as (keyof typeof DEFAULT_OUTLINES)[];
let next = 0;
const newId = (): string => {
  next += 1;
  return `new${next}`;
};

describe('a usual start', () => {
  it.each(KINDS)('%s: battery and amplifiers stand inside, on either side of drive, and the plan opens', (kind) => {
    for (const mirrored of [false, true]) {
      for (const battery of ['front', 'seat', 'rear'] as const) {
        const empty = newPlan({ id: 'p', name: 'P', sheetId: 's', outline: DEFAULT_OUTLINES[kind], mirrored });
        const plan = withUsualStart(empty, { battery, amplifiersW: [300, 1000] }, (one) => one, newId);
        expect(plan.fittings.map((one) => one.kind)).toEqual(['battery', 'amplifier', 'amplifier']);
        const outputs = plan.fittings.flatMap((one) => (one.kind === 'amplifier' ? [one.ratedW] : []));
        expect(outputs).toEqual([
          { value: 300, origin: 'told' },
          { value: 1000, origin: 'told' },
        ]);
        const [sheet] = plan.sheets;
        if (sheet === undefined) throw new Error('It has one');
        const box = sheetBox(sheet);
        for (const { at } of plan.fittings) {
          expect(at.xM).toBeGreaterThan(box.minXM);
          expect(at.xM).toBeLessThan(box.maxXM);
          expect(at.yM).toBeGreaterThan(box.minYM);
          expect(at.yM).toBeLessThan(box.maxYM);
        }
        expect(openPlan(savePlan(plan))).toMatchObject({ ok: true });
      }
    }
  });

  it('is nothing where nothing is asked for', () => {
    const empty = newPlan({ id: 'p', name: 'P', sheetId: 's', outline: DEFAULT_OUTLINES.saloon, mirrored: false });
    expect(withUsualStart(empty, { battery: null, amplifiersW: [] }, (one) => one, newId)).toBe(empty);
  });
});
