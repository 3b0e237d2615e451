import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { BaseSequencer, startVitest, type TestSpecification } from 'vitest/node';
import { instrumented, type NumberedMutant } from './mutants.ts';
import { type Answer, JOB_VARIABLE, type Job } from './switchboard.ts';

/** Suites over many nets, which take their time: most mutants fall before them. */
const SLOW = /ropert|spice|carry|verdict|worst/;

/** Tests of the same folder first, suites that take their time last. */
function quickFirst(sources: readonly Source[]): typeof BaseSequencer {
  const folders = new Set(sources.map(({ path }) => `/${basename(dirname(path))}/`));
  const isNear = (moduleId: string): boolean => [...folders].some((folder) => moduleId.includes(folder));
  const rank = ({ moduleId }: TestSpecification): string =>
    `${SLOW.test(moduleId) ? 2 : isNear(moduleId) ? 0 : 1}${moduleId}`;
  return class extends BaseSequencer {
    override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
      return [...files].sort((one, other) => (rank(one) < rank(other) ? -1 : 1));
    }
  };
}

export interface Source {
  /** Absolute path. */
  readonly path: string;
  readonly mutants: readonly NumberedMutant[];
}

/** Runs the tests of the calc room over the instrumented sources. */
async function runTests(
  root: string,
  sources: readonly Source[],
  room: string,
  job: Omit<Job, 'answerFile'>,
): Promise<Answer> {
  const folder = mkdtempSync(join(tmpdir(), 'feedrun-mutation-'));
  const answerFile = join(folder, 'answer.json');
  const jobFile = join(folder, 'job.json');
  writeFileSync(jobFile, JSON.stringify({ ...job, answerFile } satisfies Job));
  process.env[JOB_VARIABLE] = jobFile;
  const mutantsIn = new Map(sources.map(({ path, mutants }) => [path, mutants]));
  const vitest = await startVitest(
    'test',
    [],
    {
      root,
      config: false,
      watch: false,
      environment: 'node',
      include: ['tests/calc/**/*.test.ts'],
      related: sources.map(({ path }) => path),
      runner: join(import.meta.dirname, 'runner.ts'),
      setupFiles: [join(import.meta.dirname, 'setup.ts')],
      // one worker that keeps its modules: a mutant is switched, not loaded
      pool: 'forks',
      isolate: false,
      maxWorkers: 1,
      testTimeout: 600_000,
      passWithNoTests: true,
      reporters: [{}],
      sequence: { sequencer: quickFirst(sources) },
      bail: job.onFromStart === null ? 0 : 1,
    },
    {
      plugins: [
        {
          name: 'mutation',
          enforce: 'pre',
          transform(text, id) {
            const path = id.split('?')[0] ?? id;
            if (!path.startsWith(room) || !path.endsWith('.ts')) return null;
            return { code: instrumented(path, text, mutantsIn.get(path) ?? []), map: null };
          },
        },
      ],
    },
  );
  const errors = vitest.state.getUnhandledErrors();
  const broken = vitest.state.getTestModules().filter((module) => module.errors().length > 0);
  await vitest.close();
  try {
    const answer = JSON.parse(readFileSync(answerFile, 'utf8')) as Answer;
    const isBroken = errors.length > 0 || broken.length > 0;
    if (job.onFromStart !== null && isBroken)
      return { ...answer, killedBy: { [job.onFromStart]: 'while loading', ...answer.killedBy } };
    if (isBroken)
      throw new Error(`mutation: tests that do not load: ${broken.map(({ moduleId }) => moduleId)} ${errors}`);
    return answer;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export interface Outcome {
  readonly killedBy: ReadonlyMap<number, string>;
  readonly survived: readonly number[];
}

/** Tries every mutant of the sources; those that live and work while a module is loaded get a run of their own. */
export async function tryMutants(
  root: string,
  room: string,
  sources: readonly Source[],
  longestMs: number,
  withLoading: boolean,
): Promise<Outcome> {
  const numbers = sources.flatMap(({ mutants }) => mutants.map(({ number }) => number));
  const first = await runTests(root, sources, room, { mutants: numbers, onFromStart: null, longestMs, passedOver: [] });
  if (first.failed.length > 0) throw new Error(`mutation: fails without any mutant: ${first.failed.join('; ')}`);
  const killedBy = new Map(Object.entries(first.killedBy).map(([number, test]) => [Number(number), test]));
  const atLoad = numbers.filter((number) => first.atLoad.includes(number) && !killedBy.has(number));
  for (const number of withLoading ? atLoad : []) {
    const source = sources.filter(({ mutants }) => mutants.some((each) => each.number === number));
    const { killedBy: fell } = await runTests(root, source, room, {
      mutants: [],
      onFromStart: number,
      longestMs,
      passedOver: first.slow,
    });
    const test = fell[number];
    if (test !== undefined) killedBy.set(number, test);
  }
  return { killedBy, survived: numbers.filter((number) => !killedBy.has(number)) };
}
