import type { Model } from './model.ts';

/** A figure that hangs on the model alone, worked out once for each. A model never changes, so nothing can go stale. */
export function perModel<T>(work: (model: Model) => T): (model: Model) => T {
  const known = new WeakMap<Model, { readonly value: T }>();
  return (model) => {
    const before = known.get(model);
    if (before !== undefined) return before.value;
    const value = work(model);
    known.set(model, { value });
    return value;
  };
}
