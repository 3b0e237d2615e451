import type { Why } from '../../calc/why.ts';

/**
 * Whys by id that are worked out when first asked for: a finger that drags needs none of them. To whoever reads or
 * prints it, it is a plain object.
 */
export class WhyBook {
  readonly #whys: Record<string, Why> = {};

  /** Files a why under an id, and returns the id. */
  file(id: string, work: () => Why): string {
    let known: Why | null = null;
    Object.defineProperty(this.#whys, id, {
      enumerable: true,
      configurable: true,
      get: (): Why => {
        known ??= work();
        return known;
      },
    });
    return id;
  }

  has(id: string): boolean {
    return Object.hasOwn(this.#whys, id);
  }

  all(): Readonly<Record<string, Why>> {
    return this.#whys;
  }
}
