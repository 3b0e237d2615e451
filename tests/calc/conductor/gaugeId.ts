import { type GaugeId, isGaugeId } from '../../../src/calc/conductor/gauge.ts';

/** A size named in a test; throws on a slip of the pen. */
export function gaugeId(text: string): GaugeId {
  if (!isGaugeId(text)) throw new Error(`no such size: ${text}`);
  return text;
}
