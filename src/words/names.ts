/** Names given to what is new, until its owner gives a better one. */
import type { Fitting, FittingKind, LinkFamily, Plan, Run } from '../plan/schema.ts';

export interface NamingWords {
  kinds: Readonly<Record<FittingKind, string>>;
  mainFuse: string;
  nextFuse: string;
  fuseOf(consumer: string): string;
  runName(from: string, to: string): string;
}

/** What a fitting is called where it is shown: as in the plan until the words of the answer are there (placedNames.ts). */
export let shownName = (_: Plan, { name }: Fitting): string => name;

export function showNamesBy(show: typeof shownName): void {
  shownName = show;
}

/** The name, or the name with the least number from 2 on that nothing carries yet. */
export function numbered(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name)) return name;
  let number = 2;
  while (taken.has(`${name} ${number}`)) number += 1;
  return `${name} ${number}`;
}

/** 'Battery', 'Main fuse' for the first fuse and 'Fuse' for later ones (where it sits is not known yet), 'Amplifier 2': never a name twice. */
export function defaultNameIn(words: NamingWords, kind: FittingKind, plan: Plan): string {
  const taken = new Set(plan.fittings.map((fitting) => shownName(plan, fitting)));
  if (kind !== 'fuse') return numbered(words.kinds[kind], taken);
  const hasFuse = plan.fittings.some((fitting) => fitting.kind === 'fuse');
  return hasFuse || taken.has(words.mainFuse) ? numbered(words.nextFuse, taken) : words.mainFuse;
}

/**
 * What a run is called: its own name, else its ends, so that it stays true when a fuse is dropped into it.
 * A new run's own name is empty until its owner gives one.
 */
export function runTitleIn(words: NamingWords, plan: Plan, run: Run): string {
  if (run.name !== '') return run.name;
  const nameOf = (id: string) => titleOfIdIn(words, plan, id) ?? '';
  return words.runName(nameOf(run.from.fittingId), nameOf(run.to.fittingId));
}

/** The title of a fitting or run by id, or null when the plan does not hold it. */
export function titleOfIdIn(words: NamingWords, plan: Plan, id: string): string | null {
  const fitting = plan.fittings.find((candidate) => candidate.id === id);
  if (fitting !== undefined) return fitting.name === '' ? words.kinds[fitting.kind] : shownName(plan, fitting);
  const run = plan.runs.find((candidate) => candidate.id === id);
  return run === undefined ? null : runTitleIn(words, plan, run);
}

/** What a family of links is called; one of the user's own by the name it was given. */
export function familyNameIn(
  { linkFamilies }: { linkFamilies: Readonly<Record<LinkFamily, string>> },
  { settings }: Plan,
  family: LinkFamily,
): string {
  const own = settings.ownLinks.find((one) => one.family === family)?.name ?? '';
  return own === '' ? linkFamilies[family] : own;
}
