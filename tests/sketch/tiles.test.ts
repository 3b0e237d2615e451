import fc from 'fast-check';
import { expect, it } from 'vitest';
import { overlap } from '../../src/sketch/labelGround.ts';
import { Tiles } from '../../src/sketch/tiles.ts';

const box = fc.record({
  x: fc.integer({ min: -400, max: 1400 }),
  y: fc.integer({ min: -400, max: 1200 }),
  w: fc.integer({ min: 0, max: 900 }),
  h: fc.integer({ min: 0, max: 700 }),
});

it('tiles find what a look at everything finds, inside the pane, over its edge and outside', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 60 }), fc.array(box, { maxLength: 20 }), (things, asked) => {
      const tiles = new Tiles<(typeof things)[number]>({ widthPx: 1000, heightPx: 800 });
      for (const thing of things) tiles.add(thing, thing);
      for (const here of asked)
        expect(tiles.some(here, (thing) => overlap(here, thing))).toBe(things.some((thing) => overlap(here, thing)));
    }),
    { numRuns: 300, seed: 20261126 },
  );
});
