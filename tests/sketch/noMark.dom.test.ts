import { beforeEach, describe, expect, it } from 'vitest';
import type { PaneId } from '../../src/desk/desk.ts';
import { redoDepth } from '../../src/desk/edit.ts';
import { select } from '../../src/desk/selection.ts';
import { feedPlan } from '../drawing/support/plans.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { send, tap } from './support/finger.ts';

/** Whatever takes the hand off the sheet in the middle of anything leaves plan, history, draft and hand as they were. */
let bench: SketchBench;

beforeEach(() => {
  bench = createSketchBench(feedPlan());
});

const PANE: PaneId = 'whole';
const at = (xM: number, yM: number): [number, number] => bench.px(PANE, xM, yM);
const down = (xM: number, yM: number) => send(bench.element[PANE], 'pointerdown', ...at(xM, yM));
const move = (xM: number, yM: number) => {
  send(bench.element[PANE], 'pointermove', ...at(xM, yM));
  bench.frame();
};
const carried = (xM: number, yM: number) => {
  const event = new PointerEvent('pointermove', { pointerId: 1, pointerType: 'touch', clientX: -40, clientY: 20 });
  bench.table.carryIn('fuse', event, { xPx: -60, yPx: 20 });
  move(xM, yM);
};
const begun = () => {
  bench.desk.setState({ hand: { way: 'run' } });
  tap(bench.element[PANE], ...at(0.2, 1));
  bench.table.hand.tell({ kind: 'choose', terminal: 'negative' });
  tap(bench.element[PANE], ...at(0.6, 1.6));
};
const selectRun = () => select(bench.desk, { kind: 'run', id: 'run3' });

/** Every state in which a finger is down: what was before, how the finger comes there, and the state it is in. */
const STATES: readonly [state: string, before: () => void, reach: () => void][] = [
  ['move.pressed', () => undefined, () => down(0.2, 1)],
  ['move.pressed', () => undefined, () => down(2, 2)],
  ['move.draggingFitting', () => undefined, () => [down(0.2, 1), move(0.4, 1.4)]],
  ['move.draggingBend', () => undefined, () => [down(2, 0.4), move(2.3, 0.9)]],
  ['move.draggingBend', () => undefined, () => [down(1.5, 0.7), move(1.5, 1.4)]],
  ['move.draggingEnd', selectRun, () => [down(2.8, 0.88), move(2.5, 1.8)]],
  ['panning', () => undefined, () => [down(2, 2), move(2.4, 2.4)]],
  ['place.aiming', () => bench.desk.setState({ hand: { way: 'place', fitting: 'fuse' } }), () => down(2, 2)],
  [
    'place.aiming',
    () => bench.desk.setState({ hand: { way: 'place', fitting: 'fuse' } }),
    () => [down(2, 2), move(1.5, 0.7)],
  ],
  ['place.aiming', () => undefined, () => carried(2, 2)],
  ['place.aiming', begun, () => carried(2, 2)],
  ['run.idle', () => bench.desk.setState({ hand: { way: 'run' } }), () => down(0.2, 1)],
  ['panning', () => bench.desk.setState({ hand: { way: 'run' } }), () => [down(2, 2), move(2.4, 2.4)]],
  ['run.drawing', begun, () => down(1.2, 1.8)],
  ['run.drawing', begun, () => [down(0.6, 1.6), move(1.2, 1.9), move(1.4, 2.2)]],
];

const INTERRUPTIONS: readonly [what: string, happens: () => void][] = [
  ['a second finger', () => send(bench.element.whole, 'pointerdown', 300, 300, { id: 2 })],
  ['a second finger on the other pane', () => send(bench.element.bay, 'pointerdown', 500, 300, { id: 2 })],
  ['a palm', () => send(bench.element[PANE], 'pointermove', ...at(1, 1), { width: 140 })],
  [
    'a pen beside the hand',
    () => {
      send(bench.element[PANE], 'pointerdown', 300, 300, { id: 9, type: 'pen' });
      send(bench.element[PANE], 'pointercancel', 300, 300, { id: 9, type: 'pen' });
    },
  ],
  ['the system taking the touch away', () => send(bench.element[PANE], 'pointercancel', ...at(1, 1))],
  ['the capture being lost', () => send(bench.element[PANE], 'lostpointercapture', ...at(1, 1))],
  ['the page losing the focus, or a turn of the tablet', () => bench.table.input.takeAway()],
];

const everything = () => {
  const { plan, draft, gesture, hand, selection } = bench.desk.getState();
  const { state, finger, guides } = bench.table.hand.store.getState();
  return {
    plan,
    draft,
    gesture,
    hand,
    selection,
    state,
    finger,
    guides,
    depth: bench.depth(),
    redo: redoDepth(bench.desk),
  };
};

describe.each(INTERRUPTIONS)('%s', (_what, happens) => {
  it.each(STATES)('leaves no mark in %s', (name, before, reach) => {
    before();
    const [were, bytes] = [everything(), bench.bytes()];
    reach();
    expect(bench.state()).toBe(name);
    happens();
    bench.frame();
    // what the finger then still does counts for nothing
    move(1.1, 1.7);
    send(bench.element[PANE], 'pointerup', ...at(1.1, 1.7));
    send(bench.element.whole, 'pointerup', 300, 300, { id: 2 });
    send(bench.element.bay, 'pointerup', 500, 300, { id: 2 });
    bench.frame();
    // taking hold of a thing picks it out; that is no mark on the plan
    expect(everything()).toEqual({ ...were, selection: bench.desk.getState().selection });
    expect(bench.bytes()).toBe(bytes);
    expect(bench.table.input.state).toBe('idle');
  });
});
