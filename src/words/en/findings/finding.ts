import type { RuleId } from '../../../assess/answer.ts';
import type { Told } from '../../told.ts';
import { terminalOf } from '../fittings.ts';

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

/** How the figures of several places are told: those of the first by their name, those of the others numbered. */
export const ofPlace = (name: string, index: number): string => (index === 0 ? name : `${name}${index}`);

/** The fuse a finding is about: a fitting, or one output of a block. */
export function fuseAtPlace(told: Told, index = 0): string {
  const terminal = told.text(ofPlace('terminal', index));
  return terminal === null ? told.place(index) : terminalOf(told.place(index), terminal);
}

/** A voltage that something is made for, as it stands on the label: '12 V', not '12.00 V'. */
export function volts(told: Told, name: string, otherwise: string): string {
  const value = told.number(name);
  return value === null ? otherwise : `${value} V`;
}
