import type { RuleId } from '../../../assess/answer.ts';
import type { Told } from '../../told.ts';

/** What is wrong, and what to do about it: one plain sentence each. */
interface FindingWords {
  sentence(told: Told): string;
  remedy(told: Told): string;
}

export type FindingTable<Rule extends RuleId> = Readonly<Record<Rule, FindingWords>>;

/** Joins what is there: a figure that was not told leaves no hole in the sentence. */
export const said = (...parts: readonly string[]): string => parts.filter((part) => part !== '').join(' ');

/** ' of 0.36 V' when there is something to say, else ''. */
export const after = (before: string, figure: string): string => (figure === '' ? '' : `${before} ${figure}`);
