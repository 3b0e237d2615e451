/**
 * A name that the page gave is written into the plan in the language spoken then, and stays so written. Where it is
 * shown it is said in the language spoken now; one that a user gave is shown as it was given.
 */
import type { Fitting, FittingKind, Plan } from '../plan/schema.ts';
import * as german from './de/fittings.ts';
import * as english from './en/fittings.ts';
import { words } from './index.ts';
import { hear } from './language.ts';
import { type NamingWords, showNamesBy } from './names.ts';

/** British English names things like American. */
const VOCABULARIES: readonly NamingWords[] = [english, german];

const namesOf = ({ kinds, mainFuse, nextFuse }: NamingWords, kind: FittingKind): readonly string[] =>
  kind === 'fuse' ? [nextFuse, mainFuse] : [kinds[kind]];

/** '' or the number that keeps two of a name apart. */
const NUMBERED = /^( ([2-9]|[1-9]\d+))?$/;

/** 'Amplifier 2' in German: 'Endstufe 2'; any other name as it is. */
function inSpoken({ kind, name }: Fitting): string {
  const spoken = namesOf(words.fittings, kind);
  for (const vocabulary of VOCABULARIES) {
    for (const [index, given] of namesOf(vocabulary, kind).entries()) {
      const rest = name.startsWith(given) ? name.slice(given.length) : null;
      if (rest !== null && NUMBERED.test(rest)) return `${spoken[index]}${rest}`;
    }
  }
  return name;
}

/** By id, where it is another name than the plan's: none that would then be the name of two. */
function otherNames(fittings: readonly Fitting[]): ReadonlyMap<string, string> {
  const names = fittings.map(inSpoken);
  const count = new Map<string, number>();
  for (const name of names) count.set(name, (count.get(name) ?? 0) + 1);
  return new Map(
    fittings.flatMap(({ id, name }, index) => {
      const other = names[index] ?? name;
      return other !== name && count.get(other) === 1 ? [[id, other] as const] : [];
    }),
  );
}

let last: { readonly fittings: readonly Fitting[]; readonly names: ReadonlyMap<string, string> } | null = null;

const isNamedAlike = (one: Fitting, was: Fitting | undefined): boolean =>
  one === was || (one.id === was?.id && one.kind === was.kind && one.name === was.name);

/** Asked with every frame of a drag, in which nothing is named anew. */
function saidIn(fittings: readonly Fitting[]): ReadonlyMap<string, string> {
  const before = last?.fittings;
  const isAlike =
    fittings === before ||
    (fittings.length === before?.length && fittings.every((one, place) => isNamedAlike(one, before[place])));
  const names = last !== null && isAlike ? last.names : otherNames(fittings);
  last = { fittings, names };
  return names;
}

showNamesBy(({ fittings }: Plan, { id, name }: Fitting) => saidIn(fittings).get(id) ?? name);

hear(() => {
  last = null;
});
