import { beforeEach, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { layProposal, undo } from '../../src/desk/edit.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import type { Proposal } from '../../src/plan/propose/proposal.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { feedPlan, withFittings, withRun } from '../drawing/support/plans.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { drag, type Pointer, send, tap } from './support/finger.ts';

let bench: SketchBench;

beforeEach(() => {
  bench = createSketchBench(feedPlan());
});

const at = (plan: Plan, id: string) => plan.fittings.find((fitting) => fitting.id === id)?.at;
const run = (id: string) => bench.desk.getState().plan.runs.find((other) => other.id === id);

describe('a tap', () => {
  it('selects the fitting, the bend, the run under it, and nothing on empty sheet', () => {
    const selected = (xM: number, yM: number) => {
      tap(bench.element.whole, ...bench.px('whole', xM, yM));
      return bench.desk.getState().selection;
    };
    expect(selected(0.2, 1)).toEqual({ kind: 'fitting', id: 'battery' });
    expect(selected(2, 0.4)).toEqual({ kind: 'bend', id: 'run3', index: 0 });
    expect(selected(1.5, 0.7)).toEqual({ kind: 'run', id: 'run3' });
    expect(selected(2, 2)).toBeNull();
    expect(bench.state()).toBe('move.idle');
    expect(bench.depth()).toBe(0);
  });
});

describe('a drag on a fitting', () => {
  it('shows the change once a frame and keeps it only when the finger lifts: one step, undone to the same bytes', () => {
    const before = bench.bytes();
    const [x, y] = bench.px('bay', 0.2, 1);
    send(bench.element.bay, 'pointerdown', x, y);
    expect(bench.state()).toBe('move.pressed');
    send(bench.element.bay, 'pointermove', x + 20, y);
    send(bench.element.bay, 'pointermove', x + 20, y + 40);
    expect(bench.state()).toBe('move.draggingFitting');
    expect(bench.desk.getState().draft).toBeNull();
    bench.frame();
    expect(at(bench.desk.getState().draft ?? bench.desk.getState().plan, 'battery')).toEqual({ xM: 0.3, yM: 1.2 });
    expect(bench.bytes()).toBe(before);
    expect(bench.depth()).toBe(0);
    send(bench.element.bay, 'pointerup', x + 20, y + 40);
    expect(bench.state()).toBe('move.idle');
    expect(at(bench.desk.getState().plan, 'battery')).toEqual({ xM: 0.3, yM: 1.2 });
    expect(bench.depth()).toBe(1);
    undo(bench.desk);
    expect(bench.bytes()).toBe(before);
  });

  it('keeps the distance between finger and fitting', () => {
    const [x, y] = bench.px('bay', 0.2, 1);
    drag(
      bench.element.bay,
      [
        [x + 12, y - 4],
        [x + 60, y],
        [x + 52, y + 56],
      ],
      { alt: true },
    );
    expect(at(bench.desk.getState().plan, 'battery')).toEqual({ xM: 0.4, yM: 1.3 });
  });

  it('lands on the grid of the zoom, unless Alt is held or snapping is off', () => {
    const [x, y] = bench.px('whole', 3, 1);
    drag(bench.element.whole, [
      [x, y],
      [x + 20, y],
      [x + 33, y + 47],
    ]);
    expect(at(bench.desk.getState().plan, 'amp')).toEqual({ xM: 3.3, yM: 1.5 });
    drag(
      bench.element.whole,
      [
        [x + 30, y + 50],
        [x + 50, y + 50],
        [x + 33, y + 56],
      ],
      { alt: true },
    );
    expect(at(bench.desk.getState().plan, 'amp')).toEqual({ xM: 3.33, yM: 1.56 });
    bench.desk.setState({ snap: false });
    drag(bench.element.whole, [
      [x + 33, y + 56],
      [x + 50, y + 50],
      [x + 34, y + 58],
    ]);
    expect(at(bench.desk.getState().plan, 'amp')).toEqual({ xM: 3.34, yM: 1.58 });
  });

  it('slides a fuse along its cable past a bend, which changes to the other run', () => {
    const plan = changeRun(feedPlan(), 'run2', { bends: [{ xM: 0.5, yM: 0.6 }] });
    bench = createSketchBench(plan);
    const [x, y] = bench.px('bay', 0.5, 1);
    // the cable goes from (0.5, 1) up to (0.5, 0.6) and then on to the grommet at (1, 1)
    const up = bench.px('bay', 0.51, 0.55);
    drag(bench.element.bay, [[x, y], [x, y - 30], up]);
    const fuse = at(bench.desk.getState().plan, 'fuse');
    expect(fuse?.xM).toBeCloseTo(0.5, 2);
    expect(fuse?.yM).toBeCloseTo(0.6, 1);
    expect(run('run1')?.bends).toEqual([{ xM: 0.5, yM: 1 }]);
  });

  describe('past an end of its cable', () => {
    const shown = () => bench.desk.getState().draft ?? bench.desk.getState().plan;
    const joined = (plan: Plan) => plan.runs.map(({ from, to }) => `${from.fittingId} ${to.fittingId}`);
    const unprotectedM = () => Math.max(...assess(shown()).sources.map((source) => source.unprotectedM));
    /** Takes the fuse from where it stands; answers what moves it on, frame by frame. */
    const hold = (pointer: Pointer = {}) => {
      send(bench.element.bay, 'pointerdown', ...bench.px('bay', 0.5, 1), pointer);
      return (xM: number, yM: number) => {
        send(bench.element.bay, 'pointermove', ...bench.px('bay', xM, yM), pointer);
        bench.frame();
      };
    };
    const lift = (xM: number, yM: number) => send(bench.element.bay, 'pointerup', ...bench.px('bay', xM, yM));

    it('slides on along the cable beyond a pass-through: the two swap, one step, undone to the same bytes', () => {
      const before = bench.bytes();
      const moveTo = hold();
      const seen: number[] = [];
      // the cable beyond goes from (1, 1) to (2, 0.4): the nearest to the finger is (1.25, 0.85), then (1.5, 0.7)
      for (const [xM, yM] of [
        [0.8, 1],
        [1, 1],
        [1.28, 0.9],
        [1.53, 0.75],
      ] as const) {
        moveTo(xM, yM);
        seen.push(unprotectedM());
      }
      expect(bench.bytes()).toBe(before);
      lift(1.53, 0.75);
      expect(joined(bench.desk.getState().plan)).toEqual(['battery grommet', 'grommet fuse', 'fuse amp']);
      expect(at(bench.desk.getState().plan, 'fuse')).toEqual({ xM: 1.5, yM: 0.7 });
      expect(run('run1')?.bends).toEqual([]);
      expect(bench.desk.getState().plan.runs[2]?.bends).toEqual([{ xM: 2, yM: 0.4 }]);
      // as drawn from (0.2, 1): 0.6 m, 0.8 m, then 0.8 m and once or twice the root of 0.25^2 + 0.15^2
      const beyondM = Math.hypot(0.25, 0.15);
      const drawnM = [0.6, 0.8, 0.8 + beyondM, 0.8 + 2 * beyondM];
      expect(seen.map((lengthM) => lengthM.toFixed(3))).toEqual(drawnM.map((lengthM) => lengthM.toFixed(3)));
      expect(bench.depth()).toBe(1);
      undo(bench.desk);
      expect(bench.bytes()).toBe(before);
    });

    it('is as it was when it comes back home', () => {
      const before = bench.bytes();
      const moveTo = hold();
      moveTo(1.5, 0.7);
      expect(joined(shown())).toContain('grommet fuse');
      moveTo(0.5, 1);
      expect(savePlan(shown())).toBe(before);
      lift(0.5, 1);
      expect(bench.bytes()).toBe(before);
      expect(bench.depth()).toBe(0);
    });

    it('is held by its own cable while that is as near, and leaves both for good', () => {
      const moveTo = hold({ alt: true });
      // straight over the pass-through, and within its reach
      moveTo(1, 1);
      expect(joined(shown())).toEqual(['battery fuse', 'fuse grommet', 'grommet amp']);
      // at the outside of the corner, to which both come as near
      moveTo(1.02, 1.05);
      expect(joined(shown())).toEqual(['battery fuse', 'fuse grommet', 'grommet amp']);
      expect(at(shown(), 'fuse')).toEqual({ xM: 1, yM: 1 });
      moveTo(1.5, 1.6);
      expect(joined(shown())).toEqual(['battery fuse', 'fuse grommet', 'grommet amp']);
      expect(at(shown(), 'fuse')).toEqual({ xM: 1.5, yM: 1.6 });
    });

    it('is not caught by a lead that crosses, nor past what is locked', () => {
      const plan = withFittings(feedPlan(), [['bolt', 'ground', 1.5, 1.7]]);
      bench = createSketchBench(withRun(plan, 'return', 'amp.ground', 'bolt.body', [[1.5, 0.2]], 'ground'));
      const moveTo = hold({ alt: true });
      moveTo(1.5, 1.4);
      expect(at(shown(), 'fuse')).toEqual({ xM: 1.5, yM: 1.4 });
      expect(joined(shown()).slice(0, 3)).toEqual(['battery fuse', 'fuse grommet', 'grommet amp']);
      moveTo(1.48, 0.7);
      expect(joined(shown())).toEqual(['battery grommet', 'grommet fuse', 'fuse amp', 'amp bolt']);
      lift(1.48, 0.7);

      bench = createSketchBench(changeFitting(feedPlan(), 'grommet', { locked: true }));
      hold({ alt: true })(1.5, 0.7);
      expect(at(shown(), 'fuse')).toEqual({ xM: 1.5, yM: 0.7 });
      expect(joined(shown())).toEqual(['battery fuse', 'fuse grommet', 'grommet amp']);
    });

    it.each([
      ['a cable that is proposed', 'one of the plan', ['fuse', 'run1', 'run2'], false],
      ['a cable of the plan', 'one that is proposed', ['run3'], false],
      ['a cable that is proposed', 'more of that', ['fuse', 'run1', 'run2', 'run3'], true],
    ])('from %s into %s', (_from, _into, ghosts, slidesOn) => {
      const whole = feedPlan();
      const proposal: Proposal = [
        ...whole.fittings.map((fitting) => ({ kind: 'fitting', id: fitting.id, fitting, why: 'firstFuse' }) as const),
        ...whole.runs.map((one) => ({ kind: 'run', id: one.id, run: one, why: 'feeds' }) as const),
      ].filter(({ id }) => ghosts.includes(id));
      const isKept = ({ id }: { id: string }) => !ghosts.includes(id);
      bench = createSketchBench({
        ...whole,
        fittings: whole.fittings.filter(isKept),
        runs: whole.runs.filter(isKept),
      });
      layProposal(bench.desk, 'propose', proposal);
      const before = bench.bytes();
      hold({ alt: true })(1.5, 0.7);
      const order = slidesOn
        ? ['battery grommet', 'grommet fuse', 'fuse amp']
        : ['battery fuse', 'fuse grommet', 'grommet amp'];
      expect(joined(shown()).toSorted()).toEqual(order.toSorted());
      expect(at(shown(), 'fuse')).toEqual({ xM: 1.5, yM: 0.7 });
      lift(1.5, 0.7);
      // the plan has kept its own runs, and nothing of what was proposed
      expect(bench.desk.getState().plan.runs.map(({ id }) => id)).toEqual(
        whole.runs.filter(isKept).map(({ id }) => id),
      );
      if (isKept({ id: 'fuse' })) expect(bench.bytes()).not.toBe(before);
      else expect(bench.bytes()).toBe(before);
    });
  });

  it.each([
    // the bay shows 0 to 2 m both ways at 200 px/m, and a plate is seen whole 40 px from its edge
    ['to the right', [1000, 300], { xM: 1.8, yM: 1.5 }],
    ['below', [600, 900], { xM: 1, yM: 1.8 }],
    ['beyond a corner', [1000, -200], { xM: 1.8, yM: 0.2 }],
  ] as const)(
    'stops at the edge of the pane under a finger that has left it %s: one step, undone',
    (_where, lift, held) => {
      const before = bench.bytes();
      const [x, y] = bench.px('bay', 0.2, 1);
      drag(bench.element.bay, [[x, y], [x + 40, y], lift], { alt: true });
      expect(at(bench.desk.getState().plan, 'battery')).toEqual(held);
      expect(bench.depth()).toBe(1);
      undo(bench.desk);
      expect(bench.bytes()).toBe(before);
    },
  );

  it('goes on in the other pane as far from the finger as it was taken hold of', () => {
    const [x, y] = bench.px('whole', 3, 1);
    const [overX, overY] = bench.px('bay', 1, 1.5);
    // held 8 px to the left of its middle
    drag(
      bench.element.whole,
      [
        [x - 8, y],
        [x - 40, y],
        [overX - 8, overY],
      ],
      { alt: true },
    );
    expect(at(bench.desk.getState().plan, 'amp')).toEqual({ xM: 1, yM: 1.5 });
  });

  it('leaves a locked fitting alone and pans instead', () => {
    bench = createSketchBench(changeFitting(feedPlan(), 'battery', { locked: true }));
    const before = bench.desk.getState().cameras.whole;
    const [x, y] = bench.px('whole', 0.2, 1);
    send(bench.element.whole, 'pointerdown', x, y);
    send(bench.element.whole, 'pointermove', x + 30, y);
    expect(bench.state()).toBe('panning');
    send(bench.element.whole, 'pointermove', x + 50, y);
    send(bench.element.whole, 'pointerup', x + 50, y);
    expect(at(bench.desk.getState().plan, 'battery')).toEqual({ xM: 0.2, yM: 1 });
    expect(bench.desk.getState().cameras.whole?.centreXM).toBeCloseTo((before?.centreXM ?? 0) - 0.5, 9);
    expect(bench.state()).toBe('move.idle');
  });
});

describe('a drag on a run', () => {
  it('moves a bend', () => {
    const [x, y] = bench.px('whole', 2, 0.4);
    send(bench.element.whole, 'pointerdown', x, y);
    send(bench.element.whole, 'pointermove', x + 10, y + 10);
    expect(bench.state()).toBe('move.draggingBend');
    send(bench.element.whole, 'pointerup', x + 20, y + 30);
    expect(run('run3')?.bends).toEqual([{ xM: 2.2, yM: 0.7 }]);
    expect(bench.desk.getState().selection).toEqual({ kind: 'bend', id: 'run3', index: 0 });
    expect(bench.depth()).toBe(1);
  });

  it('leaves a bend at the edge of the pane that the finger has left', () => {
    const [x, y] = bench.px('whole', 2, 0.4);
    // the whole shows 0 to 4 m both ways at 100 px/m
    drag(
      bench.element.whole,
      [
        [x, y],
        [x, y + 40],
        [x, 700],
      ],
      { alt: true },
    );
    expect(run('run3')?.bends).toEqual([{ xM: 2, yM: 3.6 }]);
  });

  it('puts a bend in where there was none, between the right ones', () => {
    const [x, y] = bench.px('whole', 2.5, 0.7);
    drag(bench.element.whole, [
      [x, y],
      [x, y + 20],
      [x, y + 80],
    ]);
    expect(run('run3')?.bends).toEqual([
      { xM: 2, yM: 0.4 },
      { xM: 2.5, yM: 1.5 },
    ]);
  });

  it('leaves a locked run alone', () => {
    bench = createSketchBench(changeRun(feedPlan(), 'run3', { locked: true }));
    const [x, y] = bench.px('whole', 2, 0.4);
    drag(bench.element.whole, [
      [x, y],
      [x + 20, y],
      [x + 40, y + 40],
    ]);
    expect(run('run3')?.bends).toEqual([{ xM: 2, yM: 0.4 }]);
    expect(bench.depth()).toBe(0);
  });
});

describe('a drag that is called off', () => {
  const begin = () => {
    const [x, y] = bench.px('bay', 0.2, 1);
    send(bench.element.bay, 'pointerdown', x, y);
    send(bench.element.bay, 'pointermove', x + 30, y + 30);
    bench.frame();
    expect(bench.desk.getState().draft).not.toBeNull();
    return [x + 30, y + 30] as const;
  };
  const isAsBefore = (before: string) => {
    expect(bench.desk.getState().draft).toBeNull();
    expect(bench.bytes()).toBe(before);
    expect(bench.depth()).toBe(0);
    expect(bench.state()).toBe('move.idle');
  };

  it('by a second finger leaves no trace, and the lift places nothing', () => {
    const before = bench.bytes();
    const [x, y] = begin();
    send(bench.element.whole, 'pointerdown', 50, 50, { id: 2 });
    isAsBefore(before);
    send(bench.element.whole, 'pointerup', 50, 50, { id: 2 });
    send(bench.element.bay, 'pointerup', x, y);
    isAsBefore(before);
  });

  it('by the system leaves no trace', () => {
    const before = bench.bytes();
    begin();
    send(bench.element.bay, 'pointercancel', 0, 0);
    isAsBefore(before);
  });

  it('by a change of hand leaves no trace', () => {
    const before = bench.bytes();
    begin();
    bench.desk.setState({ hand: { way: 'run' } });
    expect(bench.desk.getState().draft).toBeNull();
    expect(bench.bytes()).toBe(before);
    expect(bench.state()).toBe('run.idle');
  });

  it('before its frame came shows nothing afterwards', () => {
    const [x, y] = bench.px('bay', 0.2, 1);
    send(bench.element.bay, 'pointerdown', x, y);
    send(bench.element.bay, 'pointermove', x + 30, y + 30);
    send(bench.element.bay, 'pointercancel', x, y);
    bench.frame();
    expect(bench.desk.getState().draft).toBeNull();
  });
});

describe('two fingers', () => {
  it('zoom the pane they are on about their middle', () => {
    const middle = bench.px('whole', 1, 1);
    send(bench.element.whole, 'pointerdown', middle[0] - 50, middle[1]);
    send(bench.element.whole, 'pointerdown', middle[0] + 50, middle[1], { id: 2 });
    send(bench.element.whole, 'pointermove', middle[0] + 150, middle[1], { id: 2 });
    const camera = bench.desk.getState().cameras.whole;
    expect(camera?.pxPerM).toBeCloseTo(200, 9);
    // (1, 1) was under the old middle and is now under the new one, 50 px to the right
    expect((1 - (camera?.centreXM ?? 0)) * 200 + 200).toBeCloseTo(middle[0] + 50, 6);
    expect(bench.desk.getState().cameras.bay?.pxPerM).toBe(200);
  });
});
