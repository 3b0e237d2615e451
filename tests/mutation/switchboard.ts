import { readFileSync, writeFileSync } from 'node:fs';

/** What a run is asked to do; the runner finds it in the file that `JOB_VARIABLE` names. */
export interface Job {
  /** Numbers of the mutants to try. */
  readonly mutants: readonly number[];
  /** One mutant that is on from the start, before any module is loaded; null: each in turn, test by test. */
  readonly onFromStart: number | null;
  /** Tests that take longer by themselves are passed over, ms; and these, whatever they take. */
  readonly longestMs: number;
  readonly passedOver: readonly string[];
  readonly answerFile: string;
}

/** What came of it. */
export interface Answer {
  /** By number of a mutant: the test that failed with it. */
  readonly killedBy: Record<number, string>;
  /** Mutants that ran while modules were loaded, which must be on before that. */
  readonly atLoad: readonly number[];
  /** Mutants that some test ran. */
  readonly reached: readonly number[];
  readonly failed: readonly string[];
  /** Tests passed over. */
  readonly slow: readonly string[];
}

export const JOB_VARIABLE = 'FEEDRUN_MUTATION_JOB';

/** Rounds of loops a test may take with a mutant, against what it takes without. */
const MORE_ROUNDS = 5;
const ROUNDS_AT_LEAST = 50_000;

/** Which mutant is on, and which were met; the instrumented code asks it at every place. */
class Switchboard {
  active = -1;
  readonly met = new Set<number>();
  private rounds = 0;
  private mostRounds = Number.POSITIVE_INFINITY;
  ranOn = false;

  on(number: number): boolean {
    if (this.active === -1) this.met.add(number);
    return this.active === number;
  }

  /** One round of a loop; ends a loop that a mutant made endless. */
  tick(): void {
    this.rounds += 1;
    if (this.rounds <= this.mostRounds) return;
    this.ranOn = true;
    throw new Error('mutation: a loop without end');
  }

  /** Runs a test with one mutant on, within so many rounds. Says whether it failed. */
  async fails(number: number, most: number, run: () => unknown): Promise<boolean> {
    this.active = number;
    this.start(most);
    try {
      await run();
      return this.ranOn;
    } catch {
      return true;
    } finally {
      this.active = -1;
      this.start(Number.POSITIVE_INFINITY);
    }
  }

  /**
   * Runs a test as it is; the mutants it met stand in `met`. Returns the rounds it may take with one of them.
   * Twice, since a test that fails when it is repeated would pass for one that notices.
   */
  async plainly(run: () => unknown): Promise<number> {
    this.met.clear();
    await run();
    this.start(Number.POSITIVE_INFINITY);
    await run();
    return MORE_ROUNDS * this.rounds + ROUNDS_AT_LEAST;
  }

  start(most: number): void {
    this.rounds = 0;
    this.mostRounds = most;
    this.ranOn = false;
  }
}

interface Shared {
  readonly board: Switchboard;
  readonly job: Job;
  readonly killedBy: Record<number, string>;
  readonly reached: Set<number>;
  readonly atLoad: Set<number>;
  readonly failed: string[];
  readonly slow: string[];
}

declare global {
  var MUTATION: Switchboard | undefined;
  var MUTATION_SHARED: Shared | undefined;
}

/** What the tests of one worker share; modules of the worker may be loaded more than once. */
export function shared(): Shared {
  const before = globalThis.MUTATION_SHARED;
  if (before !== undefined) return before;
  const file = process.env[JOB_VARIABLE];
  if (file === undefined) throw new Error('mutation: no job');
  const job = JSON.parse(readFileSync(file, 'utf8')) as Job;
  const board = new Switchboard();
  if (job.onFromStart !== null) {
    board.active = job.onFromStart;
    board.start(2e8);
  }
  globalThis.MUTATION = board;
  globalThis.MUTATION_SHARED = {
    board,
    job,
    killedBy: {},
    reached: new Set(),
    atLoad: new Set(),
    failed: [],
    slow: [],
  };
  return globalThis.MUTATION_SHARED;
}

export function writeAnswer({ job, killedBy, atLoad, reached, failed, slow }: Shared): void {
  const answer: Answer = { killedBy, atLoad: [...atLoad], reached: [...reached], failed, slow };
  writeFileSync(job.answerFile, JSON.stringify(answer));
}
