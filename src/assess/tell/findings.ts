import { leastBendWhy } from '../../calc/conductor/dimensions.ts';
import { isTaped } from '../../plan/drawnLength.ts';
import type { Assessment, Finding, Severity } from '../answer.ts';
import { drawnRunsThatDecide } from '../drawnDrop.ts';
import { type Facts, sizeOf } from '../facts.ts';
import { RULES } from '../rules/index.ts';
import { rankOf } from '../unprotectedVerdict.ts';
import { heatingWhy } from '../whys/cable.ts';
import type { WhyBook } from '../whys/lazy.ts';
import { workingShare } from '../workingShare.ts';
import { flippedBy } from './flips.ts';

/** The derivation of a temperature that a finding names: no run has one of its own. */
function fileHeating(facts: Facts, { rule, why, places, params: { currentA } }: Finding, book: WhyBook): void {
  if (rule !== 'heating' || why === null || typeof currentA !== 'number') return;
  const cable = facts.model.circuit.cables.findIndex(({ run }) => run.id === places[0]?.id);
  const size = sizeOf(facts, cable);
  if (size === null) return;
  book.file(why, () => heatingWhy(facts, cable, size, currentA));
}

/** The derivation of a least bend radius. */
function fileBend({ rule, why, params: { outsideMm } }: Finding, book: WhyBook): void {
  if (rule !== 'bend-too-tight' || why === null || typeof outsideMm !== 'number') return;
  book.file(why, () => leastBendWhy(outsideMm, 'nec', { outsideMm: { source: 'outsideDerived' } }));
}

/** What works of an output that cannot be carried: told of the plan as it is, and not worked out for every trial. */
function withWorkingShare(facts: Facts, one: Finding): Finding {
  if (one.rule !== 'cannot-carry') return one;
  const { cutOutV } = facts.model.settings;
  return { ...one, params: { ...one.params, workingPercent: 100 * workingShare(facts), cutOutV: cutOutV.value } };
}

/** All findings, gravest first and otherwise in the order of the rules; each says which assumption decides it. */
export function tellFindings(facts: Facts, book: WhyBook): Finding[] {
  const found = RULES.flatMap((rule) => rule.check(facts));
  const { decided, looming } = flippedBy(facts, found);
  // what one finding tells for several places needs no second word on one of them
  const isTold = new Set(found.flatMap(({ rule, places }) => places.map(({ id }) => `${rule}:${id}`)));
  const all = [
    ...found.map((one) => ({ ...withWorkingShare(facts, one), decidedBy: decided.get(one.id) ?? [] })),
    ...looming.filter(({ id }) => !isTold.has(id)),
  ];
  all.sort((one, other) => rankOf(other.severity) - rankOf(one.severity));
  for (const one of all) {
    fileHeating(facts, one, book);
    fileBend(one, book);
  }
  return all.map((one) => (one.why === null || book.has(one.why) ? one : { ...one, why: null }));
}

/** The verdict: what is gravest, and how many; else how many lengths a limit hangs on that are drawn, or taped by a slip. */
export function tellHeadline(facts: Facts, findings: readonly Finding[]): Assessment['headline'] {
  const { model } = facts;
  const count = (severity: Severity): number => findings.filter((one) => one.severity === severity).length;
  if (count('stop') > 0) return { kind: 'stop', count: count('stop') };
  if (count('fix') > 0) return { kind: 'fix', count: count('fix') };
  const isDrawn = new Set(model.plan.runs.filter((run) => !isTaped(run)).map(({ id }) => id));
  const toTape = new Set([
    ...findings
      .filter(({ provisional }) => provisional)
      .flatMap(({ rule, places }) =>
        places.map(({ id }) => id).filter((id) => isDrawn.has(id) || rule === 'tape-doubtful'),
      ),
    ...model.circuit.loads.flatMap((_, load) => drawnRunsThatDecide(facts, load)),
  ]);
  if (toTape.size > 0) return { kind: 'provisional', count: toTape.size };
  // without an amplifier there is no feed to find anything against
  return { kind: model.circuit.loads.length === 0 ? 'empty' : 'nothing', count: 0 };
}
