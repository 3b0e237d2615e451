/**
 * Mutation run over the calc room: every operator, comparison, number, call and statement made wrong in turn, and the
 * tests of the room must notice. What no test can notice stands in `answered.json` with the reason.
 *
 *     run.ts                    a slice of the mutants, chosen by seed (--seed 7, --count 60)
 *     run.ts --long             all of them, the answered ones too
 *     run.ts --long fuse/       those of one folder or file; --quick leaves slow tests out and what
 *                               works while modules load, for a look round: it shows more survivors than there are
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type Mutant, mutantsOf } from './mutants.ts';
import { type Source, tryMutants } from './session.ts';

interface Answers {
  /** Files whose survivors have not all been read. */
  readonly notYet: readonly string[];
  readonly answered: readonly { readonly reason: string; readonly mutants: readonly string[] }[];
}

const ROOT = resolve(import.meta.dirname, '../..');
const ROOM = join(ROOT, 'src/calc');
const SLICE = 60;
const QUICK_MS = 300;

const { values, positionals } = parseArgs({
  options: {
    long: { type: 'boolean' },
    quick: { type: 'boolean' },
    seed: { type: 'string' },
    count: { type: 'string' },
  },
  allowPositionals: true,
});

/** Figures out of published tables, which `tests/calc/tables` holds against the published rows again. */
const isTable = (file: string): boolean => file.startsWith('tables/');

function everyMutant(): Map<string, readonly Mutant[]> {
  const files = readdirSync(ROOM, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  const paths = files.map((file) => file.replaceAll('\\', '/')).sort();
  return new Map(paths.map((file) => [file, mutantsOf(file, readFileSync(join(ROOM, file), 'utf8'), !isTable(file))]));
}

/** A generator of numbers from 0 to 1 (mulberry32): the same seed, the same slice. */
function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

function chosen(mutants: readonly Mutant[], seed: number, count: number): readonly Mutant[] {
  const random = randomFrom(seed);
  const left = [...mutants];
  return Array.from({ length: Math.min(count, left.length) }, () => left.splice(Math.floor(random() * left.length), 1))
    .flat()
    .sort((one, other) => (one.name < other.name ? -1 : 1));
}

const fileOf = ({ name }: Mutant): string => name.slice(0, name.indexOf(' | '));

function grouped<T>(items: readonly T[], key: (item: T) => string): [string, T[]][] {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(key(item), [...(groups.get(key(item)) ?? []), item]);
  return [...groups];
}

/** Killed, answered and all, by folder. */
function score(mutants: readonly Mutant[], survivors: ReadonlySet<Mutant>): string {
  const folders = grouped(mutants, (mutant) => /^(\w+)\//.exec(fileOf(mutant))?.[1] ?? 'calc');
  const lines = folders.map(([folder, all]) => {
    const survived = all.filter((mutant) => survivors.has(mutant)).length;
    return `${folder.padEnd(12)} ${String(all.length - survived).padStart(5)} fell, ${String(survived).padStart(4)} survived, ${all.length} in all`;
  });
  return lines.join('\n');
}

async function main(): Promise<void> {
  const startMs = performance.now();
  // properties at their usual length: a mutant falls early or not at all
  delete process.env.FEEDRUN_LONG;
  const { notYet, answered } = JSON.parse(readFileSync(join(import.meta.dirname, 'answered.json'), 'utf8')) as Answers;
  const byFile = everyMutant();
  const all = [...byFile.values()].flat();
  const names = new Set(all.map(({ name }) => name));
  const answers = answered.flatMap(({ mutants }) => mutants);
  const isAnswered = new Set(answers);
  const faults = answers.filter((name) => !names.has(name)).map((name) => `answers a mutant that is not: ${name}`);
  if (isAnswered.size < answers.length) faults.push('answers a mutant twice');

  const under = all.filter(
    (mutant) =>
      (positionals.length > 0 || !notYet.includes(fileOf(mutant))) &&
      (positionals.length === 0 || positionals.some((start) => mutant.name.startsWith(start))),
  );
  const seed = Number(values.seed ?? 1);
  const tried = values.long
    ? under
    : chosen(
        under.filter(({ name }) => !isAnswered.has(name)),
        seed,
        Number(values.count ?? SLICE),
      );
  console.log(`${tried.length} of ${all.length} mutants${values.long ? '' : `, seed ${seed}`}`);

  const numbered = tried.map((mutant, number) => ({ mutant, number }));
  const sources = grouped(numbered, ({ mutant }) => fileOf(mutant)).map(
    ([file, mutants]): Source => ({ path: join(ROOM, file), mutants }),
  );
  const { survived } = await tryMutants(
    ROOT,
    `${ROOM}/`,
    sources,
    values.quick ? QUICK_MS : Number.MAX_VALUE,
    !values.quick,
  );
  const survivors = new Set(survived.flatMap((number) => tried[number] ?? []));
  for (const mutant of tried) {
    const { name, line } = mutant;
    if (survivors.has(mutant) && !isAnswered.has(name)) faults.push(`no test notices, line ${line}: ${name}`);
    if (!survivors.has(mutant) && isAnswered.has(name)) faults.push(`answered, yet a test notices: ${name}`);
  }
  console.log(score(tried, survivors));
  for (const fault of faults) console.log(fault);
  console.log(
    `${faults.length === 0 ? 'All answered' : `${faults.length} to answer`}, ${((performance.now() - startMs) / 1000).toFixed(1)} s`,
  );
  process.exitCode = faults.length === 0 ? 0 : 1;
}

await main();
