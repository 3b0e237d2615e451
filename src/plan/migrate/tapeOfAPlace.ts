/**
 * Version 4: a taped length says whether it is the run's own, as it lies. Before, each was taken to be.
 */
import { isJsonObject, type JsonObject, type Step } from './step.ts';

/** Keys stand in the schema's order. */
function runUp(run: unknown): unknown {
  if (!isJsonObject(run)) return run;
  return Object.fromEntries(
    Object.entries(run).flatMap((entry) => (entry[0] === 'tapedM' ? [entry, ['tapedAs', 'run']] : [entry])),
  );
}

export const tapeOfAPlace: Step = {
  name: 'TapeOfAPlace',
  to: 4,
  up: (document: JsonObject) => ({
    ...document,
    runs: Array.isArray(document.runs) ? document.runs.map(runUp) : document.runs,
  }),
};
