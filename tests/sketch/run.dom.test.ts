import { beforeEach, describe, expect, it } from 'vitest';
import type { PaneId } from '../../src/desk/desk.ts';
import { emptyPlan, withFittings, withRun } from '../drawing/support/plans.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { drag, send, tap } from './support/finger.ts';

let bench: SketchBench;

beforeEach(() => {
  const plan = withFittings(emptyPlan(), [
    ['battery', 'battery', 0.2, 1],
    ['fuse', 'fuse', 1, 1],
    ['grommet', 'passThrough', 1.6, 1],
    ['block', 'block', 2.4, 1],
    ['amp', 'amplifier', 3.4, 1],
    ['bolt', 'ground', 3.4, 2],
  ]);
  bench = createSketchBench(plan);
  bench.desk.setState({ hand: { way: 'run' } });
});

const tapAt = (xM: number, yM: number, pane: PaneId = 'whole') => tap(bench.element[pane], ...bench.px(pane, xM, yM));
const choose = (terminal: string) => bench.table.hand.tell({ kind: 'choose', terminal });
const runs = () => bench.desk.getState().plan.runs;
const offered = () => {
  const { state } = bench.table.hand.store.getState();
  return state.name === 'run.pickingTerminal' ? state.terminals.map(({ terminal }) => terminal) : null;
};
const bends = () => {
  const { state } = bench.table.hand.store.getState();
  return state.name === 'run.drawing' ? state.trace.bends : null;
};

describe('beginning a run', () => {
  it('asks which terminal where there are several', () => {
    expect(bench.state()).toBe('run.idle');
    tapAt(0.2, 1);
    expect(bench.state()).toBe('run.pickingTerminal');
    expect(offered()).toEqual(['positive', 'negative']);
    choose('negative');
    expect(bench.state()).toBe('run.drawing');
  });

  it('does not ask where there is one, and takes the end of a fuse that is free', () => {
    tapAt(1.6, 1);
    expect(bench.state()).toBe('run.drawing');
    bench.table.hand.tell({ kind: 'drop' });
    tapAt(1, 1);
    expect(bench.table.hand.store.getState().state).toMatchObject({ trace: { from: { terminal: 'out' } } });
  });

  it('closes the tabs on a tap elsewhere', () => {
    tapAt(0.2, 1);
    tapAt(2, 3);
    expect(bench.state()).toBe('run.idle');
  });

  it('pans with a drag on empty sheet', () => {
    const before = bench.desk.getState().cameras.whole?.centreXM ?? 0;
    drag(bench.element.whole, [
      [200, 300],
      [230, 300],
      [250, 300],
    ]);
    expect(bench.desk.getState().cameras.whole?.centreXM).toBeCloseTo(before - 0.5, 9);
    expect(bench.state()).toBe('run.idle');
  });
});

describe('drawing', () => {
  const begin = () => {
    tapAt(0.2, 1);
    choose('positive');
  };

  it('sets a bend with each tap and ends on a terminal: one run, one step, selected', () => {
    begin();
    tapAt(0.2, 0.5);
    tapAt(0.6, 0.5);
    expect(bends()).toEqual([
      { xM: 0.2, yM: 0.5 },
      { xM: 0.6, yM: 0.5 },
    ]);
    expect(bench.depth()).toBe(0);
    tapAt(1, 1);
    expect(bench.state()).toBe('run.idle');
    expect(runs()).toHaveLength(1);
    expect(runs()[0]).toMatchObject({
      kind: 'power',
      from: { fittingId: 'battery', terminal: 'positive' },
      to: { fittingId: 'fuse', terminal: 'in' },
      bends: [
        { xM: 0.2, yM: 0.5 },
        { xM: 0.6, yM: 0.5 },
      ],
    });
    expect(bench.depth()).toBe(1);
    expect(bench.desk.getState().selection).toEqual({ kind: 'run', id: runs()[0]?.id });
    expect(bench.desk.getState().hand).toEqual({ way: 'run' });
  });

  it('steps back one bend at a time, then gives up', () => {
    begin();
    tapAt(0.2, 0.5);
    tapAt(0.6, 0.5);
    bench.table.hand.tell({ kind: 'back' });
    expect(bends()).toHaveLength(1);
    bench.table.hand.tell({ kind: 'back' });
    expect(bends()).toHaveLength(0);
    bench.table.hand.tell({ kind: 'back' });
    expect(bench.state()).toBe('run.idle');
    expect(runs()).toEqual([]);
  });

  it('goes on in the other pane', () => {
    begin();
    tapAt(0.6, 0.5, 'bay');
    tapAt(1, 1, 'whole');
    expect(runs()[0]?.bends).toEqual([{ xM: 0.6, yM: 0.5 }]);
  });

  it('draws from pane to pane in one drag', () => {
    tapAt(1.6, 1);
    const from = bench.px('bay', 1.6, 1);
    const to = bench.px('whole', 1, 1);
    drag(bench.element.bay, [from, [from[0] - 40, from[1]], to]);
    expect(runs()[0]).toMatchObject({ from: { fittingId: 'grommet' }, to: { fittingId: 'fuse' } });
  });

  it('draws free-hand: what strays is kept as bends, what does not is left out', () => {
    tapAt(1.6, 1);
    const path = [
      [1.6, 1],
      [1.7, 1.2],
      [1.8, 1.42],
      [1.9, 1.6],
      [2.1, 1.6],
      [2.3, 1.58],
      [2.4, 1.6],
      [2.4, 1.3],
      [2.4, 1],
    ] as const;
    drag(
      bench.element.whole,
      path.map(([xM, yM]) => bench.px('whole', xM, yM)),
    );
    expect(offered()).toEqual(['bus', 'out1', 'out2']);
    choose('bus');
    expect(runs()[0]?.bends).toEqual([
      { xM: 1.9, yM: 1.6 },
      { xM: 2.4, yM: 1.6 },
    ]);
  });

  it('sets one bend with a straight drag that ends on empty sheet', () => {
    begin();
    drag(bench.element.whole, [bench.px('whole', 0.2, 1), bench.px('whole', 0.2, 0.8), bench.px('whole', 0.2, 0.6)]);
    expect(bends()).toEqual([{ xM: 0.2, yM: 0.6 }]);
  });

  it('keeps the bends and drops the stroke when a second finger comes down', () => {
    begin();
    tapAt(0.2, 0.5);
    send(bench.element.whole, 'pointerdown', 100, 100);
    send(bench.element.whole, 'pointermove', 200, 200);
    send(bench.element.whole, 'pointerdown', 300, 100, { id: 2 });
    expect(bench.table.hand.store.getState().state).toMatchObject({ name: 'run.drawing', stroke: [] });
    expect(bends()).toHaveLength(1);
    send(bench.element.whole, 'pointerup', 300, 100, { id: 2 });
    send(bench.element.whole, 'pointerup', 200, 200);
    expect(bends()).toHaveLength(1);
  });

  it('offers a ground lead no supply, and a feed no ground', () => {
    tapAt(3.4, 2);
    expect(bench.state()).toBe('run.drawing');
    tapAt(3.4, 1);
    expect(bench.state()).toBe('run.idle');
    expect(runs()[0]).toMatchObject({ kind: 'ground', to: { fittingId: 'amp', terminal: 'ground' } });
    begin();
    tapAt(3.4, 1);
    expect(runs()[1]).toMatchObject({ kind: 'power', to: { fittingId: 'amp', terminal: 'supply' } });
  });

  it('says why two terminals that are joined are not joined again, and goes on drawing', () => {
    const joined = withRun(bench.desk.getState().plan, 'run', 'bolt.body', 'grommet.through', [], 'ground');
    bench.desk.setState({ plan: joined });
    tapAt(3.4, 2);
    tapAt(1.6, 1);
    expect(bench.table.hand.store.getState().refusal).toBe('alreadyJoined');
    expect(bench.state()).toBe('run.drawing');
    expect(runs()).toHaveLength(1);
  });

  it('ends when the fitting at which it began is gone', () => {
    tapAt(1.6, 1);
    bench.desk.setState({ plan: emptyPlan() });
    tapAt(2, 2);
    expect(bench.state()).toBe('run.idle');
  });
});
