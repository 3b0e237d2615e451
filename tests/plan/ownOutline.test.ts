import { describe, expect, it } from 'vitest';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { crossesItself, mirroredOutline, ownFault, ownFrom, stretched } from '../../src/plan/ownOutline.ts';
import { at } from './support/samplePlan.ts';

const { panelVan, bench } = DEFAULT_OUTLINES;
const edgeOf = (...places: readonly (readonly [number, number])[]) => places.map(([x, y]) => at(x, y));

describe('an outline to draw', () => {
  it('begins as the rectangle round what is there, with its lines', () => {
    expect(ownFrom(panelVan)).toEqual({
      kind: 'own',
      ...{ lengthM: 4.4, widthM: 1.8, heightM: 1.85, bayM: 1, cabM: 1.5 },
      edge: edgeOf([0, 0], [4.4, 0], [4.4, 1.8], [0, 1.8]),
    });
    expect(ownFrom(bench)).toMatchObject({ bayM: null, cabM: null, lengthM: 2.4 });
    expect(ownFrom(ownFrom(bench))).toEqual(ownFrom(bench));
  });

  it('is stretched with its corners; its lines stay where they were measured', () => {
    expect(stretched(ownFrom(panelVan), 2.2, 0.9)).toMatchObject({
      edge: edgeOf([0, 0], [2.2, 0], [2.2, 0.9], [0, 0.9]),
      bayM: 1,
    });
  });

  it('changes sides as in a mirror, edge and all; a vehicle is alike on either side', () => {
    const own = { ...ownFrom(panelVan), edge: edgeOf([0, 0.2], [4.4, 0], [3, 1.8]) };
    expect(mirroredOutline(own)).toEqual({ ...own, edge: edgeOf([0, 1.6], [4.4, 1.8], [3, 0]) });
    expect(mirroredOutline(mirroredOutline(own))).toEqual(own);
    for (const outline of [panelVan, bench]) expect(mirroredOutline(outline)).toBe(outline);
  });

  it('is refused where it crosses itself, and where nothing is left behind the cabin', () => {
    expect(ownFault(ownFrom(panelVan))).toBeNull();
    const bow = edgeOf([0, 0], [2, 1], [2, 0], [0, 1]);
    expect(ownFault({ ...ownFrom(panelVan), edge: bow })).toBe('crosses');
    expect(ownFault({ ...ownFrom(panelVan), cabM: 3.4 })).toBe('bayTooLong');
    expect(ownFault({ ...ownFrom(panelVan), cabM: 3.39 })).toBeNull();
    expect(ownFault({ ...ownFrom(bench), bayM: 2.4 })).toBe('bayTooLong');
  });

  it.each([
    ['a square', edgeOf([0, 0], [1, 0], [1, 1], [0, 1]), false],
    ['a triangle', edgeOf([0, 0], [1, 0], [0, 1]), false],
    ['an L', edgeOf([0, 0], [2, 0], [2, 1], [1, 1], [1, 2], [0, 2]), false],
    ['a corner in a straight side', edgeOf([0, 0], [1, 0], [2, 0], [2, 1], [0, 1]), false],
    ['two corners in one place', edgeOf([0, 0], [1, 0], [1, 0], [0, 1]), true],
    ['a side back over its neighbour', edgeOf([0, 0], [2, 0], [1, 0], [1, 1]), true],
    ['the last side back over the first', edgeOf([0, 0], [1, 0], [1, 1], [2, 0]), true],
    ['a corner on another side', edgeOf([0, 0], [2, 0], [2, 2], [1, 0], [0, 2]), true],
    ['nothing but a line', edgeOf([0, 0], [1, 0], [2, 0]), true],
  ])('%s crosses itself or does not', (_, edge, crosses) => {
    expect(crossesItself(edge)).toBe(crosses);
    expect(crossesItself(edge.toReversed())).toBe(crosses);
  });
});
