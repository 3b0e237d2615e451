import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { shownPlan } from '../../src/desk/desk.ts';
import type { Plan } from '../../src/plan/schema.ts';
import * as late from '../../src/sketch/late.ts';
import type { Late, LateSource } from '../../src/sketch/loadLate.ts';
import { feedPlan, SHEET } from '../drawing/support/plans.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { drag, send, tap } from './support/finger.ts';

/** A server from which the hand is on its way until it is let come, or fail. */
class Server implements LateSource {
  here: Late | null = null;
  asked = 0;
  readonly whenHere: Promise<Late>;
  #tellHere: (late: Late) => void = () => undefined;
  #answers: { resolve: () => void; reject: (error: Error) => void }[] = [];

  constructor() {
    this.whenHere = new Promise((resolve) => {
      this.#tellHere = resolve;
    });
  }

  load(): Promise<void> {
    this.asked += 1;
    return new Promise((resolve, reject) => {
      this.#answers.push({ resolve, reject });
    });
  }

  async come(): Promise<void> {
    this.here = late;
    this.#tellHere(late);
    for (const { resolve } of this.#answers) resolve();
    this.#answers = [];
    await new Promise((done) => setTimeout(done));
  }

  async fail(): Promise<void> {
    for (const { reject } of this.#answers) reject(new TypeError('no such file'));
    this.#answers = [];
    await new Promise((done) => setTimeout(done));
  }
}

let server: Server;
let bench: SketchBench;

beforeEach(() => {
  server = new Server();
  bench = createSketchBench(feedPlan(), server);
});

const whole = (xM: number, yM: number) => bench.px('whole', xM, yM);
const plan = () => bench.desk.getState().plan;
const batteryAt = (of: Plan = plan()) => of.fittings.find(({ id }) => id === 'battery')?.at;
const selectedId = () => bench.desk.getState().selection?.id ?? null;
const wholeCamera = () => bench.desk.getState().cameras.whole;
const wheel = (deltaY: number, xM: number, yM: number) => {
  const [clientX, clientY] = whole(xM, yM);
  const event = new WheelEvent('wheel', { deltaY, clientX, clientY, ctrlKey: true, bubbles: true, cancelable: true });
  bench.element.whole.dispatchEvent(event);
};

describe('what a finger does before the hand has been fetched', () => {
  it('has its effect when the hand comes: a drag moves what it took hold of', async () => {
    const before = bench.bytes();
    drag(bench.element.whole, [whole(0.2, 1), whole(0.5, 1.2), whole(0.8, 1.4)]);
    expect(bench.bytes()).toBe(before);
    expect(bench.state()).toBe('move.idle');
    await server.come();
    expect(batteryAt()).toEqual({ xM: 0.8, yM: 1.4 });
    expect(bench.depth()).toBe(1);
    expect(bench.state()).toBe('move.idle');
  });

  it('is done in the order in which it was done, under the way of the hand it was done in', async () => {
    bench.desk.setState({ hand: { way: 'place', fitting: 'ground' } });
    tap(bench.element.whole, ...whole(3, 3.5));
    bench.desk.setState({ hand: { way: 'move' } });
    drag(bench.element.whole, [whole(3, 3.5), whole(3.2, 3.6), whole(3.4, 3.7)]);
    expect(plan().fittings).toHaveLength(feedPlan().fittings.length);
    await server.come();
    // the ground was placed first, and the drag took hold of it there
    expect(
      plan()
        .fittings.filter(({ kind }) => kind === 'ground')
        .map(({ at }) => at),
    ).toContainEqual({
      xM: 3.4,
      yM: 3.7,
    });
    expect(bench.depth()).toBe(2);
    expect(bench.desk.getState().hand).toEqual({ way: 'move' });
  });

  it('goes on under a finger that is still down', async () => {
    send(bench.element.whole, 'pointerdown', ...whole(0.2, 1));
    send(bench.element.whole, 'pointermove', ...whole(0.5, 1.2));
    await server.come();
    expect(bench.state()).toBe('move.draggingFitting');
    send(bench.element.whole, 'pointermove', ...whole(0.7, 1.3));
    bench.frame();
    expect(batteryAt(shownPlan(bench.desk.getState()))).toEqual({ xM: 0.7, yM: 1.3 });
    send(bench.element.whole, 'pointerup', ...whole(0.8, 1.4));
    expect(batteryAt()).toEqual({ xM: 0.8, yM: 1.4 });
  });

  it('means what it was on, though the sheet has moved under it since', async () => {
    tap(bench.element.whole, ...whole(0.2, 1));
    wheel(-600, 3, 3);
    const moved = wholeCamera();
    await server.come();
    expect(selectedId()).toBe('battery');
    expect(wholeCamera()).toBe(moved);
  });

  it('means what it was on, though its pane is gone', async () => {
    tap(bench.element.whole, ...whole(0.2, 1));
    bench.table.panes.unmount('whole');
    await server.come();
    expect(selectedId()).toBe('battery');
  });

  it('a fitting carried off the shelf is placed', async () => {
    const at = whole(3, 3.5);
    const event = (kind: string) =>
      new PointerEvent(kind, { pointerId: 7, pointerType: 'touch', clientX: at[0], clientY: at[1], bubbles: true });
    expect(bench.table.carryIn('ground', event('pointermove'), { xPx: 10, yPx: 700 })).toBe(true);
    bench.element.whole.dispatchEvent(event('pointermove'));
    // the first of the panes has the finger now
    bench.element.whole.dispatchEvent(event('pointerup'));
    await server.come();
    expect(plan().fittings.some(({ kind, at: place }) => kind === 'ground' && place.xM === 3 && place.yM === 3.5)).toBe(
      true,
    );
    expect(bench.desk.getState().hand).toEqual({ way: 'move' });
  });

  it('means nothing on another plan that was opened since', async () => {
    drag(bench.element.whole, [whole(0.2, 1), whole(0.5, 1.2), whole(0.8, 1.4)]);
    const other = feedPlan();
    const sheets = other.sheets.map((sheet) => ({ ...sheet, id: 'elsewhere' }));
    const moved = <T extends { sheetId: string }>(thing: T): T => ({ ...thing, sheetId: 'elsewhere' });
    const opened = { ...other, sheets, fittings: other.fittings.map(moved), runs: other.runs.map(moved) };
    bench.desk.setState({ plan: opened });
    await server.come();
    expect(plan()).toBe(opened);
  });

  it('leaves the plan that it would have left with the hand there from the start, whenever the hand comes', async () => {
    /** Where something is, or has been. */
    const SPOTS = feedPlan().fittings.map(({ at }) => at);
    const spot = fc.nat({ max: SPOTS.length - 1 });
    const act = fc.oneof(
      fc.record({ kind: fc.constant('tap' as const), spot }),
      fc.record({ kind: fc.constant('drag' as const), spot, dx: fc.integer({ min: -4, max: 4 }) }),
      fc.record({ kind: fc.constant('way' as const), way: fc.constantFrom('move' as const, 'run' as const) }),
    );
    const steps = fc.array(act, { minLength: 1, maxLength: 8 });
    await fc.assert(
      fc.asyncProperty(steps, fc.nat({ max: 8 }), async (acts, comesAt) => {
        const slow = new Server();
        const benches = [createSketchBench(feedPlan()), createSketchBench(feedPlan(), slow)];
        for (const [index, one] of acts.entries()) {
          if (index === comesAt) await slow.come();
          for (const { desk, element, table } of benches) {
            if (one.kind === 'way') {
              desk.setState({ hand: { way: one.way } });
              continue;
            }
            // where it is seen now: a drag that began beside everything has moved the sheet
            const { xPx = 0, yPx = 0 } = table.panes.toPane('whole', SPOTS[one.spot] ?? { xM: 0, yM: 0 }) ?? {};
            if (one.kind === 'tap') tap(element.whole, xPx, yPx);
            else {
              const path = [0, 20, 30 * one.dx].map((byPx): [number, number] => [xPx + byPx, yPx]);
              drag(element.whole, path);
            }
          }
        }
        await slow.come();
        const [there, later] = benches.map(({ desk, state }) => {
          const { plan: left, hand } = desk.getState();
          return { left: alike(left), hand, state: state() };
        });
        expect(later).toEqual(there);
        document.body.replaceChildren();
      }),
      { seed: 20261126, numRuns: process.env.FEEDRUN_LONG === undefined ? 60 : 1500 },
    );
  });
});

/** The plan with its random ids told by their order. */
function alike(left: Plan): unknown {
  const ids = new Map<string, string>();
  const known = new Set([SHEET, ...[...feedPlan().fittings, ...feedPlan().runs].map(({ id }) => id)]);
  return JSON.parse(JSON.stringify(left), (key, value) => {
    if (typeof value !== 'string' || !/id$/i.test(key) || known.has(value)) return value;
    const name = ids.get(value) ?? `new ${ids.size}`;
    ids.set(value, name);
    return name;
  });
}

describe('the sheet before the hand has been fetched', () => {
  it('pans under one finger on bare sheet, and marks and drops nothing', async () => {
    bench.desk.setState({ selection: { kind: 'fitting', id: 'amp' } });
    const before = wholeCamera();
    drag(bench.element.whole, [
      [250, 350],
      [280, 360],
      [300, 370],
    ]);
    const after = wholeCamera();
    // 50 px and 20 px at 100 px/m: what was under the finger is under it still
    expect(after?.centreXM).toBeCloseTo((before?.centreXM ?? 0) - 0.5, 9);
    expect(after?.centreYM).toBeCloseTo((before?.centreYM ?? 0) - 0.2, 9);
    await server.come();
    expect(wholeCamera()).toBe(after);
    expect(selectedId()).toBe('amp');
    expect(bench.state()).toBe('move.idle');
  });

  it('goes on panning under a finger when the hand comes meanwhile', async () => {
    const before = wholeCamera();
    send(bench.element.whole, 'pointerdown', 250, 350);
    send(bench.element.whole, 'pointermove', 280, 350);
    await server.come();
    expect(bench.state()).toBe('panning');
    send(bench.element.whole, 'pointerup', 350, 350);
    expect(wholeCamera()?.centreXM).toBeCloseTo((before?.centreXM ?? 0) - 1, 9);
    expect(bench.state()).toBe('move.idle');
  });

  it('zooms by the wheel', () => {
    wheel(-600, 2, 2);
    expect(wholeCamera()?.pxPerM).toBeGreaterThan(100);
  });
});

describe('a hand that cannot be fetched', () => {
  const message = () => bench.desk.getState().message?.id ?? null;

  it('is asked for once, as soon as there is a sketch', () => {
    expect(server.asked).toBe(1);
    tap(bench.element.whole, ...whole(0.2, 1));
    expect(server.asked).toBe(1);
  });

  it('is told, is asked for again by the next touch, and then does what was kept', async () => {
    drag(bench.element.whole, [whole(0.2, 1), whole(0.5, 1.2), whole(0.8, 1.4)]);
    await server.fail();
    expect(message()).toBe('handMissing');
    expect(server.asked).toBe(1);
    tap(bench.element.whole, ...whole(0.8, 1.4));
    expect(server.asked).toBe(2);
    await server.fail();
    tap(bench.element.whole, ...whole(0.8, 1.4));
    expect(server.asked).toBe(3);
    await server.come();
    expect(message()).toBeNull();
    expect(batteryAt()).toEqual({ xM: 0.8, yM: 1.4 });
    expect(selectedId()).toBe('battery');
  });

  it('does what was kept on a sketch that has gone meanwhile, when another sketch fetches it', async () => {
    drag(bench.element.whole, [whole(0.2, 1), whole(0.5, 1.2), whole(0.8, 1.4)]);
    await server.fail();
    for (const id of ['whole', 'bay'] as const) bench.table.panes.unmount(id);
    createSketchBench(feedPlan(), server);
    await server.come();
    expect(batteryAt()).toEqual({ xM: 0.8, yM: 1.4 });
  });
});
