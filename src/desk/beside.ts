/** What answers drafts beside the page: the plan that they are drafts of, and what was answered last. */
import type { Assessment } from '../assess/answer.ts';
import { type Packed, Packer } from '../assess/packed.ts';
import { withChange } from '../plan/change.ts';
import type { Plan } from '../plan/schema.ts';
import type { Asked } from './answering.ts';

export class Beside {
  #base: Plan | null = null;
  readonly #packer = new Packer();

  constructor(private readonly assess: (plan: Plan) => Assessment) {}

  /** Hears of another plan, which the page has an answer to; or answers for a change of it. */
  hear(asked: Asked): Packed | null {
    if ('plan' in asked) {
      this.#base = asked.plan;
      this.#packer.begin(this.assess(asked.plan));
      return null;
    }
    if (this.#base === null) throw new Error('A change came before the plan that it is of.');
    return this.#packer.pack(this.assess(withChange(this.#base, asked.change)));
  }
}
