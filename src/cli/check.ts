/**
 * `npm test`: types, lint, unused code and the slice of mutants side by side, since none of them uses more than one
 * processor; then the tests from fast to slow. Stops at the first stage with a step that fails. Ends with the time taken
 * and one line 'N passed, N failed' over all tests that ran.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

interface Step {
  readonly name: string;
  readonly program: string;
  readonly args: readonly string[];
  /** Where the step leaves its test counts, when it runs tests. */
  readonly report?: string;
}

interface Counts {
  passed: number;
  failed: number;
}

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const REPORTS = join(ROOT, 'node_modules', '.cache', 'feedrun', 'reports');

function types(project: string): Step {
  return { name: `types (${project})`, program: 'typescript/bin/tsc', args: ['--noEmit', '-p', project] };
}

function tests(project: string): Step {
  const report = join(REPORTS, `${project}.json`);
  const args = ['run', '--project', project, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  return { name: `tests (${project})`, program: 'vitest/vitest.mjs', args, report };
}

const isLong = process.argv.includes('--long');

/** Mutants of the calc room: a slice chosen by seed, or all of them. */
const MUTATION: Step = {
  name: isLong ? 'mutation run' : 'mutation run (a slice)',
  program: 'tsx/dist/cli.mjs',
  args: ['tests/mutation/run.ts', ...(isLong ? ['--long'] : [])],
};

/** One after another, those of one stage side by side. */
const STAGES: readonly (readonly Step[])[] = [
  [
    // the slice takes half a minute, all of them an hour
    ...(isLong ? [] : [MUTATION]),
    types('tsconfig.json'),
    types('src/calc/tsconfig.json'),
    types('src/geom/tsconfig.json'),
    { name: 'lint and format', program: '@biomejs/biome/bin/biome', args: ['check', '--error-on-warnings'] },
    { name: 'unused code', program: 'knip/bin/knip.js', args: ['--no-progress'] },
  ],
  [tests('unit')],
  [tests('dom')],
  [tests('browser')],
  ...(isLong ? [[MUTATION]] : []),
];

/** Steps that run at once: with more, a machine of two processors is slower. */
const AT_ONCE = 2;

/**
 * Runs one step with this Node, and answers whether it passed. What it says is shown at once where it runs alone, else
 * when it is done.
 */
function runStep(step: Step, isAlone: boolean): Promise<boolean> {
  const program = join(ROOT, 'node_modules', step.program);
  const title = `\n== ${step.name}`;
  if (isAlone) console.log(title);
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, ...step.args], {
      cwd: ROOT,
      stdio: isAlone ? 'inherit' : ['ignore', 'pipe', 'pipe'],
    });
    const said: Buffer[] = [];
    for (const stream of [child.stdout, child.stderr]) stream?.on('data', (data: Buffer) => said.push(data));
    child.on('close', (status) => {
      if (!isAlone) console.log(`${title}\n${Buffer.concat(said).toString().trimEnd()}`);
      resolve(status === 0);
    });
  });
}

/** Answers the first step of the stage that failed; null when all passed. */
async function runStage(stage: readonly Step[], done: (step: Step, passed: boolean) => void): Promise<Step | null> {
  const waiting = [...stage];
  const failed: Step[] = [];
  const lane = async (): Promise<void> => {
    for (let step = waiting.shift(); step !== undefined; step = waiting.shift()) {
      const passed = await runStep(step, stage.length === 1);
      done(step, passed);
      if (!passed) failed.push(step);
    }
  };
  await Promise.all(Array.from({ length: Math.min(AT_ONCE, stage.length) }, lane));
  return failed[0] ?? null;
}

/** Adds a step's counts. A step that failed without a failed test (it crashed, or a file did not load) counts as one. */
function addCounts(total: Counts, report: string, passed: boolean): void {
  const read = existsSync(report) ? (JSON.parse(readFileSync(report, 'utf8')) as Record<string, unknown>) : {};
  const failed = Number(read.numFailedTests ?? 0);
  total.passed += Number(read.numPassedTests ?? 0);
  total.failed += passed ? failed : Math.max(failed, 1);
}

async function main(): Promise<void> {
  if (isLong) process.env.FEEDRUN_LONG = '1';
  rmSync(REPORTS, { recursive: true, force: true });
  mkdirSync(REPORTS, { recursive: true });
  const startMs = performance.now();
  const total: Counts = { passed: 0, failed: 0 };
  let failedStep: Step | null = null;
  for (const stage of STAGES) {
    failedStep = await runStage(stage, (step, passed) => {
      if (step.report !== undefined) addCounts(total, step.report, passed);
    });
    if (failedStep !== null) break;
  }
  const seconds = ((performance.now() - startMs) / 1000).toFixed(1);
  console.log(
    failedStep ? `\nStopped at: ${failedStep.name}, after ${seconds} s` : `\nAll steps passed in ${seconds} s`,
  );
  // a step before the tests counts as one failure, so that no line of this output reads as a clean run
  if (failedStep && total.failed === 0) total.failed = 1;
  console.log(`${total.passed} passed, ${total.failed} failed`);
  process.exitCode = failedStep ? 1 : 0;
}

await main();
