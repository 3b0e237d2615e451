/** Stands in for the worker: holds what a worker would hold, and answers when the test says so. */
import { assess } from '../../../src/assess/assess.ts';
import type { Asked, Assistant } from '../../../src/desk/answering.ts';
import { Beside } from '../../../src/desk/beside.ts';
import { type PlanChange, withChange } from '../../../src/plan/change.ts';
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
  readonly #changes: PlanChange[] = [];
  #isReplying = false;
  // made up in one thing, so that it is told from an answer of the page's own
  readonly #beside = new Beside((plan) => ({ ...assess(plan), ...(this.#isReplying && { planId: BESIDE }) }));

  postMessage(message: Asked): void {
    const data = structuredClone(message);
    if ('plan' in data) {
      this.bases.push(data.plan);
      this.#beside.hear(data);
      return;
    }
    const base = this.bases.at(-1);
    if (base === undefined) throw new Error('A change came before the plan that it is of.');
    const plan = withChange(base, data.change);
    this.#changes.push(data.change);
    this.waiting.push(plan);
    this.asked.push(plan);
  }

  terminate(): void {
    this.isEnded = true;
  }

  /** Answers the oldest question. Answers false when there is none. */
  reply(): boolean {
    const change = this.#changes.shift();
    this.waiting.shift();
    this.#isReplying = true;
    const packed = change === undefined ? null : this.#beside.hear({ change });
    this.#isReplying = false;
    if (packed === null) return false;
    this.onmessage?.(new MessageEvent('message', { data: structuredClone(packed) }));
    return true;
  }

  fail(): void {
    this.onerror?.(new ErrorEvent('error', { message: 'made up' }));
  }
}

/** The plan id in answers that this assistant gave. */
export const BESIDE = 'beside';
