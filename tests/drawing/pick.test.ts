import { describe, expect, it } from 'vitest';
import { pick, REACH_BIG_PX, REACH_PX, type Target, targetsOf } from '../../src/drawing/pick.ts';
import { emptyPlan, feedPlan, SHEET, withFittings, withRun } from './support/plans.ts';

const at = (xM: number, yM: number) => ({ xM, yM });
const PX_PER_M = 200;
const targets = targetsOf(feedPlan(), SHEET, false, PX_PER_M);

describe('what a finger gets hold of', () => {
  it('is the fitting under it rather than the runs that end there', () => {
    expect(pick(targets, at(0.5, 1), PX_PER_M, REACH_PX)).toMatchObject({ kind: 'fitting', fittingId: 'fuse' });
  });

  it.each([20, 100, 400, 2000])('is within 22 px at %i px/m, and nothing beyond', (pxPerM) => {
    const alone: Target[] = [{ kind: 'bend', runId: 'run', index: 0, at: at(0, 0) }];
    expect(pick(alone, at(21.9 / pxPerM, 0), pxPerM, REACH_PX)).not.toBeNull();
    expect(pick(alone, at(22.1 / pxPerM, 0), pxPerM, REACH_PX)).toBeNull();
    expect(pick(alone, at(27.9 / pxPerM, 0), pxPerM, REACH_BIG_PX)).not.toBeNull();
    expect(pick(alone, at(28.1 / pxPerM, 0), pxPerM, REACH_BIG_PX)).toBeNull();
  });

  it('is the nearer of two fittings', () => {
    expect(pick(targets, at(0.38, 1), 60, REACH_PX)).toMatchObject({ fittingId: 'fuse' });
    expect(pick(targets, at(0.32, 1), 60, REACH_PX)).toMatchObject({ fittingId: 'battery' });
  });

  it('is the bend rather than the run it is on, also a little beside it', () => {
    expect(pick(targets, at(2, 0.4), PX_PER_M, REACH_PX)).toMatchObject({ kind: 'bend', runId: 'run3', index: 0 });
    expect(pick(targets, at(2 + 12 / PX_PER_M, 0.4), PX_PER_M, REACH_PX)).toMatchObject({ kind: 'bend' });
  });

  it('is the run between its bends, with the segment and the nearest point', () => {
    const picked = pick(targets, at(0.75, 1.05), PX_PER_M, REACH_PX);
    expect(picked).toMatchObject({ kind: 'run', runId: 'run2', segment: 0 });
    expect(picked?.at.xM).toBeCloseTo(0.75, 9);
    expect(picked?.at.yM).toBeCloseTo(1, 9);
  });

  it('breaks ties in the order terminal, fitting, bend, run', () => {
    const here = at(0, 0);
    const kinds: Target[] = [
      { kind: 'run', runId: 'run', points: [at(-1, 0), at(1, 0)], isInLane: false },
      { kind: 'bend', runId: 'run', index: 0, at: here },
      { kind: 'fitting', fittingId: 'fitting', at: here },
      { kind: 'terminal', ref: { fittingId: 'fitting', terminal: 'body' }, at: here },
    ];
    const order = ['terminal', 'fitting', 'bend', 'run'];
    for (const [index, kind] of order.entries()) {
      const left = kinds.filter((target) => order.indexOf(target.kind) >= index);
      expect(pick(left, here, PX_PER_M, REACH_PX)?.kind).toBe(kind);
    }
  });

  it('means the terminal itself where a fitting has only one, while a run is drawn', () => {
    const drawing = targetsOf(feedPlan(), SHEET, true, PX_PER_M);
    expect(pick(drawing, at(1, 1), PX_PER_M, REACH_PX)).toMatchObject({
      kind: 'terminal',
      ref: { fittingId: 'grommet', terminal: 'through' },
    });
    expect(pick(drawing, at(0.2, 1), PX_PER_M, REACH_PX)).toMatchObject({ kind: 'fitting', fittingId: 'battery' });
  });

  it.each([40, 200, 1000])('is either of two runs on one line, beside that line, at %i px/m', (pxPerM) => {
    const places = withFittings(emptyPlan(), [
      ['battery', 'battery', 0.5, 1],
      ['block', 'block', 3.5, 1],
    ]);
    const one = withRun(places, 'one', 'battery.positive', 'block.bus');
    const both = targetsOf(withRun(one, 'other', 'block.bus', 'battery.positive'), SHEET, false, pxPerM);
    const pickedAt = (byPx: number) => pick(both, at(2, 1 + byPx / pxPerM), pxPerM, REACH_PX);
    for (const byPx of [-30, -11, -2]) expect(pickedAt(byPx)).toMatchObject({ kind: 'run', runId: 'one', segment: 0 });
    for (const byPx of [2, 11, 30]) expect(pickedAt(byPx)).toMatchObject({ kind: 'run', runId: 'other', segment: 0 });
    // 11 px and the reach of a finger
    expect(pickedAt(-34)).toBeNull();
    expect(pickedAt(34)).toBeNull();
  });

  it('is nothing on empty sheet', () => {
    expect(pick(targets, at(2, 1.6), PX_PER_M, REACH_PX)).toBeNull();
  });
});
