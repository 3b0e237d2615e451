import { describe, expect, it } from 'vitest';
import { polygonHolds } from '../../../src/geom/polygon.ts';
import { fittingById, runById } from '../../../src/plan/byId.ts';
import { addBend } from '../../../src/plan/edits/addBend.ts';
import { changeFitting } from '../../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../../src/plan/edits/changeRun.ts';
import { changeSheet } from '../../../src/plan/edits/changeSheet.ts';
import { mirrorSheet } from '../../../src/plan/edits/mirrorSheet.ts';
import { moveBend } from '../../../src/plan/edits/moveBend.ts';
import { moveFitting } from '../../../src/plan/edits/moveFitting.ts';
import { removeBend } from '../../../src/plan/edits/removeBend.ts';
import { removeFitting } from '../../../src/plan/edits/removeFitting.ts';
import { removeRun } from '../../../src/plan/edits/removeRun.ts';
import { slideFitting } from '../../../src/plan/edits/slideFitting.ts';
import { DEFAULT_OUTLINES } from '../../../src/plan/outline.ts';
import { ownFrom } from '../../../src/plan/ownOutline.ts';
import type { Outline, Plan, Run } from '../../../src/plan/schema.ts';
import { at, emptyVan, lay, place, sampleVan } from '../support/samplePlan.ts';

/** Battery at x = 0, fuse at x = 1, amplifier at x = 4, in one straight line; both runs as told. */
function fusedLine(first: Partial<Run> = {}, second: Partial<Run> = {}): Plan {
  let plan = place(emptyVan(), 'battery', 'battery', at(0, 1));
  plan = place(place(plan, 'fuse', 'fuse', at(1, 1)), 'amplifier', 'amp', at(4, 1));
  return lay(lay(plan, 'a', 'battery.positive', 'fuse.in', first), 'b', 'fuse.out', 'amp.supply', second);
}

const tapedOf = (plan: Plan) => plan.runs.map(({ tapedM }) => tapedM);

describe('moveFitting', () => {
  it('moves to 0.1 mm and touches nothing else', () => {
    const plan = sampleVan();
    const after = moveFitting(plan, 'block', at(3.00004, 0.99996));
    expect(fittingById(after, 'block')?.at).toEqual(at(3, 1));
    expect(after.runs).toBe(plan.runs);
    expect(after.settings).toBe(plan.settings);
  });

  it('gives back the same plan when it does not move, is unknown, or would leave the sheet', () => {
    const plan = sampleVan();
    expect(moveFitting(plan, 'block', at(3.2, 1.00001))).toBe(plan);
    expect(moveFitting(plan, 'none', at(1, 1))).toBe(plan);
    expect(moveFitting(plan, 'block', at(101, 1))).toBe(plan);
    expect(moveFitting(plan, 'block', at(Number.NaN, 1))).toBe(plan);
  });

  it('keeps the taped total of the two runs at a fuse and shares it as drawn: from 1 : 3 to 1 : 1', () => {
    const plan = fusedLine({ tapedM: 1.1 }, { tapedM: 3.3 });
    expect(tapedOf(moveFitting(plan, 'fuse', at(2, 1)))).toEqual([2.2, 2.2]);
  });

  it('leaves taped lengths alone at any other fitting, and when only one of two runs is taped', () => {
    expect(tapedOf(moveFitting(fusedLine({ tapedM: 1.1 }, { tapedM: 3.3 }), 'battery', at(0.5, 1)))).toEqual([
      1.1, 3.3,
    ]);
    expect(tapedOf(moveFitting(fusedLine({ tapedM: 1.1 }), 'fuse', at(2, 1)))).toEqual([1.1, null]);
  });

  it('leaves them alone when one of the runs is locked', () => {
    const plan = fusedLine({ tapedM: 1.1, locked: true }, { tapedM: 3.3 });
    expect(tapedOf(moveFitting(plan, 'fuse', at(2, 1)))).toEqual([1.1, 3.3]);
  });
});

describe('slideFitting', () => {
  it('keeps the way of the cable: bends that it passes change runs', () => {
    const plan = fusedLine({}, { bends: [at(2, 1), at(2, 1.5), at(4, 1.5)] });
    const after = slideFitting(plan, 'fuse', at(3, 1.7));
    expect(fittingById(after, 'fuse')?.at).toEqual(at(3, 1.5));
    expect(runById(after, 'a')?.bends).toEqual([at(2, 1), at(2, 1.5)]);
    expect(runById(after, 'b')?.bends).toEqual([at(4, 1.5)]);
  });

  it('leaves a bend behind where the fitting stood on a corner', () => {
    const plan = moveFitting(fusedLine({}, { bends: [at(4, 1.4)] }), 'fuse', at(0, 1.4));
    const after = slideFitting(plan, 'fuse', at(2, 1.3));
    expect(runById(after, 'a')?.bends).toEqual([at(0, 1.4)]);
    expect(fittingById(after, 'fuse')?.at).toEqual(at(2, 1.4));
  });

  it('works for runs drawn towards each other and away', () => {
    let plan: Plan = { ...fusedLine(), runs: [] };
    plan = lay(plan, 'a', 'fuse.in', 'battery.positive');
    plan = lay(plan, 'b', 'amp.supply', 'fuse.out', { bends: [at(4, 1.5), at(3, 1.5), at(2, 1)] });
    const after = slideFitting(plan, 'fuse', at(2.5, 1.25));
    expect(runById(after, 'a')?.bends).toEqual([at(2, 1)]);
    expect(runById(after, 'b')?.bends).toEqual([at(4, 1.5), at(3, 1.5)]);
  });

  it('keeps a taped total: 4.4 m over 4 m drawn, a quarter of the way', () => {
    const plan = fusedLine({ tapedM: 3.3 }, { tapedM: 1.1 });
    expect(tapedOf(slideFitting(plan, 'fuse', at(3, 1)))).toEqual([3.3, 1.1]);
  });

  it('there and back is the same plan', () => {
    const plan = fusedLine({ tapedM: 1.1 }, { tapedM: 3.3, bends: [at(2, 1.4), at(3, 1.4)] });
    const shared = slideFitting(slideFitting(plan, 'fuse', at(2.5, 1.4)), 'fuse', at(0.5, 1));
    expect(slideFitting(slideFitting(shared, 'fuse', at(2.5, 1.4)), 'fuse', at(0.5, 1))).toEqual(shared);
  });

  it('moves nothing that is locked, that has no cable, or that is no inline fitting', () => {
    for (const plan of [
      changeFitting(fusedLine(), 'fuse', { locked: true }),
      fusedLine({ locked: true }),
      fusedLine({}, { locked: true }),
      removeRun(fusedLine(), 'a'),
    ]) {
      expect(slideFitting(plan, 'fuse', at(2, 1))).toBe(plan);
    }
    const plan = sampleVan();
    expect(slideFitting(plan, 'block', at(2, 1))).toBe(plan);
  });
});

describe('bends', () => {
  it('are added before, between and after, moved and removed', () => {
    let plan = fusedLine();
    plan = addBend(plan, 'a', 0, at(0.5, 1.50004));
    plan = addBend(plan, 'a', 0, at(0.2, 1.2));
    plan = addBend(plan, 'a', 2, at(0.8, 1.2));
    expect(runById(plan, 'a')?.bends).toEqual([at(0.2, 1.2), at(0.5, 1.5), at(0.8, 1.2)]);
    plan = moveBend(plan, 'a', 1, at(0.5, 1.6));
    plan = removeBend(plan, 'a', 0);
    expect(runById(plan, 'a')?.bends).toEqual([at(0.5, 1.6), at(0.8, 1.2)]);
  });

  it('a taped length stays whatever the drawing says', () => {
    expect(tapedOf(addBend(fusedLine({ tapedM: 1.5 }), 'a', 0, at(0.5, 1.7)))).toEqual([1.5, null]);
  });

  it('give back the same plan where there is no such bend', () => {
    const plan = fusedLine();
    expect(addBend(plan, 'a', 1, at(0, 0))).toBe(plan);
    expect(addBend(plan, 'a', -1, at(0, 0))).toBe(plan);
    expect(addBend(plan, 'a', 0.5, at(0, 0))).toBe(plan);
    expect(addBend(plan, 'none', 0, at(0, 0))).toBe(plan);
    expect(moveBend(plan, 'a', 0, at(0, 0))).toBe(plan);
    expect(removeBend(plan, 'a', 0)).toBe(plan);
  });

  it('500 are the most', () => {
    const bends = Array.from({ length: 500 }, (_, index) => at(index / 1000, 1.2));
    const plan = fusedLine({ bends });
    expect(runById(plan, 'a')?.bends).toHaveLength(500);
    expect(addBend(plan, 'a', 0, at(0, 0))).toBe(plan);
  });
});

describe('locked', () => {
  it('a locked fitting is neither moved nor removed, and can be changed and unlocked', () => {
    const plan = changeFitting(sampleVan(), 'fuse', { locked: true });
    expect(moveFitting(plan, 'fuse', at(2, 1))).toBe(plan);
    expect(removeFitting(plan, 'fuse')).toBe(plan);
    expect(changeFitting(plan, 'fuse', { name: 'Main fuse' })).not.toBe(plan);
    expect(changeFitting(plan, 'fuse', { locked: false })).toEqual(sampleVan());
  });

  it('a locked run keeps its bends and its place, and follows its fittings', () => {
    const plan = changeRun(fusedLine({ bends: [at(0.5, 1.5)], tapedM: 2 }), 'a', { locked: true });
    expect(addBend(plan, 'a', 0, at(0, 0))).toBe(plan);
    expect(moveBend(plan, 'a', 0, at(0, 0))).toBe(plan);
    expect(removeBend(plan, 'a', 0)).toBe(plan);
    expect(removeRun(plan, 'a')).toBe(plan);
    expect(changeRun(plan, 'a', { bends: [] })).toBe(plan);
    expect(runById(changeRun(plan, 'a', { tapedM: 2.5 }), 'a')?.tapedM).toBe(2.5);
    expect(runById(moveFitting(plan, 'battery', at(0, 1.4)), 'a')?.tapedM).toBe(2);
    expect(runById(changeRun(plan, 'a', { locked: false }), 'a')?.locked).toBe(false);
  });

  it('a fitting whose locked run would go with it stays', () => {
    const plan = fusedLine({ locked: true });
    expect(removeFitting(plan, 'battery')).toBe(plan);
    // the fuse may go: its runs become one, which nobody loses
    expect(removeFitting(plan, 'fuse').runs).toMatchObject([{ id: 'a', locked: true }]);
  });
});

describe('mirrorSheet', () => {
  it("takes the edge of an outline of one's own along, so that what lay inside it stays inside", () => {
    const own = { ...ownFrom(DEFAULT_OUTLINES.panelVan), edge: [at(0, 0), at(4.4, 0), at(4.4, 1), at(0, 1.6)] };
    const drawn = changeSheet(sampleVan(), 'sheet', { outline: own });
    const after = mirrorSheet(drawn, 'sheet');
    const [before, turned] = [drawn, after].map((plan) => plan.sheets[0]?.outline);
    expect(turned).toEqual({ ...own, edge: [at(0, 1.8), at(4.4, 1.8), at(4.4, 0.8), at(0, 0.2)] });
    const inside = (plan: Plan, outline: Outline | undefined) =>
      plan.fittings.filter((one) => outline?.kind === 'own' && polygonHolds(outline.edge, one.at)).map(({ id }) => id);
    expect(inside(after, turned)).toEqual(inside(drawn, before));
    expect(inside(after, turned).length).toBeGreaterThan(4);
    expect(mirrorSheet(after, 'sheet')).toEqual(drawn);
  });

  it('changes sides: y becomes width - y, x stays', () => {
    const after = mirrorSheet(sampleVan(), 'sheet');
    expect(after.sheets[0]?.mirrored).toBe(true);
    expect(fittingById(after, 'battery')?.at).toEqual(at(0.5, 0.4));
    expect(runById(after, 'long')?.bends).toEqual([at(1, 0.1), at(3, 0.1)]);
  });

  it('twice is the same plan, byte for byte', () => {
    const plan = sampleVan();
    expect(mirrorSheet(mirrorSheet(plan, 'sheet'), 'sheet')).toEqual(plan);
  });

  it('knows no other sheet, and carries nothing out of bounds', () => {
    const plan = sampleVan();
    expect(mirrorSheet(plan, 'none')).toBe(plan);
    const far = moveFitting(plan, 'block', at(1, -100));
    expect(mirrorSheet(far, 'sheet')).toBe(far);
  });
});
