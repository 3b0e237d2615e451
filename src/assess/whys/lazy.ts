import type { Why } from '../../calc/why.ts';
import { once } from '../perModel.ts';

/**
 * Whys by id that are worked out when first asked for: a finger that drags needs none of them. To whoever reads or
 * prints it, it is a plain object.
 */
export class WhyBook {
  readonly #works = new Map<string, () => Why>();

  /** Files a why under an id, and returns the id. */
  file(id: string, work: () => Why): string {
    this.#works.set(id, work);
    return id;
  }

  has(id: string): boolean {
    return this.#works.has(id);
  }

  /** All that is filed by now. */
  readonly all = once((): Readonly<Record<string, Why>> => {
    const whys: Record<string, Why> = {};
    for (const [id, work] of this.#works) Object.defineProperty(whys, id, { enumerable: true, get: once(work) });
    return whys;
  });
}
