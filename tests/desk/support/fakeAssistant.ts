/** Stands in for the worker: holds what a worker would hold, and answers when the test says so. */
import { assess } from '../../../src/assess/assess.ts';
import type { Assistant } from '../../../src/desk/answering.ts';
import { type Asked, Beside } from '../../../src/desk/beside.ts';
import { withChange } from '../../../src/plan/change.ts';
import type { Plan } from '../../../src/plan/schema.ts';

export class FakeAssistant implements Assistant {
  onmessage: Assistant['onmessage'] = null;
  onerror: Assistant['onerror'] = null;
  isEnded = false;
  /** Plans that it was asked about and has not answered yet, oldest first. */
  readonly waiting: Plan[] = [];
  /** All that it was ever asked about. */
  readonly asked: Plan[] = [];
  /** Plans of which it was told changes. */
  readonly bases: Plan[] = [];
  /** So often it was asked for the tables of its last answer. */
  tablesAsked = 0;
  readonly #questions: Asked[] = [];
  #isReplying = false;
  // made up in one thing, and its tables in another, so that it is told from an answer of the page's own
  readonly #beside = new Beside((plan) => {
    const answer = assess(plan);
    if (!this.#isReplying) return answer;
    return { ...answer, planId: BESIDE, supply: { ...answer.supply, meanOffA: BESIDE_A } };
  });

  postMessage(message: Asked): void {
    const data = structuredClone(message);
    if (data === 'tables') {
      this.tablesAsked += 1;
      this.#questions.push(data);
      return;
    }
    if ('plan' in data) {
      this.bases.push(data.plan);
      this.#beside.hear(data);
      return;
    }
    const base = this.bases.at(-1);
    if (base === undefined) throw new Error('A change came before the plan that it is of.');
    const plan = withChange(base, data.change);
    this.#questions.push(data);
    this.waiting.push(plan);
    this.asked.push(plan);
  }

  terminate(): void {
    this.isEnded = true;
  }

  /** Answers the oldest question. Answers false when there is none. */
  reply(): boolean {
    const question = this.#questions.shift();
    if (question !== 'tables') this.waiting.shift();
    this.#isReplying = true;
    const told = question === undefined ? null : this.#beside.hear(question);
    this.#isReplying = false;
    if (told === null) return false;
    this.onmessage?.(new MessageEvent('message', { data: structuredClone(told) }));
    return true;
  }

  fail(): void {
    this.onerror?.(new ErrorEvent('error', { message: 'made up' }));
  }
}

/** The plan id in answers that this assistant gave. */
export const BESIDE = 'beside';

/** The mean current, A, in tables that this assistant handed in. */
export const BESIDE_A = 123_456;
