/** Fetches what comes after the first picture, once for all sketches; what failed is tried again when it is next asked for. */
import { loadPart } from '../desk/latePart.ts';

export type Late = typeof import('./late.ts');

export interface LateSource {
  /** null until it has been fetched. */
  readonly here: Late | null;
  /** Settles when it has been fetched, by whoever asked for it. */
  readonly whenHere: Promise<Late>;
  /** Rejects where it could not be fetched this time. */
  load(): Promise<void>;
}

class PageLate implements LateSource {
  here: Late | null = null;
  readonly whenHere: Promise<Late>;
  #tellHere!: (late: Late) => void;
  #loading: Promise<void> | null = null;

  constructor() {
    this.whenHere = new Promise((resolve) => {
      this.#tellHere = resolve;
    });
  }

  load(): Promise<void> {
    this.#loading ??= this.#load();
    return this.#loading;
  }

  async #load(): Promise<void> {
    try {
      this.here = await loadPart(() => import('./late.ts'));
      this.#tellHere(this.here);
    } finally {
      this.#loading = null;
    }
  }
}

export const pageLate: LateSource = new PageLate();
