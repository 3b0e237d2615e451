/**
 * Things to do at a time, of which each is put off or called off with most answers to a finger that drags. The browser's
 * own timer is set for the first of them only, and not taken back: to set one takes longer than to look at the clock.
 */
export class Agenda {
  readonly #due = new Map<string, { readonly atMs: number; readonly run: () => void }>();
  #timer: { readonly id: ReturnType<typeof setTimeout>; readonly atMs: number } | null = null;

  /** Runs once, so many ms from now; what was to be done by that name is not done any more. */
  set(name: string, ms: number, run: () => void): void {
    const atMs = Date.now() + ms;
    this.#due.set(name, { atMs, run });
    this.#wake(atMs);
  }

  has(name: string): boolean {
    return this.#due.has(name);
  }

  callOff(name: string): void {
    this.#due.delete(name);
  }

  /** Nothing of it is done any more. */
  clear(): void {
    this.#due.clear();
    if (this.#timer !== null) clearTimeout(this.#timer.id);
    this.#timer = null;
  }

  #wake(atMs: number): void {
    if (this.#timer !== null) {
      if (this.#timer.atMs <= atMs) return;
      clearTimeout(this.#timer.id);
    }
    this.#timer = { id: setTimeout(() => this.#look(), atMs - Date.now()), atMs };
  }

  #look(): void {
    this.#timer = null;
    const nowMs = Date.now();
    for (const [name, { atMs, run }] of [...this.#due]) {
      // an earlier one of them may have called it off
      if (atMs > nowMs || this.#due.get(name)?.run !== run) continue;
      this.#due.delete(name);
      run();
    }
    if (this.#due.size > 0) this.#wake(Math.min(...[...this.#due.values()].map(({ atMs }) => atMs)));
  }
}
