/**
 * `npm test`: types, lint, unused code, then the tests from fast to slow. Stops at the first step that fails.
 * Ends with the time taken and one line 'N passed, N failed' over all tests that ran.
 */
import { spawnSync } from 'node:child_process';
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

const STEPS: readonly Step[] = [
  types('tsconfig.json'),
  types('src/calc/tsconfig.json'),
  types('src/geom/tsconfig.json'),
  { name: 'lint and format', program: '@biomejs/biome/bin/biome', args: ['check', '--error-on-warnings'] },
  { name: 'unused code', program: 'knip/bin/knip.js', args: ['--no-progress'] },
  tests('unit'),
  tests('dom'),
  // the slice takes half a minute, all of them an hour
  ...(isLong ? [tests('browser'), MUTATION] : [MUTATION, tests('browser')]),
];

/** Runs one step in the foreground, with this Node, and says whether it passed. */
function runStep(step: Step): boolean {
  console.log(`\n== ${step.name}`);
  const program = join(ROOT, 'node_modules', step.program);
  return spawnSync(process.execPath, [program, ...step.args], { cwd: ROOT, stdio: 'inherit' }).status === 0;
}

/** Adds a step's counts. A step that failed without a failed test (it crashed, or a file did not load) counts as one. */
function addCounts(total: Counts, report: string, passed: boolean): void {
  const read = existsSync(report) ? (JSON.parse(readFileSync(report, 'utf8')) as Record<string, unknown>) : {};
  const failed = Number(read.numFailedTests ?? 0);
  total.passed += Number(read.numPassedTests ?? 0);
  total.failed += passed ? failed : Math.max(failed, 1);
}

function main(): void {
  if (isLong) process.env.FEEDRUN_LONG = '1';
  rmSync(REPORTS, { recursive: true, force: true });
  mkdirSync(REPORTS, { recursive: true });
  const startMs = performance.now();
  const total: Counts = { passed: 0, failed: 0 };
  const failedStep = STEPS.find((step) => {
    const passed = runStep(step);
    if (step.report !== undefined) addCounts(total, step.report, passed);
    return !passed;
  });
  const seconds = ((performance.now() - startMs) / 1000).toFixed(1);
  console.log(
    failedStep ? `\nStopped at: ${failedStep.name}, after ${seconds} s` : `\nAll steps passed in ${seconds} s`,
  );
  // a step before the tests counts as one failure, so that no line of this output reads as a clean run
  if (failedStep && total.failed === 0) total.failed = 1;
  console.log(`${total.passed} passed, ${total.failed} failed`);
  process.exitCode = failedStep ? 1 : 0;
}

main();
