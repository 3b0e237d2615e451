import { beforeEach, describe, expect, it } from 'vitest';
import { shownPlan } from '../../src/desk/desk.ts';
import type { HandView } from '../../src/sketch/tools/hand.ts';
import { feedPlan } from '../drawing/support/plans.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { send } from './support/finger.ts';

let bench: SketchBench;
/** The hand as the panes were given it, one after another. */
let given: HandView[];

beforeEach(() => {
  bench = createSketchBench(feedPlan());
  given = [];
  bench.table.seen.subscribe((view) => given.push(view));
});

const act = (kind: 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel', xM: number, yM: number) =>
  send(bench.element.whole, kind, ...bench.px('whole', xM, yM));
const seen = () => bench.table.seen.getState();
const fingerAt = ({ finger }: HandView) => (finger === null ? null : [finger.at.xPx, finger.at.yPx]);
const batteryAt = () => shownPlan(bench.desk.getState()).fittings.find(({ id }) => id === 'battery')?.at;

/** A finger on the battery that has begun to drag it, and the frame after. */
function dragging(): void {
  act('pointerdown', 0.2, 1);
  act('pointermove', 0.4, 1.2);
  bench.frame();
  given.length = 0;
}

describe('the hand as the panes show it', () => {
  it('comes at once when the finger comes down, begins to drag and lifts', () => {
    act('pointerdown', 0.2, 1);
    expect(seen().state.name).toBe('move.pressed');
    act('pointermove', 0.4, 1.2);
    expect(seen().state.name).toBe('move.draggingFitting');
    act('pointerup', 0.4, 1.2);
    expect(seen()).toMatchObject({ state: { name: 'move.idle' }, finger: null });
    expect(seen()).toBe(bench.table.hand.store.getState());
  });

  it('follows a drag once with every frame, with the newest place of the finger', () => {
    dragging();
    const before = seen();
    for (const xM of [0.5, 0.6, 0.7]) act('pointermove', xM, 1.2);
    expect(seen()).toBe(before);
    bench.frame();
    expect(given).toHaveLength(1);
    expect(fingerAt(seen())).toEqual(bench.px('whole', 0.7, 1.2));
    bench.frame();
    expect(given).toHaveLength(1);
    act('pointermove', 0.8, 1.2);
    bench.frame();
    expect(given.map(fingerAt)).toEqual([bench.px('whole', 0.7, 1.2), bench.px('whole', 0.8, 1.2)]);
  });

  it('moves in the same frame as what it drags', () => {
    dragging();
    const [was, at] = [fingerAt(seen()), batteryAt()];
    act('pointermove', 0.9, 1.5);
    expect([fingerAt(seen()), batteryAt()]).toEqual([was, at]);
    bench.frame();
    expect(fingerAt(seen())).toEqual(bench.px('whole', 0.9, 1.5));
    // held where it was taken hold of: in its middle
    expect(batteryAt()?.xM).toBeCloseTo(0.9, 1);
    expect(batteryAt()?.yM).toBeCloseTo(1.5, 1);
  });

  it.each(['pointerup', 'pointercancel'] as const)('does not come back with the frame after %s', (end) => {
    dragging();
    act('pointermove', 0.9, 1.5);
    act(end, 0.9, 1.5);
    expect(seen()).toMatchObject({ state: { name: 'move.idle' }, finger: null });
    const after = seen();
    given.length = 0;
    bench.frame();
    expect(given).toEqual([]);
    expect(seen()).toBe(after);
  });

  it('is not held up by a move that was called off: the next drag is followed as well', () => {
    dragging();
    act('pointermove', 0.9, 1.5);
    act('pointercancel', 0.9, 1.5);
    dragging();
    act('pointermove', 0.6, 1.4);
    bench.frame();
    expect(fingerAt(seen())).toEqual(bench.px('whole', 0.6, 1.4));
  });
});
