/** Stands in for the worker: holds what a worker would hold, and answers when the test says so. */
import { assess } from '../../../src/assess/assess.ts';
import { packed } from '../../../src/assess/packed.ts';
import type { Asked, Assistant } from '../../../src/desk/answering.ts';
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
  #base: Plan | null = null;

  postMessage(message: Asked): void {
    const data = structuredClone(message);
    if ('plan' in data) {
      this.#base = data.plan;
      return;
    }
    if (this.#base === null) throw new Error('A change came before the plan that it is of.');
    const plan = withChange(this.#base, data.change);
    this.waiting.push(plan);
    this.asked.push(plan);
  }

  terminate(): void {
    this.isEnded = true;
  }

  /** Answers the oldest question. Answers false when there is none. */
  reply(): boolean {
    const plan = this.waiting.shift();
    if (plan === undefined) return false;
    // made up in one thing, so that it is told from an answer of the page's own
    const answer = { ...assess(plan), planId: BESIDE };
    this.onmessage?.(new MessageEvent('message', { data: structuredClone(packed(answer)) }));
    return true;
  }

  fail(): void {
    this.onerror?.(new ErrorEvent('error', { message: 'made up' }));
  }
}

/** The plan id in answers that this assistant gave. */
export const BESIDE = 'beside';
