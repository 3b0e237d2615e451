/** Every sentence and label a person reads. */
import type { Assessment, Finding } from '../assess/answer.ts';
import type { FittingKind, Plan, Run } from '../plan/schema.ts';
import { en } from './en.ts';
import { defaultNameIn, runTitleIn, titleOfIdIn } from './names.ts';
import { toldOf } from './told.ts';
import { type Units, unitsOf } from './units.ts';

/** What a language consists of: whatever English says, another has to say too. */
export type Words = typeof en;

export const words: Words = en;

/** A name in the user's own spelling may begin a sentence. */
const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What is wrong: the bare sentence. */
export function bareSentenceOf(finding: Finding, plan: Plan): string {
  return capitalised(words.findings.findings[finding.rule].sentence(toldOf(finding, plan, words)));
}

/** What qualifies the verdict: a drawn length, an assumption; '' when nothing does. */
export function qualifierOf(finding: Finding, plan: Plan): string {
  const { findings } = words;
  const tape = finding.provisional ? findings.provisional : '';
  const names = finding.decidedBy.map((path) => words.assumption(path, (id) => nameOfId(plan, id)));
  return [tape, findings.decidedBy(names)].filter((part) => part !== '').join(' ');
}

/** What is wrong, with what qualifies the verdict. */
export function sentenceOf(finding: Finding, plan: Plan): string {
  return [bareSentenceOf(finding, plan), qualifierOf(finding, plan)].filter((part) => part !== '').join(' ');
}

/** What to do about it. */
export function remedyOf(finding: Finding, plan: Plan): string {
  return capitalised(words.findings.findings[finding.rule].remedy(toldOf(finding, plan, words)));
}

/** The verdict in one line. */
export const headlineOf = (answer: Assessment): string => words.headline.headline(answer.headline, answer.ruleSet);

/** What the plan does not tell, in one line; '' when it tells all. */
export const notToldOf = (answer: Assessment): string => words.headline.notTold(answer.notTold);

/** What was not checked, in one line; '' when all was. */
export const notCheckedOf = (answer: Assessment): string => words.headline.notChecked(answer.rulesNotChecked);

export const defaultName = (kind: FittingKind, plan: Plan): string => defaultNameIn(words.fittings, kind, plan);

/** What a run is called: its own name, else its ends: 'Battery to main fuse'. */
export const runTitle = (plan: Plan, run: Run): string => runTitleIn(words.fittings, plan, run);

/** The title of a fitting or run, or null when the plan does not hold it. */
export const nameOfId = (plan: Plan, id: string): string | null => titleOfIdIn(words.fittings, plan, id);

const unitsKnown = new Map<string, Units>();

/** Figures as this plan's settings want them shown. */
export function unitsFor(plan: Plan): Units {
  const { showLength } = plan.settings;
  const known = unitsKnown.get(showLength);
  if (known !== undefined) return known;
  const units = unitsOf(showLength, words.locale);
  unitsKnown.set(showLength, units);
  return units;
}

export type { Units } from './units.ts';
