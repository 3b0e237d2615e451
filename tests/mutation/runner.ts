import { setMaxListeners } from 'node:events';
import type { RunnerTestCase } from 'vitest';
import { TestRunner } from 'vitest';
import { shared, writeAnswer } from './switchboard.ts';

shared();

/** Time on the processor: the same on a busy machine. */
function cpuMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** A test that has called itself off says nothing of any mutant. */
const isSkip = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'VITEST_PENDING';

/** Runs every test once as it is, then once with each mutant that it met and that no test has failed with yet. */
export default class MutationRunner extends TestRunner {
  async runTask(test: RunnerTestCase): Promise<void> {
    const run = TestRunner.getTestFn(test);
    const { board, job, killedBy, reached, atLoad, failed, slow } = shared();
    const title = test.fullTestName ?? test.name;
    if (job.onFromStart !== null) {
      if (job.passedOver.includes(title)) return;
      try {
        await run();
        if (board.ranOn) throw new Error('mutation: a loop without end');
      } catch (error) {
        killedBy[job.onFromStart] ??= title;
        writeAnswer(shared());
        // the run ends at the first failure
        throw error;
      }
      return;
    }
    for (const number of board.met) atLoad.add(number);
    const left = job.mutants.filter((number) => killedBy[number] === undefined);
    if (left.length === 0) return;
    setMaxListeners(0, test.context.signal);
    let most = 0;
    const startMs = cpuMs();
    try {
      most = await board.plainly(run);
    } catch (error) {
      if (!isSkip(error)) failed.push(title);
      throw error;
    }
    // run twice
    if (cpuMs() - startMs > 2 * job.longestMs) {
      slow.push(title);
      return;
    }
    const met = new Set(board.met);
    board.met.clear();
    for (const number of left) {
      if (!met.has(number)) continue;
      reached.add(number);
      if (await board.fails(number, most, run)) killedBy[number] = title;
    }
    board.met.clear();
  }

  override onAfterRunFiles(): void {
    super.onAfterRunFiles();
    writeAnswer(shared());
  }
}
