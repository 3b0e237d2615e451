import { beforeEach, describe, expect, it } from 'vitest';
import { createDesk } from '../../src/desk/desk.ts';
import { placeFitting } from '../../src/desk/place.ts';
import type { FittingKind } from '../../src/plan/schema.ts';
import { emptyPlan, feedPlan, SHEET } from '../drawing/support/plans.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { send, tap } from './support/finger.ts';

let bench: SketchBench;
const place = (fitting: FittingKind) => bench.desk.setState({ hand: { way: 'place', fitting } });
const plan = () => bench.desk.getState().plan;

beforeEach(() => {
  bench = createSketchBench(feedPlan());
});

describe('placing', () => {
  it('aims live while the finger is down and places where it lifts: one step, selected, hand back to moving', () => {
    const before = bench.bytes();
    place('ground');
    expect(bench.state()).toBe('place.idle');
    const [x, y] = bench.px('whole', 3, 2);
    send(bench.element.whole, 'pointerdown', x, y);
    expect(bench.state()).toBe('place.aiming');
    bench.frame();
    expect(bench.desk.getState().draft?.fittings).toHaveLength(5);
    expect(bench.bytes()).toBe(before);
    send(bench.element.whole, 'pointermove', x + 30, y + 50);
    send(bench.element.whole, 'pointerup', x + 30, y + 50);
    const [placed] = plan().fittings.slice(-1);
    expect(placed).toMatchObject({ kind: 'ground', at: { xM: 3.3, yM: 2.5 }, sheetId: SHEET });
    expect(bench.depth()).toBe(1);
    expect(bench.desk.getState().selection).toEqual({ kind: 'fitting', id: placed?.id });
    expect(bench.desk.getState().hand).toEqual({ way: 'move' });
    expect(bench.state()).toBe('move.idle');
  });

  it('makes what the list makes, but for the ids', () => {
    bench = createSketchBench(emptyPlan());
    place('amplifier');
    tap(bench.element.whole, ...bench.px('whole', 3, 1));
    const byHand = plan().fittings[0];
    const desk = createDesk(emptyPlan(), { isExample: false, bigFingers: false });
    placeFitting(desk, 'amplifier', { xM: 3, yM: 1 }, SHEET, byHand?.name ?? '');
    expect({ ...byHand, id: '' }).toEqual({ ...desk.getState().plan.fittings[0], id: '' });
  });

  it('places nothing when the finger lifts beside the panes', () => {
    const before = bench.bytes();
    place('ground');
    const [x, y] = bench.px('whole', 3, 2);
    send(bench.element.whole, 'pointerdown', x, y);
    send(bench.element.whole, 'pointermove', x, 460);
    bench.frame();
    expect(bench.desk.getState().draft?.fittings).toHaveLength(4);
    send(bench.element.whole, 'pointerup', x, 460);
    expect(bench.bytes()).toBe(before);
    expect(bench.depth()).toBe(0);
    expect(bench.desk.getState().draft).toBeNull();
    expect(bench.state()).toBe('place.idle');
  });

  it('splits the run that a fuse is aimed at, and says which while aiming', () => {
    place('fuse');
    const [x, y] = bench.px('whole', 1.5, 0.75);
    send(bench.element.whole, 'pointerdown', x, y);
    expect(bench.table.hand.store.getState().state).toMatchObject({ name: 'place.aiming', splits: 'run3' });
    send(bench.element.whole, 'pointerup', x, y);
    expect(plan().runs).toHaveLength(4);
    const fuse = plan().fittings.at(-1);
    expect(plan().runs.filter(({ to, from }) => to.fittingId === fuse?.id || from.fittingId === fuse?.id)).toHaveLength(
      2,
    );
    expect(bench.depth()).toBe(1);
  });

  it('does not split a run for an amplifier', () => {
    place('amplifier');
    tap(bench.element.whole, ...bench.px('whole', 1.5, 0.7));
    expect(plan().runs).toHaveLength(3);
  });

  it('places nothing when a second finger comes down; the hand still places', () => {
    const before = bench.bytes();
    place('ground');
    send(bench.element.whole, 'pointerdown', 100, 300);
    bench.frame();
    send(bench.element.whole, 'pointerdown', 300, 300, { id: 2 });
    send(bench.element.whole, 'pointerup', 300, 300, { id: 2 });
    send(bench.element.whole, 'pointerup', 100, 300);
    expect(bench.bytes()).toBe(before);
    expect(bench.desk.getState().draft).toBeNull();
    expect(bench.state()).toBe('place.idle');
  });

  it('places after a long press as well', () => {
    place('ground');
    send(bench.element.whole, 'pointerdown', ...bench.px('whole', 3, 2));
    bench.clock.turn(600);
    send(bench.element.whole, 'pointerup', ...bench.px('whole', 3, 2));
    expect(plan().fittings).toHaveLength(5);
  });

  it('drops a loose fuse onto a run by dragging it there', () => {
    place('fuse');
    tap(bench.element.whole, ...bench.px('whole', 1.5, 2));
    const fuse = plan().fittings.at(-1);
    expect(plan().runs).toHaveLength(3);
    const [x, y] = bench.px('whole', 1.5, 2);
    send(bench.element.whole, 'pointerdown', x, y);
    send(bench.element.whole, 'pointermove', x, y - 60);
    send(bench.element.whole, 'pointermove', ...bench.px('whole', 1.5, 0.72));
    expect(bench.table.hand.store.getState().state).toMatchObject({ splits: 'run3' });
    send(bench.element.whole, 'pointerup', ...bench.px('whole', 1.5, 0.72));
    expect(plan().runs).toHaveLength(4);
    expect(plan().fittings.filter(({ id }) => id === fuse?.id)).toHaveLength(1);
    expect(bench.depth()).toBe(2);
  });
});
