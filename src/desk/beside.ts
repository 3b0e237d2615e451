/** What answers drafts beside the page: the plan that they are drafts of, and what was answered last. */
import type { Assessment } from '../assess/answer.ts';
import { type Packed, Packer } from '../assess/packed.ts';
import { packTables, type Tables } from '../assess/tables.ts';
import { type PlanChange, withChange } from '../plan/change.ts';
import type { Plan } from '../plan/schema.ts';

/** What is told: the plan of which changes will come; one of them, to be answered for; or to hand in that answer's tables. */
export type Asked = { readonly plan: Plan } | { readonly change: PlanChange } | 'tables';

/** What comes back. */
export type Told = { readonly packed: Packed } | { readonly tables: Tables };

export class Beside {
  #base: Plan | null = null;
  #last: Assessment | null = null;
  readonly #packer = new Packer();

  constructor(private readonly assess: (plan: Plan) => Assessment) {}

  /** Of another plan, which the page has an answer to, it only hears. */
  hear(asked: Asked): Told | null {
    if (asked === 'tables') return this.#last && { tables: packTables(this.#last) };
    if ('plan' in asked) {
      this.#base = asked.plan;
      this.#packer.begin(this.assess(asked.plan));
      return null;
    }
    if (this.#base === null) throw new Error('A change came before the plan that it is of.');
    this.#last = this.assess(withChange(this.#base, asked.change));
    return { packed: this.#packer.pack(this.#last) };
  }
}
