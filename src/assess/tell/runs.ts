import { gauge } from '../../calc/conductor/gauge.ts';
import type { Plan, Run } from '../../plan/schema.ts';
import type { RunAnswer } from '../answer.ts';
import { cableAmpacityA, fixedGauge } from '../capacity.ts';
import type { Cable } from '../circuit.ts';
import { cableDropV } from '../drop.ts';
import { type Facts, fullOf, sizeOf } from '../facts.ts';
import { lengthOf } from '../length.ts';
import { per } from '../perModel.ts';
import { heatingShareAt } from '../states.ts';
import { cableAmpacityWhy, cableDropWhy, sizeWhy, worstPoint } from '../whys/cable.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { lengthWhy } from '../whys/length.ts';

type Lengths = Pick<RunAnswer, 'runId' | 'length' | 'whyLength'>;

function lengthsOf(plan: Plan, run: Run, book: WhyBook): Lengths {
  const whyLength = book.file(`length:${run.id}`, () => lengthWhy(plan, run));
  return { runId: run.id, length: lengthOf(plan, run), whyLength };
}

/** A remote lead, or a run that ends at no power terminal: a length and nothing else. */
const withoutPower = (lengths: Lengths): RunAnswer => ({
  ...lengths,
  gauge: null,
  chosen: false,
  governs: null,
  smallest: null,
  areaMm2: null,
  fullA: null,
  heatingA: null,
  ampacityA: null,
  conductorC: null,
  dropV: null,
  dropPercent: null,
  limitA: null,
  unprotectedM: 0,
  whySize: null,
  whyDrop: null,
  whyAmpacity: null,
});

/** Hottest stretch of a cable over the states, degC; null where it settles at no temperature or none can be told. */
function conductorC({ operating }: Facts, index: number): number | null {
  let hottestC: number | null = null;
  for (const { stretchC } of operating?.states ?? []) {
    for (const held of stretchC[index] ?? []) {
      if (held === null) return null;
      hottestC = Math.max(hottestC ?? held, held);
    }
  }
  return hottestC;
}

type LotAnswer = Facts['choice']['lots'][number];

const lotsByCable = per(
  ({ lots }: Facts['choice']) => new Map(lots.flatMap((lot) => lot.cables.map((cable) => [cable, lot] as const))),
);

const bareCables = per((unprotected: Facts['unprotected']) => new Set(unprotected.flatMap(({ cables }) => cables)));

function cableAnswer(facts: Facts, cable: Cable, index: number, lengths: Lengths, book: WhyBook): RunAnswer {
  const { model, choice, limits, unprotected } = facts;
  const size = sizeOf(facts, index);
  const isFixed = fixedGauge(cable) !== null;
  const lot = lotsByCable(choice).get(index);
  const told = size === null ? null : fullOf(facts, index);
  const point = told === null ? null : worstPoint(facts, index);
  const dropV = point === null ? null : cableDropV(point, index);
  const limitA = limits[index] ?? Infinity;
  const { id } = cable.run;
  const answer: RunAnswer = {
    runId: id,
    length: lengths.length,
    whyLength: lengths.whyLength,
    gauge: size,
    chosen: !isFixed,
    governs: 'fixed',
    smallest: null,
    areaMm2: size === null ? null : gauge(size).areaMm2,
    fullA: told,
    heatingA: told === null ? null : told * heatingShareAt(model, index),
    ampacityA: size === null ? null : cableAmpacityA(model, cable, size),
    conductorC: told === null ? null : conductorC(facts, index),
    dropV,
    dropPercent: dropV === null ? null : (100 * dropV) / model.settings.systemV,
    limitA: limitA === Infinity || limitA === 0 ? null : limitA,
    unprotectedM: bareCables(unprotected).has(index) ? cable.length.lengthM : 0,
    whySize: size === null ? null : book.file(`size:${id}`, () => sizeWhy(facts, cable, index, size, lot)),
    whyDrop:
      size === null || point === null
        ? null
        : book.file(`drop:${id}`, () => cableDropWhy(facts, cable, index, size, point)),
    whyAmpacity: size === null ? null : book.file(`ampacity:${id}`, () => cableAmpacityWhy(model, cable, size)),
  };
  return isFixed ? answer : withChoice(answer, lot);
}

/** What bound the choice of a size is worked out when it is first read: to whoever reads or prints the answer it is a plain object. */
const withChoice = (answer: RunAnswer, lot: LotAnswer | undefined): RunAnswer => ({
  ...answer,
  get governs() {
    return lot?.governs ?? null;
  },
  get smallest() {
    return lot?.smallest ?? null;
  },
});

/** An answer for every run of the plan, in its order. */
export function tellRuns(facts: Facts, book: WhyBook): RunAnswer[] {
  const { plan, circuit } = facts.model;
  const indexOf = new Map(circuit.cables.map(({ run }, index) => [run.id, index]));
  return plan.runs.map((run) => {
    const lengths = lengthsOf(plan, run, book);
    const index = indexOf.get(run.id);
    const cable = circuit.cables[index ?? -1];
    return index === undefined || cable === undefined
      ? withoutPower(lengths)
      : cableAnswer(facts, cable, index, lengths, book);
  });
}
