import { isJsonObject, type JsonObject, type Step } from '../../../src/plan/migrate/step.ts';

/**
 * The one step of an invented past: version 0 kept lengths in millimetres and a run's size as a bare text `gauge`.
 * No such file was ever saved; the step proves the way by which later versions will come.
 */
export const metresAndConductor: Step = {
  name: 'MetresAndConductor',
  to: 1,
  up: (document) => ({
    ...document,
    sheets: objects(document.sheets).map((sheet) => ({ ...sheet, outline: lengthsToMetres(asObject(sheet.outline)) })),
    fittings: objects(document.fittings).map((fitting) => ({ ...fitting, at: lengthsToMetres(asObject(fitting.at)) })),
    runs: objects(document.runs).map(runUp),
  }),
};

function runUp({ gauge, ...run }: JsonObject): JsonObject {
  const conductor = {
    size: gauge,
    material: { value: 'copper', origin: 'assumed' },
    insulationC: { value: 105, origin: 'assumed' },
  };
  const { bends, locked, ...lengths } = run;
  const metres = lengthsToMetres(lengths);
  return { ...metres, bends: objects(bends).map(lengthsToMetres), conductor, locked };
}

/** 'lengthMm': 4400 becomes 'lengthM': 4.4; other keys stay. */
function lengthsToMetres(part: JsonObject): JsonObject {
  return Object.fromEntries(
    Object.entries(part).map(([key, value]) => {
      if (!key.endsWith('Mm')) return [key, value];
      return [`${key.slice(0, -2)}M`, typeof value === 'number' ? value / 1000 : value];
    }),
  );
}

function asObject(value: unknown): JsonObject {
  if (!isJsonObject(value)) throw new TypeError('Version 0 keeps an object here');
  return value;
}

function objects(value: unknown): JsonObject[] {
  if (!Array.isArray(value)) throw new TypeError('Version 0 keeps a list here');
  return value.map(asObject);
}
