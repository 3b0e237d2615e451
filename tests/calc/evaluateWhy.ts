import { compile, type EvalFunction } from 'mathjs';
import { SOURCES } from '../../src/calc/sources.ts';
import type { Why } from '../../src/calc/why.ts';

const ascending = (list: readonly number[]): number[] => [...list].sort((one, other) => one - other);

/** The two functions of our own that an expression may use, written here apart from the ones in src. */
const NAMED = {
  smallestAtLeast: (list: readonly number[], x: number) => ascending(list).find((member) => member >= x),
  largestAtMost: (list: readonly number[], x: number) => ascending(list).findLast((member) => member <= x),
};

const compiled = new Map<string, EvalFunction>();

/** An expression read once: the same few hundred come up in every answer. */
function codeOf(expression: string): EvalFunction {
  const code = compiled.get(expression) ?? compile(expression);
  compiled.set(expression, code);
  return code;
}

const close = (one: number, other: number): boolean =>
  Math.abs(one - other) <= 1e-14 + 1e-9 * Math.max(Math.abs(one), Math.abs(other));

/**
 * Works a why out again from its inputs and expressions alone, with a general evaluator, and returns the figure.
 * Throws where a step shows another value than its expression gives, uses a symbol not yet shown, or names no source known.
 */
export function evaluateWhy(why: Why): number {
  const shown = new Map<string, number | readonly number[]>();
  for (const { symbol, value, expression, source } of why.steps) {
    if (shown.has(symbol)) throw new Error(`${symbol} is shown twice`);
    if (source !== undefined && !(source in SOURCES)) throw new Error(`${symbol}: no source '${source}'`);
    if (expression === undefined) {
      shown.set(symbol, value);
      continue;
    }
    const worked: unknown = codeOf(expression).evaluate({ ...NAMED, ...Object.fromEntries(shown) });
    if (typeof worked !== 'number' || typeof value !== 'number' || !close(worked, value)) {
      throw new Error(`${symbol} = ${expression} gives ${String(worked)}, shown ${String(value)}`);
    }
    // Carrying the worked value on, not the shown one, lets no error hide in a later step.
    shown.set(symbol, worked);
  }
  const figure = shown.get(why.result);
  if (typeof figure !== 'number') throw new Error(`the result '${why.result}' is no figure`);
  return figure;
}
