/** The answer to a plan: what it needs, what is wrong with it, and why. */
import type { Plan } from '../plan/schema.ts';
import type { Assessment } from './answer.ts';
import { chooseSizes } from './choose/choose.ts';
import { factsOf } from './facts.ts';
import { buildModel } from './model.ts';
import { once } from './perModel.ts';
import { RULES } from './rules/index.ts';
import { tellShorts } from './short/tell.ts';
import { tellSupply } from './supply/tell.ts';
import { fittingZone, stretchesOf } from './surroundings.ts';
import { tellAmplifiers } from './tell/amplifiers.ts';
import { tellAssumptions, tellNotTold } from './tell/assumptions.ts';
import { tellFigures } from './tell/figures.ts';
import { tellFindings, tellHeadline } from './tell/findings.ts';
import { tellFuses } from './tell/fuses.ts';
import { tellRuns } from './tell/runs.ts';
import { tellSources } from './tell/sources.ts';
import { strictestOn } from './unprotectedVerdict.ts';
import { WhyBook } from './whys/lazy.ts';
import { worstDrop } from './worstDrop.ts';

type Facts = ReturnType<typeof factsOf>;

/** The state that sizes: the one in which some amplifier's cables lose most; at rest where nothing can be told. */
function sizingState(facts: Facts): Assessment['sizingState'] {
  const worst = facts.model.circuit.loads
    .flatMap((_, load) => worstDrop(facts, load) ?? [])
    .sort((one, other) => other.feedV + other.backV - one.feedV - one.backV)[0];
  return worst?.point.state ?? (facts.model.settings.engineAlwaysRunning ? 'charging' : 'rest');
}

/** The zone of every fitting, and of every run the one with the hottest air it passes. */
function zonesOf(plan: Plan): Assessment['zones'] {
  const { settings } = plan;
  return Object.fromEntries([
    ...plan.fittings.map((fitting) => [fitting.id, fittingZone(plan, fitting)] as const),
    ...plan.runs.map((run) => {
      const zones = stretchesOf(plan, run, 1).map(({ zone }) => zone);
      const hottest = zones.reduce((hot, zone) =>
        settings[`${zone}C`].value > settings[`${hot}C`].value ? zone : hot,
      );
      return [run.id, hottest] as const;
    }),
  ]);
}

/** Everything worked out of a plan, for what is asked of it one thing at a time: a short slid along a cable, its curves. */
export function factsOfPlan(plan: Plan): Facts {
  const model = buildModel(plan);
  return factsOf(model, chooseSizes(model));
}

/** Assesses a plan. Pure and deterministic: the same plan gives the same answer. Never throws on a plan that opens. */
export function assess(plan: Plan): Assessment {
  const facts = factsOfPlan(plan);
  const { model, choice } = facts;
  const book = new WhyBook();
  const runs = tellRuns(facts, book);
  const fuses = tellFuses(facts, book);
  const amplifiers = tellAmplifiers(facts, book);
  const sources = tellSources(facts, book);
  const shorts = tellShorts(facts, book);
  const supply = tellSupply(facts, book);
  const findings = tellFindings(facts, book);
  // not every figure is looked at while a finger drags: to whoever reads or prints the answer it is a plain object
  const assumptions = once(() => tellAssumptions(facts));
  const zones = once(() => zonesOf(plan));
  return {
    planId: plan.id,
    ruleSet: plan.settings.ruleSet,
    headline: tellHeadline(facts, findings),
    notTold: tellNotTold(facts),
    figures: tellFigures(facts, { runs, fuses, amplifiers, sources }),
    findings,
    runs,
    fuses,
    amplifiers,
    sources,
    supply,
    shorts,
    sizingState: sizingState(facts),
    leastCopperProven: choice.proven,
    get assumptions() {
      return assumptions();
    },
    rulesChecked: RULES.map(({ id }) => id),
    rulesNotChecked: model.circuit.alternators.length === 0 ? [{ rule: 'charging', why: 'noAlternator' }] : [],
    get whys() {
      return book.all();
    },
    strictest: strictestOn(facts.unprotected.flatMap(({ ways }) => ways)),
    get zones() {
      return zones();
    },
  };
}
