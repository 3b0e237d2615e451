import type { JsonObject, Step } from './step.ts';

/** The oldest version that the steps lead up from. Throws when they do not count up by one to the newest version. */
export function oldestVersion(steps: readonly Step[], newest: number): number {
  const oldest = newest - steps.length;
  for (const [index, step] of steps.entries()) {
    if (step.to === oldest + index + 1) continue;
    throw new Error(`Step ${step.name} leads to version ${step.to}, not ${oldest + index + 1}`);
  }
  return oldest;
}

/** The document after every step beyond `fromVersion`; its version is set by the way. */
export function migrate(document: JsonObject, fromVersion: number, steps: readonly Step[]): JsonObject {
  return steps
    .filter(({ to }) => to > fromVersion)
    .reduce((current, step) => ({ ...step.up(current), version: step.to }), document);
}
