import { beforeEach, describe, expect, it } from 'vitest';
import type { Camera, PaneId, Selection } from '../../src/desk/desk.ts';
import { drawSheet } from '../../src/drawing/draw.ts';
import { besideThese } from '../../src/drawing/lanes.ts';
import { sideBySide } from '../../src/drawing/sideBySide.ts';
import { addBend } from '../../src/plan/edits/addBend.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveBend } from '../../src/plan/edits/moveBend.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { reconnectRun } from '../../src/plan/edits/reconnectRun.ts';
import { splitRun } from '../../src/plan/edits/splitRun.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { Changes } from '../../src/sketch/changes.ts';
import { layOutLabels } from '../../src/sketch/labelLayout.ts';
import { words } from '../drawing/support/labelWords.ts';
import { emptyPlan, SHEET, withFittings, withRun } from '../drawing/support/plans.ts';
import { answerWith, runAnswer } from '../support/answers.ts';
import { createSketchBench, type SketchBench } from './support/bench.ts';
import { drag, send, tap } from './support/finger.ts';

/**
 * Two cables from battery to block, and one elsewhere. The first lies 11 px above the line y = 1 on the screen, the
 * second as much below it: 11 cm in the pane of the whole, 5.5 cm in that of the bay.
 */
const plain = () => {
  const fittings = withFittings(emptyPlan(), [
    ['battery', 'battery', 0.5, 1],
    ['block', 'block', 2.5, 1],
    ['amp', 'amplifier', 2.5, 3],
  ]);
  const one = withRun(fittings, 'one', 'battery.positive', 'block.bus');
  return withRun(withRun(one, 'other', 'block.bus', 'battery.positive'), 'third', 'block.bus', 'amp.supply');
};
const ASIDE_M = { whole: 0.11, bay: 0.055 } as const;
const BENT: readonly (readonly [number, number])[] = [
  [1.5, 1],
  [1.5, 2],
  [2.5, 2],
];
const bent = () => {
  const fittings = withFittings(emptyPlan(), [
    ['battery', 'battery', 0.5, 1],
    ['block', 'block', 2.5, 1],
  ]);
  const one = withRun(fittings, 'one', 'battery.positive', 'block.bus', BENT);
  return withRun(one, 'other', 'block.bus', 'battery.positive', BENT.toReversed());
};

let bench: SketchBench;

beforeEach(() => {
  bench = createSketchBench(plain());
});

const run = (id: string) => bench.desk.getState().plan.runs.find((other) => other.id === id);
const tapped = (xM: number, yM: number, pane: PaneId = 'whole'): Selection | null => {
  tap(bench.element[pane], ...bench.px(pane, xM, yM));
  return bench.desk.getState().selection;
};

describe('of two runs on one line', () => {
  it.each(['whole', 'bay'] as const)('each is picked out by a tap on it in the pane of the %s', (pane) => {
    const before = bench.bytes();
    const asideM = ASIDE_M[pane];
    expect(tapped(1.3, 1 - asideM, pane)).toEqual({ kind: 'run', id: 'one' });
    expect(tapped(1.3, 1 + asideM, pane)).toEqual({ kind: 'run', id: 'other' });
    // beyond it on its own side, and a little on its side of the middle
    expect(tapped(1.3, 1 - 2 * asideM, pane)).toEqual({ kind: 'run', id: 'one' });
    expect(tapped(1.3, 1 + 0.3 * asideM, pane)).toEqual({ kind: 'run', id: 'other' });
    expect(bench.bytes()).toBe(before);
    expect(bench.depth()).toBe(0);
  });

  it('each is picked out beside the ends of the other, which are handles', () => {
    // a handle stands 14 px off its plate
    const xM = 0.5 + 0.11 + 0.14;
    tapped(1.5, 0.89);
    expect(tapped(xM, 1.11)).toEqual({ kind: 'run', id: 'other' });
    expect(tapped(xM, 0.89)).toEqual({ kind: 'run', id: 'one' });
  });

  it('each bends by itself where its body is dragged', () => {
    const [x, y] = bench.px('whole', 1.5, 1.11);
    drag(bench.element.whole, [[x, y], [x, y + 30], bench.px('whole', 1.5, 1.6)]);
    expect(run('other')?.bends).toEqual([{ xM: 1.5, yM: 1.6 }]);
    expect(run('one')?.bends).toEqual([]);
    expect(bench.depth()).toBe(1);
    // now that they part, the first lies on its own line again
    expect(tapped(1.2, 0.81)).toEqual({ kind: 'run', id: 'one' });
    expect(tapped(1.5, 1)).toEqual({ kind: 'run', id: 'one' });
  });

  it('each is led elsewhere by the end that is seen on it', () => {
    tapped(1.5, 1.11);
    // 'other' was drawn from the block, so its first end is there
    const handle = bench.px('whole', 2.5 - 0.11 - 0.14, 1.11);
    drag(bench.element.whole, [handle, [handle[0], handle[1] + 40], bench.px('whole', 2.5, 3)]);
    expect(run('other')?.from).toEqual({ fittingId: 'amp', terminal: 'supply' });
    expect(run('one')).toEqual(plain().runs[0]);
  });

  it('each takes the fuse that is dropped on it, at the place on its own line', () => {
    bench.desk.setState({ hand: { way: 'place', fitting: 'fuse' } });
    const [x, y] = bench.px('whole', 1.5, 1.13);
    send(bench.element.whole, 'pointerdown', x, y);
    expect(bench.table.hand.store.getState().state).toMatchObject({ splits: 'other', at: { xM: 1.5, yM: 1 } });
    send(bench.element.whole, 'pointermove', x, y - 25);
    expect(bench.table.hand.store.getState().state).toMatchObject({ splits: 'one', at: { xM: 1.5, yM: 1 } });
    send(bench.element.whole, 'pointerup', x, y - 25);
    expect(run('one')?.to.fittingId).not.toBe('block');
    expect(run('other')).toEqual(plain().runs[1]);
    // on either side of the fuse both are still there to be taken hold of
    const onId = bench.desk.getState().plan.runs.find(({ to }) => to.fittingId === 'block')?.id;
    expect(tapped(1, 0.89)).toEqual({ kind: 'run', id: 'one' });
    expect(tapped(2, 0.89)).toEqual({ kind: 'run', id: onId });
    for (const xM of [1, 2]) expect(tapped(xM, 1.11)).toEqual({ kind: 'run', id: 'other' });
  });

  it('one that is locked stays, and the other bends', () => {
    const pull = (yM: number): string => {
      bench = createSketchBench(changeRun(plain(), 'one', { locked: true }));
      const before = bench.bytes();
      drag(bench.element.whole, [
        bench.px('whole', 1.5, yM),
        bench.px('whole', 1.5, yM + 0.3),
        bench.px('whole', 1.5, 1.6),
      ]);
      return bench.bytes() === before ? 'as it was' : 'bent';
    };
    expect(pull(0.89)).toBe('as it was');
    expect(pull(1.11)).toBe('bent');
    expect(run('other')?.bends).toEqual([{ xM: 1.5, yM: 1.6 }]);
  });
});

describe('of two runs round the same bends', () => {
  beforeEach(() => {
    bench = createSketchBench(bent());
  });

  it('each has its bends where it is seen to turn', () => {
    expect(tapped(1.61, 0.89)).toEqual({ kind: 'bend', id: 'one', index: 0 });
    expect(tapped(1.39, 1.11)).toEqual({ kind: 'bend', id: 'other', index: 2 });
    expect(tapped(2.61, 2.11)).toEqual({ kind: 'bend', id: 'other', index: 0 });
    expect(tapped(2.39, 1.89)).toEqual({ kind: 'bend', id: 'one', index: 2 });
  });

  it.each([
    ['one', 0, 1.1, 0.89, [0.5, 0]],
    ['one', 1, 1.61, 1.5, [1.2, 1.5]],
    ['one', 3, 2.39, 1.5, [2.1, 1.5]],
    ['other', 0, 2.61, 1.5, [2.9, 1.5]],
    ['other', 3, 1, 1.11, [1, 1.7]],
  ] as const)('a drag on %s puts a new bend in at %i', (id, index, xM, yM, to) => {
    drag(bench.element.whole, [
      bench.px('whole', xM, yM),
      bench.px('whole', to[0], to[1]),
      bench.px('whole', to[0], to[1]),
    ]);
    const bends = id === 'one' ? BENT : BENT.toReversed();
    const expected = bends.map(([x, y]) => ({ xM: x, yM: y }));
    expect(run(id)?.bends).toEqual(expected.toSpliced(index, 0, { xM: to[0], yM: to[1] }));
    expect(run(id === 'one' ? 'other' : 'one')?.bends).toHaveLength(3);
  });
});

describe('what a gesture changes', () => {
  const changed = (before = plain(), draft = plain()) => [...new Changes().of(before, draft, besideThese)].toSorted();

  it('is the run beside the one that is bent too: it moves to its own line', () => {
    const before = plain();
    expect(changed(before, addBend(before, 'one', 0, { xM: 1.5, yM: 1.5 }))).toEqual(['one', 'other']);
  });

  it('is the run beside the one whose fuse is pulled out of their line', () => {
    const fuse = newFittingIn(plain(), 'fuse', { id: 'fuse', name: '', sheetId: SHEET, at: { xM: 0, yM: 0 } });
    const before = splitRun(plain(), 'one', { xM: 1.5, yM: 1 }, fuse, 'on');
    expect(changed(before, moveFitting(before, 'fuse', { xM: 1.5, yM: 1.5 }, SHEET))).toEqual([
      'fuse',
      'on',
      'one',
      'other',
    ]);
  });

  it('is the run beside which another comes to lie', () => {
    const before = withRun(
      withFittings(plain(), [['pass', 'passThrough', 0.5, 3]]),
      'fourth',
      'pass.through',
      'amp.supply',
    );
    const draft = reconnectRun(before, 'fourth', 'from', { fittingId: 'block', terminal: 'bus' });
    expect(draft).not.toBe(before);
    expect(changed(before, draft)).toEqual(['fourth', 'third']);
  });

  it('is no run between other fittings', () => {
    const before = addBend(plain(), 'third', 0, { xM: 3, yM: 2 });
    expect(changed(before, moveBend(before, 'third', 0, { xM: 3.5, yM: 2 }))).toEqual(['third']);
    expect(changed(before, moveFitting(before, 'amp', { xM: 3, yM: 3 }, SHEET))).toEqual(['amp', 'third']);
  });
});

describe('the figures of runs that go up and down', () => {
  it('lie on their own run alone', () => {
    const upright = moveFitting(plain(), 'block', { xM: 0.5, yM: 3 }, SHEET);
    const camera: Camera = { sheetId: SHEET, centreXM: 1.5, centreYM: 2, pxPerM: 100 };
    const [sheet] = upright.sheets;
    if (sheet === undefined) throw new Error('no sheet');
    const length = { lengthM: 2, origin: 'taped', plusMinusM: 0 } as const;
    const answer = answerWith({ runs: ['one', 'other'].map((id) => runAnswer(id, { length })) });
    const drawing = sideBySide(upright, drawSheet(upright, sheet, answer, words), camera.pxPerM);
    const placed = layOutLabels(drawing, camera, { widthPx: 400, heightPx: 400 }, { keep: null, scale: 1 });
    const spans = placed.flatMap(({ label, xPx, widthPx }) =>
      label.kind === 'run' ? [[label.id, xPx - widthPx / 2, xPx + widthPx / 2] as const] : [],
    );
    // the line from x = 0.5 m is 100 px from the left of what is seen; going down, the first run is to the right of it
    expect(spans.map(([id]) => id).toSorted()).toEqual(['one', 'other']);
    for (const [id, left, right] of spans) {
      const [own, next] = id === 'one' ? [111, 89] : [89, 111];
      expect(own).toBeGreaterThanOrEqual(left);
      expect(own).toBeLessThanOrEqual(right);
      expect(next < left || next > right).toBe(true);
    }
  });
});
