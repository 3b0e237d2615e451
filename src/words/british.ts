/** British English: the same sentences, with the words that differ. A name the user gave stays as it was given. */
import type { Language } from './language.ts';

/** Each stands for its plural too; an instrument is a tester in both, so that a meter is always a length. */
const BRITISH: Readonly<Record<string, string>> = {
  aluminum: 'aluminium',
  'battery is dead': 'battery is flat',
  center: 'centre',
  color: 'colour',
  fender: 'wing',
  firewall: 'bulkhead',
  gray: 'grey',
  hood: 'bonnet',
  jewelry: 'jewellery',
  labeled: 'labelled',
  liter: 'litre',
  meter: 'metre',
  'positive ground': 'positive earth',
  sedan: 'saloon',
  'station wagon': 'estate',
  summarized: 'summarised',
  toward: 'towards',
  wrench: 'spanner',
};

const AMERICAN = new RegExp(`\\b(${Object.keys(BRITISH).join('|')})(?=s?\\b)`, 'gi');

/** Stands in a word of the user's own so that it is not taken for one of ours; U+2060 shows nothing and is taken out again. */
const JOINER = '\u2060';

const capitalAs = (like: string, word: string): string =>
  /^[A-Z]/.test(like) ? word.charAt(0).toUpperCase() + word.slice(1) : word;

const keep = (text: string): string => text.replace(AMERICAN, (word) => word.charAt(0) + JOINER + word.slice(1));
const replaced = (text: string): string =>
  text.replace(AMERICAN, (word) => capitalAs(word, BRITISH[word.toLowerCase()] ?? word)).replaceAll(JOINER, '');

type Tree = string | ((...args: readonly unknown[]) => unknown) | { readonly [key: string]: unknown };
const isTree = (value: unknown): value is Tree =>
  typeof value === 'string' || typeof value === 'function' || (typeof value === 'object' && value !== null);

/** The same value with every text in it changed; in a function, what it takes changed one way and what it gives the other. */
function mapped(value: unknown, give: (text: string) => string, take: (text: string) => string): unknown {
  if (!isTree(value)) return value;
  if (typeof value === 'string') return give(value);
  if (Array.isArray(value)) return value.map((member) => mapped(member, give, take));
  if (typeof value === 'function') {
    return (...args: readonly unknown[]) => mapped(value(...args.map((arg) => mapped(arg, take, give))), give, take);
  }
  return Object.fromEntries(Object.entries(value).map(([key, member]) => [key, mapped(member, give, take)]));
}

function inBritish<T>(english: T): T;
function inBritish(english: unknown): unknown {
  return mapped(english, replaced, keep);
}

export const british: Language = {
  first: (english) => ({ ...inBritish(english), locale: 'en-GB' }),
  answer: inBritish,
  later: inBritish,
};
