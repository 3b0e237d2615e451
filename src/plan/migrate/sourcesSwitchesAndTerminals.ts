/**
 * Version 2: sources, switches, breakers and buses of their own kind; batteries with a chemistry, a link on the post and
 * a sensor; what terminals take; cables in a bundle, bent, with measured joints and counted strands; own fuse-links; 24 V.
 * What version 1 could not say is not told here either, or is what its defaults stood for.
 */
import { isJsonObject, type JsonObject, type Step } from './step.ts';

const BY_KIND: Readonly<Record<string, JsonObject>> = {
  battery: { chemistry: 'leadAcid', ccaStandard: 'sae', internalOhm: null, postLink: null, sensedNegative: null },
  passThrough: { grommetInsideMm: null },
  block: { outputsTake: null },
  amplifier: {
    supplyInputs: 'one',
    idleA: { value: 1, origin: 'assumed', source: 'commonPractice' },
    duty: null,
  },
};

const SETTINGS: JsonObject = {
  ownLinks: [],
  usableShare: { value: 0.5, origin: 'assumed', source: 'feedrunRules' },
  peukert: { value: 1.2, origin: 'assumed', source: 'feedrunRules' },
};

const RUN: JsonObject = { bundled: 1, bendRadiusMm: null, fromJointOhm: null, toJointOhm: null };
const CONDUCTOR: JsonObject = { strands: null, copperThrough: null };

/** Applies a change to an object; anything else is left for the schema to refuse. */
const within = (part: unknown, change: (part: JsonObject) => JsonObject): unknown =>
  isJsonObject(part) ? change(part) : part;

const each = (list: unknown, change: (part: JsonObject) => JsonObject): unknown =>
  Array.isArray(list) ? list.map((part: unknown) => within(part, change)) : list;

const fittingUp = (fitting: JsonObject): JsonObject => ({
  ...fitting,
  takes: null,
  ...(typeof fitting.kind === 'string' && Object.hasOwn(BY_KIND, fitting.kind) ? BY_KIND[fitting.kind] : {}),
});

const runUp = (run: JsonObject): JsonObject => ({
  ...run,
  ...RUN,
  conductor: within(run.conductor, (conductor) => ({ ...conductor, ...CONDUCTOR })),
});

export const sourcesSwitchesAndTerminals: Step = {
  name: 'SourcesSwitchesAndTerminals',
  to: 2,
  up: (document) => ({
    ...document,
    settings: within(document.settings, (settings) => ({ ...settings, ...SETTINGS })),
    fittings: each(document.fittings, fittingUp),
    runs: each(document.runs, runUp),
  }),
};
