import { sourcesSwitchesAndTerminals } from './sourcesSwitchesAndTerminals.ts';
import type { Step } from './step.ts';
import { tapeOfAPlace } from './tapeOfAPlace.ts';
import { vehiclesAndSheets } from './vehiclesAndSheets.ts';

/** Every step since version 1, oldest first, each in a file named for its change. */
export const STEPS: readonly Step[] = [sourcesSwitchesAndTerminals, vehiclesAndSheets, tapeOfAPlace];
