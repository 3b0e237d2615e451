/**
 * Which language the page speaks. English is there from the start; another one comes when it is asked for and is then
 * heard by every module that holds words, whether it was loaded before or comes later.
 */
import type { Settings } from '../plan/schema.ts';
import type { AnswerWords } from './answer.ts';
import type { LaterWords } from './full.ts';
import type { Words } from './index.ts';

export type LanguageId = 'en' | 'en-GB' | 'de';

/** Each in its own language, so that it is found by who speaks it. */
export const LANGUAGE_NAMES: Readonly<Record<LanguageId, string>> = {
  en: 'English (US)',
  'en-GB': 'English (UK)',
  de: 'Deutsch',
};

/** The texts of a tree of English words in another language: the same keys, the same arguments. */
export type Said<T> = T extends string
  ? string
  : T extends (...args: infer A) => infer R
    ? (...args: A) => Said<R>
    : { readonly [K in keyof T]: Said<T[K]> };

/** A language, made from the English one or beside it. */
export interface Language {
  first(english: Words): Words;
  answer(english: AnswerWords): AnswerWords;
  later(english: LaterWords): LaterWords;
}

type Hearer = (language: Language) => void;

const english: Language = { first: (words) => words, answer: (words) => words, later: (words) => words };
const hearers = new Set<Hearer>();
let spoken = english;

/** Calls with the language now and with every later one; answers how to stop. */
export function hear(hearer: Hearer): () => void {
  hearers.add(hearer);
  hearer(spoken);
  return () => void hearers.delete(hearer);
}

function speak(language: Language): void {
  spoken = language;
  for (const hearer of hearers) hearer(language);
}

/** Speaks that language from when it has come. Rejects, and leaves the language as it is, where it cannot be loaded. */
export async function speakIn(id: LanguageId): Promise<void> {
  if (id === 'en-GB') speak((await import('./british.ts')).british);
  else if (id === 'de') speak((await import('./german.ts')).german);
  else speak(english);
}

/** Where English says bonnet and bulkhead. */
const BRITISH = /^en-(GB|IE|AU|NZ|ZA|IN)\b/;

/** What was chosen, else the first language asked for that is spoken here, else English: ['fr', 'en-AU', 'en'] gives 'en-GB'. */
export function languageFor(chosen: LanguageId | 'auto', asked: readonly string[]): LanguageId {
  if (chosen !== 'auto') return chosen;
  for (const tag of asked) {
    if (/^de\b/.test(tag)) return 'de';
    if (/^en\b/.test(tag)) return BRITISH.test(tag) ? 'en-GB' : 'en';
  }
  return 'en';
}

type Measures = Pick<Settings, 'showLength' | 'sizeSystem'>;

/**
 * How lengths and sizes of a new plan are shown: feet, inches and gauge in the United States, metres and mm² where
 * British English is spoken; English of no country keeps metres beside the gauge. Source: common practice.
 */
export function measuresFor(chosen: LanguageId | 'auto', asked: readonly string[]): Measures {
  const language = languageFor(chosen, asked);
  if (language !== 'en') return { showLength: 'm', sizeSystem: 'mm2' };
  const isAmerican = chosen === 'en' || asked.find((tag) => /^en\b/.test(tag)) === 'en-US';
  return { showLength: isAmerican ? 'ft-in' : 'm', sizeSystem: 'sae' };
}
