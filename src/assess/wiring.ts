/** How sources are joined to one another and to the body, before any load: as planned for, or in a way of its own. */
import { sharedPassThroughs } from './groups.ts';
import type { Model } from './model.ts';
import { perModel } from './perModel.ts';
import { partsOf } from './sides.ts';

type Wiring =
  | { readonly kind: 'plain' }
  /** A positive finds its own negative, at once or through others, with no load between. */
  | { readonly kind: 'short' }
  /** It does so only because a pass-through joins all runs drawn to it; the nodes of those that do. */
  | { readonly kind: 'sharedPassThrough'; readonly nodes: readonly number[] }
  /** Sources stacked on one another: `count` times the voltage between the ends. */
  | { readonly kind: 'series'; readonly sources: readonly number[]; readonly count: number }
  /** Every source has its positive at the body and its negative off it. */
  | { readonly kind: 'positiveEarth' };

interface Levels {
  /** By source: the parts its posts are in. */
  readonly posts: readonly { readonly plus: number; readonly minus: number }[];
  /** By part that a source stands on: how many sources above the lowest; null where that is no one number. */
  readonly levelOf: ReadonlyMap<number, number> | null;
  readonly bodyPart: number;
}

/** Each source lifts its positive one step over its negative: levels that contradict one another are a short. */
function levelsOf({ circuit, sides }: Model, without: ReadonlySet<number>): Levels {
  const parts = partsOf(sides, ({ a, b }) => !without.has(a) && !without.has(b));
  const posts = circuit.sources.map(({ plus, minus }) => ({ plus: parts[plus] ?? -1, minus: parts[minus] ?? -1 }));
  const bodyPart = parts[circuit.body] ?? -1;
  const levelOf = new Map<number, number>();
  for (const { minus: start } of posts) {
    if (levelOf.has(start)) continue;
    const found = new Map([[start, 0]]);
    for (const [part, level] of found) {
      for (const { plus, minus } of posts) {
        if (minus === part && !found.has(plus)) found.set(plus, level + 1);
        if (plus === part && !found.has(minus)) found.set(minus, level - 1);
      }
    }
    const lowest = Math.min(...found.values());
    for (const [part, level] of found) levelOf.set(part, level - lowest);
  }
  const agrees = posts.every(({ plus, minus }) => levelOf.get(plus) === (levelOf.get(minus) ?? 0) + 1);
  return { posts, levelOf: agrees ? levelOf : null, bodyPart };
}

/**
 * Two batteries side by side are plain; the positive of one on the negative of the other, which is joined to nothing
 * else, is series, count 2; with a strap from that negative to the body it is a short.
 */
export const wiringOf = perModel((model): Wiring => {
  const { posts, levelOf, bodyPart } = levelsOf(model, new Set());
  if (levelOf === null) {
    const shared = sharedPassThroughs(model).map(({ node }) => node);
    const isShort = (without: readonly number[]): boolean => levelsOf(model, new Set(without)).levelOf === null;
    if (shared.length === 0 || isShort(shared)) return { kind: 'short' };
    const alone = shared.filter((node) => isShort(shared.filter((other) => other !== node)));
    return { kind: 'sharedPassThrough', nodes: alone.length > 0 ? alone : shared };
  }
  const count = Math.max(0, ...levelOf.values());
  if (count > 1) {
    const stacked = (part: number, end: 'plus' | 'minus'): boolean => posts.some((other) => other[end] === part);
    const sources = [...posts.keys()].filter((source) => {
      const { plus, minus } = posts[source] ?? { plus: -1, minus: -1 };
      return stacked(plus, 'minus') || stacked(minus, 'plus');
    });
    return { kind: 'series', sources, count };
  }
  const isPositiveEarth = posts.length > 0 && posts.every(({ plus, minus }) => plus === bodyPart && minus !== bodyPart);
  return { kind: isPositiveEarth ? 'positiveEarth' : 'plain' };
});
