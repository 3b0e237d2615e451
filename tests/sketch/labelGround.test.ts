import fc from 'fast-check';
import { expect, it } from 'vitest';
import { flatOf } from '../../src/drawing/runs.ts';
import type { RunShape } from '../../src/drawing/shapes.ts';
import { type Box, groundOf } from '../../src/sketch/labelGround.ts';

/** A camera through which a metre is a pixel, and the corner of the sheet the corner of the pane. */
const SIZE = { widthPx: 400, heightPx: 300 };
const CAMERA = { sheetId: 'sheet', pxPerM: 1, centreXM: 200, centreYM: 150 };

type Place = readonly [x: number, y: number];

const crosses = (a: Place, b: Place, box: Box): boolean => {
  const run: RunShape = {
    runId: 'run',
    kind: 'power',
    points: flatOf([a, b].map(([xM, yM]) => ({ xM, yM }))),
    stroke: { colour: 'positive', widthPx: 4, dashPx: [] },
    casing: { colour: 'casing', widthPx: 8, dashPx: [] },
  };
  return groundOf({ fittings: [], runs: [run], hazards: [] }, CAMERA, SIZE, 1).isCrossed(box);
};

/** By how much the deepest of many points of the segment lies within the box, px; below zero when it lies outside. */
function deepestPx([ax, ay]: Place, [bx, by]: Place, box: Box): number {
  const depths = Array.from({ length: 2_001 }, (_, step) => {
    const [x, y] = [ax + ((bx - ax) * step) / 2_000, ay + ((by - ay) * step) / 2_000];
    return Math.min(box.w / 2 - Math.abs(x - box.x), box.h / 2 - Math.abs(y - box.y));
  });
  return Math.max(...depths);
}

const place = fc.tuple(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 0, max: 300 }));
const box = fc.record({
  x: fc.integer({ min: 0, max: 400 }),
  y: fc.integer({ min: 0, max: 300 }),
  w: fc.integer({ min: 2, max: 160 }),
  h: fc.integer({ min: 2, max: 60 }),
});

it('a cable crosses a box where points of it lie within, and only there', () => {
  // half a pixel is what the steps of the search may miss
  fc.assert(
    fc.property(place, place, box, (a, b, around) => {
      const depthPx = deepestPx(a, b, around);
      fc.pre(Math.abs(depthPx) > 0.5);
      expect(crosses(a, b, around)).toBe(depthPx > 0);
    }),
    { numRuns: 400, seed: 20261127 },
  );
});

it.each<[what: string, a: Place, b: Place, isCrossed: boolean]>([
  ['level through it', [0, 100], [400, 100], true],
  ['upright through it', [100, 0], [100, 300], true],
  ['beginning and ending within', [95, 98], [105, 102], true],
  ['a point within', [100, 100], [100, 100], true],
  ['level above it', [0, 85], [400, 85], false],
  ['past its corner', [60, 100], [100, 60], false],
  ['ending before it', [0, 100], [70, 100], false],
])('a cable %s', (_what, a, b, isCrossed) => {
  expect(crosses(a, b, { x: 100, y: 100, w: 40, h: 20 })).toBe(isCrossed);
});
