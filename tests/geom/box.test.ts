import { describe, expect, it } from 'vitest';
import { boundsOf, boxHolds, fitBox, growBox } from '../../src/geom/box.ts';
import { at } from './points.ts';

const van = { minXM: 0, minYM: 0, maxXM: 4, maxYM: 2 };

describe('boxes', () => {
  it('the bounds of three points', () => {
    expect(boundsOf([at(1, 5), at(-2, 3), at(0, 9)])).toEqual({ minXM: -2, minYM: 3, maxXM: 1, maxYM: 9 });
    expect(boundsOf([])).toBeNull();
  });

  it('an edge belongs to the box', () => {
    expect(boxHolds(van, at(4, 2))).toBe(true);
    expect(boxHolds(van, at(4.001, 2))).toBe(false);
  });

  it('a margin is added on every side', () => {
    expect(growBox(van, 0.5)).toEqual({ minXM: -0.5, minYM: -0.5, maxXM: 4.5, maxYM: 2.5 });
  });

  it('4 m by 2 m in 420 px by 420 px with 10 px margin: 100 px per metre', () => {
    expect(fitBox(van, { widthPx: 420, heightPx: 420, marginPx: 10 })).toEqual({
      centreXM: 2,
      centreYM: 1,
      pxPerM: 100,
    });
  });

  it('the shorter side of a flat pane decides', () => {
    expect(fitBox(van, { widthPx: 2000, heightPx: 120, marginPx: 10 }).pxPerM).toBe(50);
  });

  it('a box or a pane of no size still has a scale', () => {
    const dot = { minXM: 1, minYM: 1, maxXM: 1, maxYM: 1 };
    expect(fitBox(dot, { widthPx: 100, heightPx: 100, marginPx: 0 }).pxPerM).toBe(1);
    expect(fitBox(van, { widthPx: 0, heightPx: 0, marginPx: 10 }).pxPerM).toBe(1);
  });
});
