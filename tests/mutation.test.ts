import { describe, expect, it } from 'vitest';
import { instrumented, type Mutant, mutantsOf } from './mutation/mutants.ts';

/** What f gives with one mutant on, or none, over some arguments; every round of a loop is counted. */
function results(text: string, mutants: readonly Mutant[], on: number | null, args: readonly number[]): unknown[] {
  const code = instrumented(
    'f.ts',
    text,
    mutants.map((mutant, number) => ({ number, mutant })),
  );
  const board = { on: (number: number) => number === on, tick: () => undefined };
  const f = new Function('MUTATION', `${code}; return f;`)(board) as (argument: number) => unknown;
  return args.map((argument) => f(argument));
}

const SAMPLES: readonly (readonly [text: string, expected: readonly string[]])[] = [
  [
    'const f = (a) => (a < 3 ? a + 1 : 0);',
    [
      'boundary | a < 3 -> (a) <= (3)',
      'comparison | a < 3 -> true',
      'comparison | a < 3 -> false',
      'number | 3 -> 4',
      'arithmetic | a + 1 -> (a) - (1)',
      'number | 1 -> 2',
      'number | 0 -> 1',
    ],
  ],
  ['const f = (a) => Math.max(a, 0.5);', ['call | Math.max(a, 0.5) -> Math.min(a, 0.5)', 'number | 0.5 -> 0.505']],
  [
    'function f(a) { let sum = 0; for (const each of [a, 2]) sum += each; return sum; }',
    [
      'number | 0 -> 1',
      'number | 2 -> 3',
      'removed | sum += each -> void 0',
      'assignment | sum += each -> sum -= each',
    ],
  ],
  ['const f = (a) => a ?? -a;', ['logic | a ?? -a -> (a) && (-a)', 'fallback | a ?? -a -> a', 'sign | -a -> a']],
];

describe('mutants', () => {
  it.each(SAMPLES)('of %s', (text, expected) => {
    const mutants = mutantsOf('f.ts', text, true);
    expect(mutants.map(({ name }) => name.replace('f.ts | f | ', '')).sort()).toEqual([...expected].sort());
    expect(new Set(mutants.map(({ name }) => name)).size).toBe(mutants.length);
  });

  it.each(SAMPLES)('compiled in change nothing until they are switched on, and then what they say: %s', (text) => {
    const args = [-1, 0, 2, 3, 4];
    const plain = results(text, [], null, args);
    const mutants = mutantsOf('f.ts', text, true);
    expect(results(text, mutants, null, args)).toEqual(plain);
    for (const [number, { start, end, replacement }] of mutants.entries()) {
      const byHand = `${text.slice(0, start)}(${replacement})${text.slice(end)}`;
      expect(results(text, mutants, number, args)).toEqual(results(byHand, [], null, args));
    }
  });

  it('of what the checker alone reads, of names and of texts there are none', () => {
    const text = "import { b } from './b.ts'; type T = 1 | 2; const f = (a: T): 'x' => ({ k: 'x' as const }).k;";
    expect(mutantsOf('f.ts', text, true)).toEqual([]);
    expect(mutantsOf('f.ts', 'const f = () => 3;', false)).toEqual([]);
  });
});
