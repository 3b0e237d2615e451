/** What a source puts in the way of its own current while it feeds: its own resistance and the factory's cable. */
import { batteryOhm } from '../../calc/supply/battery.ts';
import type { CircuitSource } from '../circuit.ts';
import type { Model } from '../model.ts';
import { batteryCase, factoryCableOhm } from '../short/battery.ts';

/**
 * Resistance behind a source's posts in use, ohm: a warm battery by its chemistry, its label or its own figure, and for
 * one that stands elsewhere the factory's cable, hot. `scale` multiplies the battery's own. SAE 600 A: 0.00405.
 */
export const postOhm = (model: Model, source: CircuitSource, scale: number): number =>
  scale * batteryOhm(batteryCase(model, source), 'warm') + factoryCableOhm(source, 'lowest');
