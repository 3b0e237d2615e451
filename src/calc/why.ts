import { SOURCES, type SourceId } from './sources.ts';

/** Units a figure may be shown in. '1' is a plain ratio; degC also stands for temperature differences. */
export type Unit =
  | '1'
  | 'percent'
  | 'm'
  | 'mm'
  | 'mm2'
  | 'ohm'
  | 'mohm'
  | 'ohmM'
  | 'ohmPerM'
  | 'V'
  | 'A'
  | 'W'
  | 'degC'
  | 's'
  | 'h'
  | 'Ah'
  | 'F'
  | 'kg'
  | 'A2s'
  | 'rootA2sPerMm2'
  | 'jPerM3K'
  | 'jPerMK'
  | 'wPerMK'
  | 'kPerS'
  | 'perS'
  | 'kgPerM'
  | 'kgPerM3';

export type Origin = 'assumed' | 'told' | 'measured' | 'drawn' | 'published' | 'choice' | 'memory';

export interface WhyStep {
  readonly symbol: string;
  readonly value: number | readonly number[];
  readonly unit: Unit;
  /** Plain arithmetic over earlier symbols; absent on an input. */
  readonly expression?: string;
  readonly origin?: Origin;
  readonly source?: SourceId;
  /** Path of the editable assumption in the plan, such as 'settings.bodyOhm'. */
  readonly edit?: string;
  /** Id that the words room turns into a name; the symbol when absent. */
  readonly label?: string;
}

/** How a figure came about: inputs first, then what was worked out of them. `result` names the figure's step. */
export interface Why {
  readonly steps: readonly WhyStep[];
  readonly result: string;
}

export type About = Pick<WhyStep, 'origin' | 'source' | 'edit' | 'label'>;

/** What the caller knows about the arguments it passes: where each came from and where it can be edited. */
export type Abouts<Name extends string> = { readonly [name in Name]?: About };

const citations = new Map<SourceId, About>();

/** What to say of a figure out of a source: as trusted as the source is, and no origin for what is derived from it. */
export function cited(source: SourceId): About {
  const before = citations.get(source);
  if (before !== undefined) return before;
  const { trust } = SOURCES[source];
  const about: About = trust === 'derived' ? { source } : { origin: trust, source };
  citations.set(source, about);
  return about;
}

/** Receives a computation as it runs; each call hands its value back, so computing and recording are one act. */
export interface Recorder {
  input(symbol: string, unit: Unit, value: number, about?: About): number;
  list(symbol: string, unit: Unit, values: readonly number[], about?: About): readonly number[];
  step(symbol: string, unit: Unit, expression: string, value: number, about?: About): number;
}

export interface WhyBuilder extends Recorder {
  /** Takes over another why, each symbol with `suffix` added; returns the new name of its result. */
  include(why: Why, suffix?: string): string;
  done(result: string): Why;
}

/** Records nothing: for the figure alone, in the inner loops. */
export const NO_WHY: Recorder = {
  input: (_symbol, _unit, value) => value,
  list: (_symbol, _unit, values) => values,
  step: (_symbol, _unit, _expression, value) => value,
};

const IDENTIFIER = /[A-Za-z_][A-Za-z0-9_]*/g;

function renamed(step: WhyStep, names: ReadonlyMap<string, string>): WhyStep {
  const symbol = names.get(step.symbol) ?? step.symbol;
  const label = step.label ?? step.symbol;
  const moved = symbol === step.symbol ? step : { ...step, symbol, label };
  if (step.expression === undefined) return moved;
  return { ...moved, expression: step.expression.replace(IDENTIFIER, (name) => names.get(name) ?? name) };
}

function sameStep(one: WhyStep, other: WhyStep): boolean {
  return one.expression === other.expression && one.unit === other.unit && String(one.value) === String(other.value);
}

/**
 * Starts an empty why. A symbol recorded twice with the same meaning is kept once.
 * Throws on a symbol recorded with two meanings and on a result never recorded: both are programming errors.
 */
export function whyBuilder(): WhyBuilder {
  const steps = new Map<string, WhyStep>();
  const add = (step: WhyStep): void => {
    const before = steps.get(step.symbol);
    if (before === undefined) steps.set(step.symbol, step);
    else if (!sameStep(before, step)) throw new Error(`why: '${step.symbol}' recorded with two meanings`);
  };
  return {
    input(symbol, unit, value, about) {
      add({ symbol, value, unit, ...about });
      return value;
    },
    list(symbol, unit, values, about) {
      add({ symbol, value: values, unit, ...about });
      return values;
    },
    step(symbol, unit, expression, value, about) {
      add({ symbol, value, unit, expression, ...about });
      return value;
    },
    include(why, suffix = '') {
      const names = new Map(why.steps.map((step) => [step.symbol, step.symbol + suffix]));
      for (const step of why.steps) add(renamed(step, names));
      return why.result + suffix;
    },
    done(result) {
      if (!steps.has(result)) throw new Error(`why: result '${result}' was never recorded`);
      const all = [...steps.values()];
      const given = all.filter(({ expression }) => expression === undefined);
      const worked = all.filter(({ expression }) => expression !== undefined);
      return { steps: [...given, ...worked], result };
    },
  };
}

/** The figure a why explains. Throws when it is a list or missing. */
export function whyValue(why: Why): number {
  const step = why.steps.find(({ symbol }) => symbol === why.result);
  if (typeof step?.value !== 'number') throw new Error(`why: result '${why.result}' is not a number`);
  return step.value;
}

/** Least member of `list` that is >= x, or null. A named function of why expressions. */
export function smallestAtLeast(list: readonly number[], x: number): number | null {
  const fitting = list.filter((member) => member >= x);
  return fitting.length === 0 ? null : Math.min(...fitting);
}

/** Greatest member of `list` that is <= x, or null. A named function of why expressions. */
export function largestAtMost(list: readonly number[], x: number): number | null {
  const fitting = list.filter((member) => member <= x);
  return fitting.length === 0 ? null : Math.max(...fitting);
}
