import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Edge, reach, type Sides } from '../../src/assess/sides.ts';
import { waysOf } from '../../src/assess/ways.ts';

const NODES = 8;

/** A live side of up to 14 cables over eight nodes; posts and loads anywhere on it. */
const anyNet = fc.record({
  ends: fc.array(fc.tuple(fc.nat(NODES - 1), fc.nat(NODES - 1)), { maxLength: 14 }),
  posts: fc.uniqueArray(fc.nat(NODES - 1), { minLength: 1, maxLength: 2 }),
  loads: fc.array(fc.nat(NODES - 1), { minLength: 1, maxLength: 3 }),
});

function sidesOver(ends: readonly (readonly [number, number])[], posts: readonly number[]): Sides {
  const edges = ends.map(([a, b], index): Edge => ({ kind: 'cable', index, a, b }));
  const at = Array.from({ length: NODES }, (_, node) =>
    [...edges.keys()].filter((index) => edges[index]?.a === node || edges[index]?.b === node),
  );
  const live = reach(posts, { edges, at }, () => true);
  return { edges, at, live, back: at.map(() => false), livePart: [], backPart: [] };
}

describe('the ways of the loads', () => {
  it('are the cables without which a load loses every post, as taking each one out shows', () => {
    fc.assert(
      fc.property(anyNet, ({ ends, posts, loads }) => {
        const sides = sidesOver(ends, posts);
        const fed = loads.filter((node) => sides.live[node]);
        const ways = waysOf(
          sides,
          fed.map((plus) => ({ plus, minus: -1, fitting: {} as never })),
          { plus: posts, minus: [] },
          () => true,
        );
        for (const index of sides.edges.keys()) {
          const without = reach(posts, sides, (edge) => edge.index !== index);
          const cut = [...fed.keys()].filter((load) => without[fed[load] ?? -1] !== true);
          for (const load of fed.keys()) expect(ways.edgesOf[load]?.includes(index)).toBe(cut.includes(load));
        }
      }),
      { numRuns: 500, seed: 20260731 },
    );
  });
});
