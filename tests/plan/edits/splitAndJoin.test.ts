import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { removeFitting } from '../../../src/plan/edits/removeFitting.ts';
import { splitRun } from '../../../src/plan/edits/splitRun.ts';
import { newFitting } from '../../../src/plan/newFitting.ts';
import type { Plan, Point, Run } from '../../../src/plan/schema.ts';
import { at, emptyVan, lay, place } from '../support/samplePlan.ts';

/** Many texts or plans each; a busy machine takes longer than a single test may. */
const PROPERTY_TIMEOUT_MS = 60_000;

/** Battery at (0.5, 1), amplifier at (3.5, 1), one run from the one to the other. */
function oneRun(change: Partial<Run> = {}): Plan {
  const plan = place(place(emptyVan(), 'battery', 'battery', at(0.5, 1)), 'amplifier', 'amp', at(3.5, 1));
  return lay(plan, 'feed', 'battery.positive', 'amp.supply', change);
}

const fuse = (where: Point) => newFitting('fuse', { id: 'fuse', name: 'Main fuse', sheetId: 'sheet', at: where });
const split = (plan: Plan, where: Point) => splitRun(plan, 'feed', where, fuse(where), 'rest');

describe('splitRun', () => {
  it('makes two runs of one: in towards from, out towards to', () => {
    const plan = split(oneRun(), at(1.5, 1));
    expect(plan.fittings.map(({ id }) => id)).toEqual(['battery', 'amp', 'fuse']);
    expect(plan.runs).toMatchObject([
      {
        id: 'feed',
        name: 'Name of feed',
        from: { fittingId: 'battery', terminal: 'positive' },
        to: { fittingId: 'fuse', terminal: 'in' },
      },
      {
        id: 'rest',
        name: 'Name of feed',
        from: { fittingId: 'fuse', terminal: 'out' },
        to: { fittingId: 'amp', terminal: 'supply' },
      },
    ]);
  });

  it('joins both parts to the one terminal of a pass-through', () => {
    const wall = newFitting('passThrough', { id: 'wall', name: '', sheetId: 'sheet', at: at(1, 1) });
    const plan = splitRun(oneRun(), 'feed', at(1, 1), wall, 'rest');
    expect(plan.runs[0]?.to).toEqual({ fittingId: 'wall', terminal: 'through' });
    expect(plan.runs[1]?.from).toEqual({ fittingId: 'wall', terminal: 'through' });
  });

  it('sets the fitting on the cable, not beside it, to 0.1 mm', () => {
    expect(split(oneRun(), at(1.23456, 1.4)).fittings[2]?.at).toEqual(at(1.2346, 1));
  });

  it('divides the bends where the fitting stands', () => {
    const plan = split(oneRun({ bends: [at(0.5, 1.5), at(2, 1.5), at(3, 1.5)] }), at(1, 1.6));
    expect(plan.runs[0]?.bends).toEqual([at(0.5, 1.5)]);
    expect(plan.runs[1]?.bends).toEqual([at(2, 1.5), at(3, 1.5)]);
  });

  it('shares a taped length and the rise as drawn: 1 m of 3 m is a third', () => {
    const plan = split(oneRun({ tapedM: 3.9, riseM: 0.6 }), at(1.5, 1));
    expect(plan.runs.map(({ tapedM }) => tapedM)).toEqual([1.3, 2.6]);
    expect(plan.runs.map(({ riseM }) => riseM)).toEqual([0.2, 0.4]);
  });

  it('copies everything else', () => {
    const change: Partial<Run> = {
      slackPercent: 7,
      zone: 'wing',
      sheathed: true,
      nearerImpossible: 'The wing is in the way',
      inLoom: true,
      underCarpet: true,
      conductor: {
        size: 'sae:2',
        material: { value: 'cca10', origin: 'told' },
        insulationC: { value: 60, origin: 'measured' },
        strands: null,
        copperThrough: false,
      },
    };
    const plan = split(oneRun(change), at(1.5, 1));
    expect(plan.runs[0]).toMatchObject(change);
    expect(plan.runs[1]).toMatchObject(change);
  });

  it('neither part of a taped length vanishes, even at the very end', () => {
    const plan = split(oneRun({ tapedM: 3 }), at(0.5, 1));
    expect(plan.runs.map(({ tapedM }) => tapedM)).toEqual([0.001, 2.999]);
  });

  it.each([
    ['an unknown run', (plan: Plan) => splitRun(plan, 'none', at(1, 1), fuse(at(1, 1)), 'rest')],
    [
      'an id in use for the fitting',
      (plan: Plan) => splitRun(plan, 'feed', at(1, 1), { ...fuse(at(1, 1)), id: 'amp' }, 'rest'),
    ],
    ['an id in use for the run', (plan: Plan) => splitRun(plan, 'feed', at(1, 1), fuse(at(1, 1)), 'feed')],
    ['one id for both', (plan: Plan) => splitRun(plan, 'feed', at(1, 1), fuse(at(1, 1)), 'fuse')],
    [
      'a kind that does not sit in a cable',
      (plan: Plan) =>
        splitRun(
          plan,
          'feed',
          at(1, 1),
          newFitting('ground', { id: 'g', name: '', sheetId: 'sheet', at: at(1, 1) }),
          'rest',
        ),
    ],
  ])('gives back the same plan for %s', (_, edit) => {
    const plan = oneRun();
    expect(edit(plan)).toBe(plan);
  });
});

describe('removeFitting of a fuse or pass-through joins its runs', () => {
  it('gives back the plan that was split', () => {
    const plan = oneRun({ bends: [at(0.5, 1.5), at(3, 1.5)], tapedM: 4.2, riseM: 0.35, slackPercent: 5 });
    expect(removeFitting(split(plan, at(1.7, 1.5)), 'fuse')).toEqual(plan);
  });

  it('gives it back from a bend, from the start and from the end', () => {
    const plan = oneRun({ bends: [at(0.5, 1.5), at(3, 1.5)] });
    for (const where of [at(3, 1.5), at(0.5, 1.5), at(0.5, 1), at(3.5, 1)]) {
      expect(removeFitting(split(plan, where), 'fuse')).toEqual(plan);
    }
  });

  it(
    'gives back any run, wherever it was split',
    () => {
      const tenth = fc.integer({ min: 0, max: 40_000 }).map((steps) => steps / 10_000);
      const point = fc.record({ xM: tenth, yM: tenth });
      const change = fc.record({
        bends: fc.uniqueArray(point, { maxLength: 6, selector: ({ xM, yM }) => `${xM} ${yM}` }),
        tapedM: fc.option(fc.integer({ min: 100, max: 100_000 }).map((steps) => steps / 10_000)),
        riseM: fc.integer({ min: 0, max: 20_000 }).map((steps) => steps / 10_000),
      });
      fc.assert(
        fc.property(change, point, (properties, where) => {
          const plan = oneRun(properties);
          const back = removeFitting(split(plan, where), 'fuse');
          const [before, after] = [plan.runs[0], back.runs[0]];
          // a bend on the straight line through its neighbours leaves no trace once a fitting stood on it
          const bends = before?.bends.filter((bend) =>
            after?.bends.some(({ xM, yM }) => xM === bend.xM && yM === bend.yM),
          );
          expect(after).toEqual({ ...before, bends });
          expect((before?.bends.length ?? 0) - (bends?.length ?? 0)).toBeLessThanOrEqual(1);
          expect(back.fittings).toEqual(plan.fittings);
        }),
        { numRuns: 150, seed: 20260711 },
      );
    },
    PROPERTY_TIMEOUT_MS,
  );

  it('leaves a bend where the fitting stood off the straight line', () => {
    let plan = place(oneRun(), 'fuse', 'fuse', at(2, 1.3));
    plan = { ...plan, runs: [] };
    plan = lay(plan, 'a', 'battery.positive', 'fuse.in', { bends: [at(1, 1.2)] });
    plan = lay(plan, 'b', 'fuse.out', 'amp.supply', { bends: [at(3, 1.2)] });
    expect(removeFitting(plan, 'fuse').runs[0]?.bends).toEqual([at(1, 1.2), at(2, 1.3), at(3, 1.2)]);
  });

  it('leaves none within 1 mm of it', () => {
    let plan = place({ ...oneRun(), runs: [] }, 'fuse', 'fuse', at(2, 1.0009));
    plan = lay(lay(plan, 'a', 'battery.positive', 'fuse.in'), 'b', 'fuse.out', 'amp.supply');
    expect(removeFitting(plan, 'fuse').runs[0]?.bends).toEqual([]);
  });

  it.each([
    ['both drawn with the current', ['battery.positive', 'fuse.in'], ['fuse.out', 'amp.supply'], 'battery', 'amp'],
    ['the first against it', ['fuse.in', 'battery.positive'], ['fuse.out', 'amp.supply'], 'amp', 'battery'],
    ['the second against it', ['battery.positive', 'fuse.in'], ['amp.supply', 'fuse.out'], 'battery', 'amp'],
    ['both against it', ['fuse.in', 'battery.positive'], ['amp.supply', 'fuse.out'], 'amp', 'battery'],
  ] as const)('keeps the way of the cable: %s', (_, first, second, from, to) => {
    // from the battery the cable passes a bend at x = 1, the fuse at x = 2 and a bend at x = 3
    let plan = place({ ...oneRun(), runs: [] }, 'fuse', 'fuse', at(2, 1.5));
    plan = lay(plan, 'a', first[0], first[1], { bends: [at(1, 1.4)], tapedM: 1.25, riseM: 0.1 });
    plan = lay(plan, 'b', second[0], second[1], { bends: [at(3, 1.4)], tapedM: 2.5, riseM: 0.2 });
    const way = [at(1, 1.4), at(2, 1.5), at(3, 1.4)];
    expect(removeFitting(plan, 'fuse').runs).toMatchObject([
      {
        id: 'a',
        from: { fittingId: from },
        to: { fittingId: to },
        bends: from === 'battery' ? way : way.toReversed(),
        tapedM: 3.75,
        riseM: 0.3,
      },
    ]);
  });

  it('is drawn, not taped, when only one of the two was taped', () => {
    const plan = split(oneRun({ tapedM: 3 }), at(1.5, 1));
    const half = { ...plan, runs: plan.runs.map((run) => (run.id === 'rest' ? { ...run, tapedM: null } : run)) };
    expect(removeFitting(half, 'fuse').runs[0]?.tapedM).toBeNull();
  });

  it('never comes out calmer: greater slack, sheathed only when both were', () => {
    const plan = split(oneRun({ sheathed: true, slackPercent: 4 }), at(1.5, 1));
    const mixed = {
      ...plan,
      runs: plan.runs.map((run) => (run.id === 'rest' ? { ...run, sheathed: false, slackPercent: 9 } : run)),
    };
    expect(removeFitting(mixed, 'fuse').runs).toMatchObject([{ id: 'feed', sheathed: false, slackPercent: 9 }]);
  });

  it('takes the runs with it when there is one, when there are three, and when they cannot be one', () => {
    const loose = place({ ...oneRun(), runs: [] }, 'fuse', 'fuse', at(2, 1));
    const one = lay(loose, 'a', 'battery.positive', 'fuse.in');
    expect(removeFitting(one, 'fuse').runs).toEqual([]);

    const three = lay(lay(one, 'b', 'fuse.out', 'amp.supply'), 'c', 'fuse.out', 'amp.ground');
    expect(three.runs).toHaveLength(3);
    expect(removeFitting(three, 'fuse').runs).toEqual([]);

    const loop = lay(one, 'b', 'fuse.out', 'battery.positive');
    expect(loop.runs).toHaveLength(2);
    expect(removeFitting(loop, 'fuse').runs).toEqual([]);

    const bypass = lay(one, 'b', 'fuse.in', 'fuse.out');
    expect(bypass.runs).toHaveLength(2);
    expect(removeFitting(bypass, 'fuse').runs).toEqual([]);

    const unlike = lay(one, 'b', 'fuse.out', 'amp.ground', { kind: 'ground' });
    expect(unlike.runs).toHaveLength(2);
    expect(removeFitting(unlike, 'fuse').runs).toEqual([]);
  });

  it('takes every run of any other fitting with it, and no other run', () => {
    const plan = lay(place(oneRun(), 'ground', 'bolt', at(3, 1.6)), 'g', 'amp.ground', 'bolt.body', { kind: 'ground' });
    const after = removeFitting(plan, 'bolt');
    expect(after.runs.map(({ id }) => id)).toEqual(['feed']);
    expect(after.fittings.map(({ id }) => id)).toEqual(['battery', 'amp']);
  });
});
