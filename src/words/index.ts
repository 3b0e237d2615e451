/** What a person reads at first: names, figures, labels of the page. The answer's words are in answer.ts, the rest in full.ts. */
import type { FittingKind, Plan, Run, Sheet } from '../plan/schema.ts';
import { en } from './en.ts';
import { hear, type Said } from './language.ts';
import { defaultNameIn, runTitleIn, titleOfIdIn } from './names.ts';
import { type Units, unitsOf } from './units.ts';

/** What a language consists of: whatever English says, another has to say too. */
export type Words = Said<typeof en>;

/** In the language spoken now: read it where it is needed, never once and for all. */
export let words: Words = en;

export const defaultName = (kind: FittingKind, plan: Plan): string => defaultNameIn(words.fittings, kind, plan);

/** What a run is called: its own name, else its ends: 'Battery to main fuse'. */
export const runTitle = (plan: Plan, run: Run): string => runTitleIn(words.fittings, plan, run);

/** What a sheet is called: its own name, else what it shows. */
export const sheetTitle = ({ name, part, view }: Pick<Sheet, 'name' | 'part' | 'view'>): string =>
  name === '' ? words.sketch.sheetNames[part][view] : name;

/** The title of a fitting or run, or null when the plan does not hold it. */
export const nameOfId = (plan: Plan, id: string): string | null => titleOfIdIn(words.fittings, plan, id);

hear((language) => {
  words = language.first(en);
});

/** Figures as this plan's settings want them shown. */
export const unitsFor = (plan: Plan): Units => unitsOf(plan.settings.showLength, words.locale);

export type { Units } from './units.ts';
