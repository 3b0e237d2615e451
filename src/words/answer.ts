/** What is said about the answer: verdict, findings, remedies. */
import type { Assessment, Finding } from '../assess/answer.ts';
import type { LinkFamily, Plan } from '../plan/schema.ts';
import { enAnswer } from './enAnswer.ts';
import { words as first, nameOfId } from './index.ts';
import { hear, type Said } from './language.ts';
import { familyNameIn } from './names.ts';
import './placedNames.ts';
import { toldOf } from './told.ts';

/** What a language says about an answer; complete like Words. */
export type AnswerWords = Said<typeof enAnswer>;

const withFirst = (answer: AnswerWords) => ({ ...first, ...answer });

export let words = withFirst(enAnswer);

hear((language) => {
  words = withFirst(language.answer(enAnswer));
});

/** A name in the user's own spelling may begin a sentence. */
export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What is wrong: the bare sentence. */
export function bareSentenceOf(finding: Finding, plan: Plan): string {
  const sentence = capitalised(words.findings.findings[finding.rule].sentence(toldOf(finding, plan, words)));
  return finding.looming === true ? words.findings.looming(assumedIn(finding, plan), sentence) : sentence;
}

/** The assumptions that a finding hangs on, by name. */
const assumedIn = ({ decidedBy }: Finding, plan: Plan): string[] =>
  decidedBy.map((path) => words.assumption(path, (id) => nameOfId(plan, id)));

/** What qualifies the verdict: a drawn length, an assumption; '' when nothing does. */
export function qualifierOf(finding: Finding, plan: Plan): string {
  const { findings } = words;
  // what to do about a doubted tape says so itself
  const tape = finding.provisional && finding.rule !== 'tape-doubtful' ? findings.provisional : '';
  // one that looms says so itself
  const decided = finding.looming === true ? '' : findings.decidedBy(assumedIn(finding, plan));
  return [tape, decided].filter((part) => part !== '').join(' ');
}

/** What is wrong, with what qualifies the verdict. */
export function sentenceOf(finding: Finding, plan: Plan): string {
  return [bareSentenceOf(finding, plan), qualifierOf(finding, plan)].filter((part) => part !== '').join(' ');
}

/** What to do about it. */
export function remedyOf(finding: Finding, plan: Plan): string {
  return capitalised(words.findings.findings[finding.rule].remedy(toldOf(finding, plan, words)));
}

/** The verdict in one line; of the plan, where it is begun, that there is no answer yet for another reason. */
export function headlineOf({ headline, ruleSet }: Assessment, plan?: Plan): string {
  if (headline.kind !== 'empty' || plan === undefined || plan.fittings.length === 0)
    return words.headline.headline(headline, ruleSet);
  return plan.runs.length === 0 ? words.headline.nothingJoined : words.headline.nothingFed;
}

/** What the plan does not tell, in one line; '' when it tells all. */
export const notToldOf = (answer: Assessment): string => words.headline.notTold(answer.notTold);

/** What was not checked, in one line; '' when all was. */
export const notCheckedOf = (answer: Assessment): string => words.headline.notChecked(answer.rulesNotChecked);

/** What a family of links is called; one of the user's own by the name it was given. */
export const familyName = (plan: Plan, family: LinkFamily): string => familyNameIn(words.fittings, plan, family);
