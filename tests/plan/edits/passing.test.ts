import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import { polylineLength } from '../../../src/geom/polyline.ts';
import { fittingById, runById, runsAt } from '../../../src/plan/byId.ts';
import { changeFitting } from '../../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../../src/plan/edits/changeRun.ts';
import { passFitting, runsBeyond } from '../../../src/plan/edits/passFitting.ts';
import { slideFitting } from '../../../src/plan/edits/slideFitting.ts';
import { openPlan } from '../../../src/plan/open.ts';
import { runPoints } from '../../../src/plan/runs.ts';
import { savePlan } from '../../../src/plan/save.ts';
import type { FittingKind, Plan, Point, Run } from '../../../src/plan/schema.ts';
import { at, emptyVan, lay, place } from '../support/samplePlan.ts';

/** Many plans; a busy machine takes longer than a single test may. */
const PROPERTY_TIMEOUT_MS = 60_000;

/** Battery (0, 1), fuse (1, 1), pass-through (2, 1), second fuse (3, 1), block (4, 1), in one line; runs a, b, c, d. */
function line(changes: Partial<Record<'a' | 'b' | 'c' | 'd', Partial<Run>>> = {}): Plan {
  let plan = place(emptyVan(), 'battery', 'battery', at(0, 1));
  plan = place(place(plan, 'fuse', 'fuse', at(1, 1)), 'passThrough', 'wall', at(2, 1));
  plan = place(place(plan, 'fuse', 'second', at(3, 1)), 'block', 'block', at(4, 1));
  plan = lay(plan, 'a', 'battery.positive', 'fuse.in', changes.a);
  plan = lay(plan, 'b', 'fuse.out', 'wall.through', changes.b);
  plan = lay(plan, 'c', 'wall.through', 'second.in', changes.c);
  return lay(plan, 'd', 'second.out', 'block.bus', changes.d);
}

/** Terminals in the order in which a walk along the cable from the battery comes by them. */
function way(plan: Plan, from = 'battery'): string[] {
  const passed: string[] = [];
  const gone = new Set<string>();
  let here = from;
  for (;;) {
    const next = runsAt(plan, here).find(({ id }) => !gone.has(id));
    if (next === undefined) return passed;
    gone.add(next.id);
    const [near, far] = next.from.fittingId === here ? [next.from, next.to] : [next.to, next.from];
    passed.push(`${near.fittingId}.${near.terminal}`, `${far.fittingId}.${far.terminal}`);
    here = far.fittingId;
  }
}

const IN_ORDER = ['battery.positive', 'fuse.in', 'fuse.out', 'wall.through', 'wall.through', 'second.in'];
const PAST_WALL = ['battery.positive', 'wall.through', 'wall.through', 'fuse.in', 'fuse.out', 'second.in'];

const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);
const lineM = (plan: Plan): number => sum(plan.runs.map((run) => polylineLength(runPoints(plan, run))));
const tapedM = (plan: Plan): number => sum(plan.runs.map((run) => run.tapedM ?? 0));
const riseM = (plan: Plan): number => sum(plan.runs.map((run) => run.riseM));

/** A run as it was drawn, drawn the other way. */
const turned = (plan: Plan, id: string): Plan => ({
  ...plan,
  runs: plan.runs.map((run) =>
    run.id === id ? { ...run, from: run.to, to: run.from, bends: run.bends.toReversed() } : run,
  ),
});

describe('passFitting', () => {
  it('swaps a fuse with the pass-through that it passes', () => {
    const before = line();
    const plan = passFitting(before, 'fuse', 'c', at(2.5, 1.2), 'rest');
    expect(way(before)).toEqual([...IN_ORDER, 'second.out', 'block.bus']);
    expect(way(plan)).toEqual([...PAST_WALL, 'second.out', 'block.bus']);
    expect(fittingById(plan, 'fuse')?.at).toEqual(at(2.5, 1));
    expect(fittingById(plan, 'wall')).toBe(fittingById(before, 'wall'));
  });

  it('passes two at once', () => {
    const plan = passFitting(line(), 'fuse', 'd', at(3.4, 1), 'rest');
    expect(way(plan)).toEqual([
      ...['battery.positive', 'wall.through', 'wall.through', 'second.in'],
      ...['second.out', 'fuse.in', 'fuse.out', 'block.bus'],
    ]);
  });

  it('passes towards the source too', () => {
    const plan = passFitting(line(), 'second', 'a', at(0.4, 1), 'rest');
    expect(way(plan)).toEqual([
      ...['battery.positive', 'second.in', 'second.out', 'fuse.in'],
      ...['fuse.out', 'wall.through', 'wall.through', 'block.bus'],
    ]);
  });

  it('keeps what the fitting is, and its place in the list', () => {
    const before = changeFitting(line(), 'fuse', { link: { ratingA: 150, family: 'iso8820-5-SF51' } });
    const plan = passFitting(before, 'fuse', 'c', at(2.5, 1), 'rest');
    expect(fittingById(plan, 'fuse')).toEqual({ ...fittingById(before, 'fuse'), at: at(2.5, 1) });
    expect(plan.fittings.map(({ id }) => id)).toEqual(['battery', 'fuse', 'wall', 'second', 'block']);
    expect(plan.runs.map(({ id }) => id)).toEqual(['a', 'c', 'rest', 'd']);
  });

  it('names the runs as deleting and dropping do', () => {
    const plan = passFitting(line(), 'fuse', 'c', at(2.5, 1), 'rest');
    expect(plan.runs.map(({ name }) => name)).toEqual(['Name of a', 'Name of c', 'Name of c', 'Name of d']);
  });

  it.each([
    ['the run it goes into', ['c']],
    ['the run it comes from', ['a']],
    ['all of them', ['a', 'b', 'c', 'd']],
  ])('keeps what was towards the source there, though %s be drawn against it', (_, ids) => {
    const before = ids.reduce(turned, line({ c: { bends: [at(2.3, 1), at(2.3, 1.4), at(3, 1.4)] } }));
    const plan = passFitting(before, 'fuse', 'c', at(2.3, 1.2), 'rest');
    expect(way(plan)).toEqual([...PAST_WALL, 'second.out', 'block.bus']);
    expect(lineM(plan)).toBeCloseTo(lineM(before), 9);
    const bends = (id: string) => runById(plan, id)?.bends;
    const parts = [[at(2.3, 1)], [at(2.3, 1.4), at(3, 1.4)]];
    expect([bends('c'), bends('rest')]).toEqual(
      ids.includes('c') ? parts.map((part) => part.toReversed()).toReversed() : parts,
    );
  });

  it('a fuse that is turned round stays so, and a reducer keeps its wide side', () => {
    const reversed = changed(line(), { a: 'fuse.out', b: 'fuse.in' });
    expect(way(passFitting(reversed, 'fuse', 'c', at(2.5, 1), 'rest')).slice(3, 5)).toEqual(['fuse.out', 'fuse.in']);
    const reduced = withReducer();
    expect(way(passFitting(reduced, 'reducer', 'c', at(2.5, 1), 'rest')).slice(3, 5)).toEqual([
      'reducer.wide',
      'reducer.narrow',
    ]);
  });

  it('leaves a bend where the fitting stood on a corner', () => {
    const corner = slideFitting(line({ a: { bends: [at(0, 1.5), at(1, 1.5)] } }), 'fuse', at(1, 1.5));
    const plan = passFitting(corner, 'fuse', 'c', at(2.5, 1), 'rest');
    expect(runById(plan, 'a')?.bends).toEqual([at(0, 1.5), at(1, 1.5), at(1, 1)]);
  });

  it('keeps what is drawn and what is taped: 1.1 m and 1.2 m are one; a quarter and three quarters of 1.2 m', () => {
    const before = line({ a: { tapedM: 1.1, riseM: 0.1 }, b: { tapedM: 1.2 }, c: { tapedM: 1.2, riseM: 0.4 } });
    const plan = passFitting(before, 'fuse', 'c', at(2.25, 1), 'rest');
    expect(plan.runs.map((run) => [run.id, run.tapedM, run.riseM])).toEqual([
      ['a', 2.3, 0.1],
      ['c', 0.3, 0.1],
      ['rest', 0.9, 0.3],
      ['d', null, 0],
    ]);
    expect(lineM(plan)).toBeCloseTo(4, 9);
  });

  it('leaves each side its conductor: the cable that it comes from goes on where it stood, as under a fitting that slides', () => {
    const of = (size: string) => ({ ...(runById(line(), 'a')?.conductor as Run['conductor']), size });
    const [wide, narrow] = [of('mm2:50'), of('mm2:25')];
    const sizes = (plan: Plan) => plan.runs.map(({ id, conductor }) => `${id} ${conductor.size}`);
    const towardsLoad = line({ a: { conductor: wide }, b: { conductor: narrow }, c: { conductor: narrow } });
    expect(sizes(passFitting(towardsLoad, 'fuse', 'c', at(2.5, 1), 'rest'))).toEqual([
      ...['a mm2:50', 'c mm2:25', 'rest mm2:25', 'd auto'],
    ]);
    const towardsSource = line({ b: { conductor: wide }, c: { conductor: wide }, d: { conductor: narrow } });
    expect(sizes(passFitting(towardsSource, 'second', 'b', at(1.5, 1), 'rest'))).toEqual([
      ...['a auto', 'b mm2:50', 'rest mm2:50', 'c mm2:25'],
    ]);
  });

  it('a move back along its own cable is a slide of the plan as it was: the same bytes', () => {
    const before = line({ b: { tapedM: 1.2 } });
    const draft = passFitting(before, 'fuse', 'c', at(2.5, 1), 'rest');
    expect(savePlan(draft)).not.toBe(savePlan(before));
    expect(savePlan(slideFitting(before, 'fuse', at(1, 1)))).toBe(savePlan(before));
  });

  it('passed back, it stands where it stood, in the same order and with the same lengths', () => {
    const before = line({ a: { tapedM: 1 }, b: { tapedM: 1 }, c: { tapedM: 1 } });
    const there = passFitting(before, 'fuse', 'c', at(2.5, 1), 'rest');
    const back = passFitting(there, 'fuse', 'a', at(1, 1), 'again');
    expect(way(back)).toEqual(way(before));
    expect(back.runs.map((run) => [run.from, run.to, run.tapedM])).toEqual(
      before.runs.map((run) => [run.from, run.to, run.tapedM]),
    );
    expect(back.fittings).toEqual(before.fittings);
  });
});

/** The line with other terminals at the far end of its runs a and at the near end of b. */
function changed(plan: Plan, { a, b }: { a: string; b: string }): Plan {
  const ref = (text: string) => ({ fittingId: text.split('.')[0] ?? '', terminal: text.split('.')[1] ?? '' });
  const runs = plan.runs.map((run) =>
    run.id === 'a' ? { ...run, to: ref(a) } : run.id === 'b' ? { ...run, from: ref(b) } : run,
  );
  return { ...plan, runs };
}

/** The line with a reducer for its first fuse. */
function withReducer(): Plan {
  const plan = place(line(), 'reducer', 'reducer', at(1, 1));
  const joined = changed(plan, { a: 'reducer.wide', b: 'reducer.narrow' });
  return { ...joined, fittings: joined.fittings.filter(({ id }) => id !== 'fuse') };
}

describe('the chain of cable', () => {
  const beyond = (plan: Plan, id = 'fuse') => runsBeyond(plan, id).map(({ run }) => run.id);

  it('goes on past every inline fitting with two runs, both ways, and ends at anything else', () => {
    expect(beyond(line())).toEqual(['c', 'd']);
    expect(beyond(line(), 'wall')).toEqual(['a', 'd']);
    expect(beyond(line(), 'second')).toEqual(['b', 'a']);
    expect(beyond(line(), 'block')).toEqual([]);
    expect(beyond(line(), 'none')).toEqual([]);
  });

  it.each([
    ['a locked run', (plan: Plan) => changeRun(plan, 'd', { locked: true }), ['c']],
    ['a locked fitting', (plan: Plan) => changeFitting(plan, 'wall', { locked: true }), []],
    ['a run of its own that is locked', (plan: Plan) => changeRun(plan, 'a', { locked: true }), []],
    ['a lock on itself', (plan: Plan) => changeFitting(plan, 'fuse', { locked: true }), []],
    ['a third run', (plan: Plan) => lay(plan, 'tap', 'second.out', 'block.out1'), ['c']],
    ['a run of another kind', (plan: Plan) => changeRun(plan, 'c', { kind: 'remote' }), []],
    ['a fitting with no cable beyond', (plan: Plan) => without(plan, 'd'), ['c']],
  ])('ends at %s', (_, edit, ids) => {
    const plan = edit(line());
    expect(beyond(plan)).toEqual(ids);
    for (const id of ['c', 'd'].filter((other) => !ids.includes(other))) {
      expect(passFitting(plan, 'fuse', id, at(2.5, 1), 'rest')).toBe(plan);
    }
  });

  it('ends where it comes round to the fitting again', () => {
    let plan = place(place(emptyVan(), 'fuse', 'fuse', at(1, 1)), 'passThrough', 'wall', at(2, 1));
    plan = lay(lay(plan, 'a', 'fuse.in', 'wall.through'), 'b', 'fuse.out', 'wall.through', { bends: [at(2, 1.4)] });
    expect(plan.runs).toHaveLength(2);
    expect(beyond(plan)).toEqual([]);
    plan = place(emptyVan(), 'fuse', 'fuse', at(1, 1));
    plan = place(place(plan, 'fuse', 'one', at(2, 1)), 'fuse', 'two', at(2, 1.4));
    plan = lay(lay(plan, 'a', 'fuse.in', 'one.in'), 'b', 'fuse.out', 'two.in');
    plan = lay(plan, 'c', 'one.out', 'two.out');
    expect(beyond(plan)).toEqual(['c']);
    expect(openPlan(savePlan(passFitting(plan, 'fuse', 'c', at(2, 1.2), 'rest')))).toMatchObject({ ok: true });
  });

  it('holds no cable that only crosses it, and refuses an id in use', () => {
    let plan = place(place(line(), 'ground', 'bolt', at(2.5, 1.5)), 'amplifier', 'amp', at(2.5, 0.5));
    plan = lay(plan, 'crossing', 'amp.ground', 'bolt.body', { kind: 'ground' });
    expect(beyond(plan)).toEqual(['c', 'd']);
    expect(passFitting(plan, 'fuse', 'crossing', at(2.5, 1), 'rest')).toBe(plan);
    expect(passFitting(plan, 'fuse', 'c', at(2.5, 1), 'd')).toBe(plan);
    expect(passFitting(plan, 'fuse', 'b', at(1.5, 1), 'rest')).toBe(plan);
  });
});

const without = (plan: Plan, id: string): Plan => ({ ...plan, runs: plan.runs.filter((run) => run.id !== id) });

describe('any chain', () => {
  const KINDS: readonly FittingKind[] = ['fuse', 'passThrough', 'breaker', 'reducer', 'relay', 'switch'];
  const tenth = fc.integer({ min: 0, max: 30_000 }).map((steps) => steps / 10_000);
  const point = fc.record({ xM: tenth, yM: tenth });
  const link = fc.record({
    kind: fc.constantFrom(...KINDS),
    at: point,
    bends: fc.array(point, { maxLength: 4 }),
    isTurned: fc.boolean(),
    tapedM: fc.integer({ min: 100, max: 100_000 }).map((steps) => steps / 10_000),
    riseM: fc.integer({ min: 0, max: 20_000 }).map((steps) => steps / 10_000),
  });
  type Link = typeof link extends fc.Arbitrary<infer T> ? T : never;
  const TERMINALS: Partial<Record<FittingKind, [string, string]>> = {
    passThrough: ['through', 'through'],
    reducer: ['wide', 'narrow'],
  };

  /** Battery, those fittings, an amplifier; the last of the links is the run to the amplifier. */
  function chain(links: readonly Link[], isTaped: boolean): Plan {
    let plan = place(place(emptyVan(), 'battery', 'battery', at(0.1, 0.1)), 'amplifier', 'amp', at(2.9, 1.7));
    let from = 'battery.positive';
    for (const [index, { kind, ...one }] of links.entries()) {
      const isLast = index === links.length - 1;
      const id = `f${index}`;
      const [into, outOf] = TERMINALS[kind] ?? ['in', 'out'];
      if (!isLast) plan = place(plan, kind, id, one.at);
      const to = isLast ? 'amp.supply' : `${id}.${into}`;
      const [start, end] = one.isTurned ? [to, from] : [from, to];
      const change = { bends: one.bends, riseM: one.riseM, tapedM: isTaped ? one.tapedM : null };
      plan = lay(plan, `r${index}`, start, end, change);
      from = `${id}.${outOf}`;
    }
    return plan;
  }

  it(
    'keeps its fittings, their sides, its way and its lengths, and opens again',
    () => {
      const links = fc.array(link, { minLength: 3, maxLength: 6 });
      let passed = 0;
      fc.assert(
        fc.property(links, fc.boolean(), fc.nat(), fc.nat(), point, (all, isTaped, which, onto, where) => {
          const plan = chain(all, isTaped);
          const id = `f${which % (all.length - 1)}`;
          const beyond = runsBeyond(plan, id);
          // all runs but its own two
          expect(beyond).toHaveLength(all.length - 2);
          const target = beyond[onto % beyond.length];
          if (target === undefined) throw new Error('a chain of three runs has one beyond');
          const after = passFitting(plan, id, target.run.id, where, 'rest');
          passed += after === plan ? 0 : 1;

          expect(openPlan(savePlan(after))).toEqual({ ok: true, plan: after, migratedFrom: null });
          expect(after.fittings.map((fitting) => ({ ...fitting, at: null }))).toEqual(
            plan.fittings.map((fitting) => ({ ...fitting, at: null })),
          );
          expect(after.fittings.filter((fitting, index) => fitting !== plan.fittings[index])).toHaveLength(1);
          const [before, now] = [way(plan), way(after)];
          expect(now.toSorted()).toEqual(before.toSorted());
          const others = (walk: string[]) => walk.filter((terminal) => !terminal.startsWith(`${id}.`));
          expect(others(now)).toEqual(others(before));
          const own = (walk: string[]) => walk.filter((terminal) => terminal.startsWith(`${id}.`));
          expect(own(now)).toEqual(own(before));
          // a fitting within 1 mm of the straight line leaves no bend behind, and is set on the cable to 0.1 mm
          expect(Math.abs(lineM(after) - lineM(plan))).toBeLessThan(0.0025);
          expect(Math.abs(riseM(after) - riseM(plan))).toBeLessThan(1e-6);
          // to 0.1 mm, of which floats fall short by a little
          expect(Math.abs(tapedM(after) - tapedM(plan))).toBeLessThan(1e-6);
        }),
        { numRuns: 150, seed: 20261127 },
      );
      expect(passed).toBe(150);
    },
    PROPERTY_TIMEOUT_MS,
  );
});

describe('the example', () => {
  const example = (): Plan => {
    const opened = openPlan(readFileSync('public/demo.plan.json', 'utf8'));
    if (!opened.ok) throw new Error('the example does not open');
    return opened.plan;
  };
  const unprotectedM = (plan: Plan): number => Math.max(...assess(plan).sources.map((source) => source.unprotectedM));
  const FUSE = '2DJ2K54x';
  const PAST_THE_WALL = 'pJL2pKYi';

  it('has its unprotected length along the drawn cable, past the pass-through', () => {
    const plan = example();
    // battery (0.55, 1.40), bend (0.30, 1.30), fuse (0.30, 0.75), bend (0.50, 0.50), pass-through (1, 0.50); 10 cm of rise each
    const toWallM = Math.hypot(0.25, 0.1) + 0.55 + Math.hypot(0.2, 0.25) + 0.5;
    // on to (1.20, 0.20), then along y = 0.20 to (2.70, 0.20) and the block at (2.95, 0.40): 5 % of slack, 30 cm of rise
    const ontoM = Math.hypot(0.2, 0.3);
    const runM = ontoM + 1.5 + Math.hypot(0.25, 0.2);
    const expectedM = (where: Point): number => {
      const farM = ontoM + where.xM - 1.2;
      return (toWallM + farM) * 1.05 + 0.2 + (0.3 * farM) / runM;
    };
    for (const where of [at(1.5, 0.2), at(2.2, 0.2)]) {
      const after = passFitting(plan, FUSE, PAST_THE_WALL, where, 'rest');
      expect(fittingById(after, FUSE)?.at).toEqual(where);
      // the rise is shared to 0.1 mm
      expect(unprotectedM(after)).toBeCloseTo(expectedM(where), 3);
    }
  });
});
