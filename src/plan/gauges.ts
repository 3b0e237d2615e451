/**
 * Sizes a plan may name, and those a shop is taken to stock. The calc room holds the same sizes with their areas; this
 * room may not call it, so a test holds the two lists together.
 */
import type { Settings } from './schema.ts';

export type SizeSystem = Settings['sizeSystem'];

const NUMBERED = ['20', '18', '16', '14', '12', '10', '8', '6', '4', '3', '2', '1', '1/0', '2/0', '3/0', '4/0'];

const METRIC = ['0.5', '0.75', '1', '1.5', '2.5', '4', '6', '10', '16', '25', '35', '50', '70', '95', '120'];

const KNOWN: ReadonlySet<string> = new Set([
  ...NUMBERED.map((size) => `sae:${size}`),
  ...NUMBERED.map((size) => `awg:${size}`),
  ...METRIC.map((size) => `mm2:${size}`),
]);

/** Every size a plan may name. */
export const KNOWN_GAUGES: readonly string[] = [...KNOWN];

export const isKnownGauge = (id: string): boolean => KNOWN.has(id);

const NUMBERED_STOCK = ['8', '4', '2', '1/0', '2/0', '4/0'];
const METRIC_STOCK = ['10', '16', '25', '35', '50', '70', '95', '120'];

/** Sizes stocked until told otherwise, ascending. Source: the project's rules, section 4. */
export const defaultStock = (system: SizeSystem): string[] =>
  (system === 'mm2' ? METRIC_STOCK : NUMBERED_STOCK).map((size) => `${system}:${size}`);
