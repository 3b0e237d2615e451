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

/** What a proposal feeds by a fuse of its own. */
const FED: ReadonlySet<FittingKind> = new Set(['amplifier', 'load']);

const namesOf = ({ kinds, mainFuse, nextFuse }: NamingWords, kind: FittingKind): readonly string[] =>
  kind === 'fuse' ? [nextFuse, mainFuse] : [kinds[kind]];

/** '' or the number that keeps two of a name apart. */
const NUMBERED = /^( ([2-9]|[1-9]\d+))?$/;

/** 'Amplifier 2' in German: 'Endstufe 2'; any other name as it is. */
function saidIn(language: NamingWords, { kind, name }: Fitting): string {
  const spoken = namesOf(language, kind);
  for (const vocabulary of VOCABULARIES) {
    for (const [index, given] of namesOf(vocabulary, kind).entries()) {
      const rest = name.startsWith(given) ? name.slice(given.length) : null;
      if (rest !== null && NUMBERED.test(rest)) return `${spoken[index]}${rest}`;
    }
  }
  return name;
}

/** By id: what each is said to be, but its own name where that would then be the name of two. */
function apart(fittings: readonly Fitting[], said: (fitting: Fitting) => string): ReadonlyMap<string, string> {
  const names = fittings.map(said);
  const count = new Map<string, number>();
  for (const name of names) count.set(name, (count.get(name) ?? 0) + 1);
  return new Map(
    fittings.map(({ id, name }, index) => {
      const other = names[index] ?? name;
      return [id, count.get(other) === 1 ? other : name];
    }),
  );
}

/** By what the page calls the fuse of anything here in any language, what that is now; as it is where it may be of two. */
function branchFuses(fittings: readonly Fitting[], shown: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  const fuses = new Map<string, string>();
  for (const fitting of fittings.filter(({ kind }) => FED.has(kind))) {
    const calledIn = ({ kinds, fuseOf }: NamingWords, name: string) => fuseOf(name || kinds[fitting.kind]);
    const spoken = calledIn(words.fittings, shown.get(fitting.id) ?? fitting.name);
    for (const vocabulary of VOCABULARIES) {
      for (const name of [fitting.name, saidIn(vocabulary, fitting)]) {
        const given = calledIn(vocabulary, name);
        fuses.set(given, (fuses.get(given) ?? spoken) === spoken ? spoken : given);
      }
    }
  }
  return fuses;
}

/** 'Bass fuse' in German: 'Sicherung Bass', where something that is fed is called Bass; likewise 'Bass fuse 2'. */
function asBranchFuse(fuses: ReadonlyMap<string, string>, name: string): string {
  const [, first = name, number = ''] = /^(.*)( \d+)$/.exec(name) ?? [];
  const spoken = NUMBERED.test(number) ? fuses.get(first) : undefined;
  return fuses.get(name) ?? (spoken === undefined ? name : `${spoken}${number}`);
}

/** By id, what each is called where it is shown. */
function shownNames(fittings: readonly Fitting[]): ReadonlyMap<string, string> {
  const shown = apart(fittings, (fitting) => saidIn(words.fittings, fitting));
  const fuses = branchFuses(fittings, shown);
  if (fuses.size === 0) return shown;
  return apart(fittings, ({ id, kind, name }) => {
    const said = shown.get(id) ?? name;
    return kind === 'fuse' ? asBranchFuse(fuses, said) : said;
  });
}

let last: { readonly fittings: readonly Fitting[]; readonly names: ReadonlyMap<string, string> } | null = null;

const isNamedAlike = (one: Fitting, was: Fitting | undefined): boolean =>
  one === was || (one.id === was?.id && one.kind === was.kind && one.name === was.name);

/** Asked with every frame of a drag, in which nothing is named anew. */
function namesIn(fittings: readonly Fitting[]): ReadonlyMap<string, string> {
  const before = last?.fittings;
  const isAlike =
    fittings === before ||
    (fittings.length === before?.length && fittings.every((one, place) => isNamedAlike(one, before[place])));
  const names = last !== null && isAlike ? last.names : shownNames(fittings);
  last = { fittings, names };
  return names;
}

showNamesBy(({ fittings }: Plan, { id, name }: Fitting) => namesIn(fittings).get(id) ?? name);

hear(() => {
  last = null;
});
