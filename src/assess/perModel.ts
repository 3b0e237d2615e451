import type { Circuit } from './circuit.ts';
import type { Model } from './model.ts';

/** By thing, what was worked out of it: one entry for all figures, since the collector goes through each entry. */
const known = new WeakMap<object, Map<unknown, unknown>>();

/** A figure worked out once for each thing it hangs on, which never changes. */
export function per<K extends object, T>(work: (key: K) => T): (key: K) => T {
  const slots = known as WeakMap<object, Map<unknown, T>>;
  return (key) => {
    let table = slots.get(key);
    if (table === undefined) {
      table = new Map();
      slots.set(key, table);
    }
    const before = table.get(work);
    // what is worked out may be undefined
    if (before !== undefined || table.has(work)) return before as T;
    const value = work(key);
    table.set(work, value);
    return value;
  };
}

/** A figure that hangs on the model alone, worked out once for each. A model never changes, so nothing can go stale. */
export const perModel = <T>(work: (model: Model) => T): ((model: Model) => T) => per(work);

/** A figure that hangs on the circuit alone: models that differ in their settings share it. */
export const perCircuit = <T>(work: (circuit: Circuit) => T): ((circuit: Circuit) => T) => per(work);

/** A work done at the first call. */
export function once<T>(work: () => T): () => T {
  let known: { readonly value: T } | null = null;
  return () => {
    known ??= { value: work() };
    return known.value;
  };
}
