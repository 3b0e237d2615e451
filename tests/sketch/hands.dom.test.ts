import fc from 'fast-check';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { showInspectorBy } from '../../src/desk/inspect.ts';
import { select } from '../../src/desk/selection.ts';
import { nearestOnPolyline } from '../../src/geom/polyline.ts';
import { simplify } from '../../src/geom/simplify.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { edgeSpeed, FASTEST_PX_PER_S, ZONE_PX } from '../../src/sketch/edgeScroll.ts';
import { besideFinger, LOUPE_PX } from '../../src/sketch/fingerLayout.ts';
import { feedPlan, withFittings } from '../drawing/support/plans.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { drag, send, tap } from './support/finger.ts';

let bench: SketchBench;

beforeEach(() => {
  bench = createSketchBench(feedPlan());
});

const run = (id: string) => bench.desk.getState().plan.runs.find((other) => other.id === id);
const at = (id: string) => bench.desk.getState().plan.fittings.find((fitting) => fitting.id === id)?.at;

describe('a finger held still', () => {
  it.each([
    ['a fitting', 0.2, 1, { kind: 'fitting', id: 'battery' }],
    ['a bend', 2, 0.4, { kind: 'bend', id: 'run3', index: 0 }],
    ['a run', 1.5, 0.7, { kind: 'run', id: 'run3' }],
  ] as const)('on %s brings its fields into sight, and drags nothing', (_what, xM, yM, selection) => {
    const show = vi.fn();
    showInspectorBy(bench.desk, show);
    const [x, y] = bench.px('whole', xM, yM);
    send(bench.element.whole, 'pointerdown', x, y);
    bench.clock.turn(499);
    expect(show).not.toHaveBeenCalled();
    bench.clock.turn(1);
    expect(bench.desk.getState().selection).toEqual(selection);
    expect(show).toHaveBeenCalledOnce();
    send(bench.element.whole, 'pointermove', x + 80, y + 80);
    send(bench.element.whole, 'pointerup', x + 80, y + 80);
    bench.frame();
    expect([bench.state(), bench.depth(), bench.desk.getState().draft]).toEqual(['move.idle', 0, null]);
  });

  it('on empty sheet says nothing and leaves what was picked out', () => {
    const show = vi.fn();
    showInspectorBy(bench.desk, show);
    select(bench.desk, { kind: 'fitting', id: 'fuse' });
    const [x, y] = bench.px('whole', 2, 2);
    send(bench.element.whole, 'pointerdown', x, y);
    bench.clock.turn(500);
    send(bench.element.whole, 'pointerup', x, y);
    expect(show).not.toHaveBeenCalled();
    expect(bench.desk.getState().selection).toEqual({ kind: 'fitting', id: 'fuse' });
  });
});

describe('near the edge of a pane', () => {
  it('the sheet moves faster the nearer the edge, and not outside the zone or the pane', () => {
    const size = { widthPx: 400, heightPx: 400 };
    const speed = (xPx: number) => edgeSpeed({ xPx, yPx: 200 }, null, size).xPxPerS;
    expect(speed(200)).toBe(0);
    expect(speed(400 - ZONE_PX)).toBe(0);
    expect(speed(390)).toBeGreaterThan(speed(375));
    expect(speed(400)).toBe(FASTEST_PX_PER_S);
    expect(speed(0)).toBe(-FASTEST_PX_PER_S);
    expect(speed(401)).toBe(0);
    // taken hold of there: it has to go further out first
    expect(edgeSpeed({ xPx: 375, yPx: 200 }, { xPx: 375, yPx: 200 }, size).xPxPerS).toBe(0);
  });

  it.each([
    ['a fitting', 'move', [0.2, 1], () => at('battery')],
    ['a bend', 'move', [2, 0.4], () => run('run3')?.bends[0]],
    ['a fitting being placed', 'place', [2, 2], () => bench.desk.getState().plan.fittings.at(-1)?.at],
  ] as const)('%s stays under the finger while the sheet goes on', (_what, way, [xM, yM], where) => {
    bench.desk.setState({ snap: false, hand: way === 'move' ? { way } : { way, fitting: 'ground' } });
    const [x, y] = bench.px('whole', xM, yM);
    const centreYM = () => bench.desk.getState().cameras.whole?.centreYM ?? 0;
    const before = centreYM();
    send(bench.element.whole, 'pointerdown', x, y);
    send(bench.element.whole, 'pointermove', x, 200);
    bench.frame();
    expect(centreYM()).toBe(before);
    send(bench.element.whole, 'pointermove', x, 4);
    for (let frame = 0; frame < 60; frame += 1) {
      bench.clock.turn(16);
      bench.frame();
    }
    const scrolledM = before - centreYM();
    expect(scrolledM).toBeGreaterThan(0.3);
    send(bench.element.whole, 'pointermove', x, 200);
    bench.clock.turn(500);
    bench.frame();
    bench.frame();
    expect(before - centreYM()).toBeCloseTo(scrolledM, 9);
    send(bench.element.whole, 'pointerup', x, 200);
    // 200 px is the middle of the pane
    expect(where()?.yM).toBeCloseTo(centreYM(), 2);
    expect(bench.depth()).toBe(1);
  });
});

describe('a tile dragged off the shelf', () => {
  const carry = () => {
    const event = new PointerEvent('pointermove', { pointerId: 1, pointerType: 'touch', clientX: -20, clientY: 80 });
    expect(bench.table.carryIn('ground', event, { xPx: -60, yPx: 80 })).toBe(true);
  };

  it('is placed where the finger lifts, and the hand moves again: one step', () => {
    carry();
    expect(bench.state()).toBe('place.aiming');
    const [x, y] = bench.px('whole', 2, 2);
    send(bench.element.whole, 'pointermove', x, y);
    send(bench.element.whole, 'pointerup', x, y);
    const placed = bench.desk.getState().plan.fittings.at(-1);
    expect([placed?.kind, placed?.at]).toEqual(['ground', { xM: 2, yM: 2 }]);
    expect([bench.depth(), bench.state(), bench.desk.getState().hand]).toEqual([1, 'move.idle', { way: 'move' }]);
  });

  it('brought back to the shelf is not placed, and the hand is what it was', () => {
    bench.desk.setState({ hand: { way: 'run' } });
    const before = bench.bytes();
    carry();
    send(bench.element.whole, 'pointermove', ...bench.px('whole', 2, 2));
    send(bench.element.whole, 'pointermove', -30, 80);
    send(bench.element.whole, 'pointerup', -30, 80);
    expect([bench.bytes(), bench.depth(), bench.state()]).toEqual([before, 0, 'run.idle']);
    expect(bench.desk.getState()).toMatchObject({ hand: { way: 'run' }, draft: null, gesture: null });
  });
});

describe('an end of the run that is picked out', () => {
  const END: [number, number] = [2.8, 0.88];
  const pull = (xM: number, yM: number) =>
    drag(bench.element.whole, [bench.px('whole', ...END), bench.px('whole', 2.5, 1.8), bench.px('whole', xM, yM)]);

  beforeEach(() => select(bench.desk, { kind: 'run', id: 'run3' }));

  it('is joined to the only terminal that can be meant, in one step', () => {
    pull(0.5, 1);
    // the other end of the fuse leads to the same pass-through already
    expect(run('run3')?.to).toEqual({ fittingId: 'fuse', terminal: 'in' });
    expect([bench.depth(), bench.state()]).toEqual([1, 'move.idle']);
  });

  it('asks which of several terminals is meant', () => {
    bench = createSketchBench(withFittings(feedPlan(), [['block', 'block', 2, 2]]));
    select(bench.desk, { kind: 'run', id: 'run3' });
    const before = bench.bytes();
    pull(2, 2);
    expect([bench.state(), bench.bytes(), bench.depth()]).toEqual(['move.pickingTerminal', before, 0]);
    bench.table.hand.tell({ kind: 'choose', terminal: 'out1' });
    expect(run('run3')?.to).toEqual({ fittingId: 'block', terminal: 'out1' });
    expect([bench.depth(), bench.state()]).toEqual([1, 'move.idle']);
  });

  it('goes back where it was when it is dropped on nothing', () => {
    const before = bench.bytes();
    pull(2.2, 2.2);
    expect([bench.bytes(), bench.depth(), bench.state()]).toEqual([before, 0, 'move.idle']);
  });

  it('says why where it cannot be joined', () => {
    const before = bench.bytes();
    // the other end of the same run
    pull(1, 1);
    expect(bench.table.hand.store.getState().refusal).toBe('sameFitting');
    expect(bench.bytes()).toBe(before);
  });

  it('of a locked run stays: the sheet is panned, and says why', () => {
    bench = createSketchBench(changeRun(feedPlan(), 'run3', { locked: true }));
    select(bench.desk, { kind: 'run', id: 'run3' });
    send(bench.element.whole, 'pointerdown', ...bench.px('whole', 1.5, 0.7));
    send(bench.element.whole, 'pointermove', ...bench.px('whole', 1.5, 1.4));
    expect(bench.table.hand.store.getState().state).toMatchObject({ name: 'panning', isLocked: true });
    send(bench.element.whole, 'pointerup', ...bench.px('whole', 1.5, 1.4));
    expect(bench.depth()).toBe(0);
  });

  it('is not in the way of a tap, which picks out what is under it', () => {
    tap(bench.element.whole, ...bench.px('whole', ...END));
    expect(bench.desk.getState().selection).toEqual({ kind: 'run', id: 'run3' });
  });
});

describe('beside the finger', () => {
  const size = fc.record({
    widthPx: fc.integer({ min: 300, max: 1200 }),
    heightPx: fc.integer({ min: 420, max: 1000 }),
  });

  it('loupe and figures are inside the pane, off the fingertip, and do not cover one another', () => {
    const figures = { widthPx: 256, heightPx: 106 };
    fc.assert(
      fc.property(
        size,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (pane, x, y) => {
          const finger = { xPx: x * pane.widthPx, yPx: y * pane.heightPx };
          const { loupe, figures: box } = besideFinger(finger, figures, pane, { isMouse: false, hasLoupe: true });
          if (loupe === null) throw new Error('no loupe');
          const boxes = [
            { ...loupe, widthPx: LOUPE_PX, heightPx: LOUPE_PX },
            { ...box, ...figures },
          ] as const;
          for (const { leftPx, topPx, widthPx, heightPx } of boxes) {
            expect(leftPx).toBeGreaterThanOrEqual(0);
            expect(topPx).toBeGreaterThanOrEqual(0);
            expect(leftPx + widthPx).toBeLessThanOrEqual(pane.widthPx);
            expect(topPx + heightPx).toBeLessThanOrEqual(pane.heightPx);
          }
          const [a, b] = boxes;
          const apart =
            a.leftPx + a.widthPx <= b.leftPx ||
            b.leftPx + b.widthPx <= a.leftPx ||
            a.topPx + a.heightPx <= b.topPx ||
            b.topPx + b.heightPx <= a.topPx;
          expect(apart).toBe(true);
          // the loupe is there for what the finger hides
          expect(finger.yPx - 24 >= loupe.topPx + LOUPE_PX || finger.yPx + 24 <= loupe.topPx).toBe(true);
        },
      ),
    );
  });
});

describe('a free-hand line', () => {
  const point = fc.record({
    xM: fc.double({ min: -5, max: 5, noNaN: true }),
    yM: fc.double({ min: -5, max: 5, noNaN: true }),
  });

  it('made into bends strays from what was drawn by no more than it may, and keeps its ends', () => {
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 2, maxLength: 80 }),
        fc.double({ min: 0.001, max: 1, noNaN: true }),
        (drawn, toleranceM) => {
          const bends = simplify(drawn, toleranceM);
          expect([bends[0], bends.at(-1)]).toEqual([drawn[0], drawn.at(-1)]);
          for (const p of drawn) expect(nearestOnPolyline(bends, p)?.distanceM).toBeLessThanOrEqual(toleranceM + 1e-9);
        },
      ),
    );
  });
});
