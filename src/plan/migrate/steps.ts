import type { Step } from './step.ts';

/**
 * Every step since version 1, oldest first, each in a file named for its change. Empty while version 1 is the newest;
 * the first step leads to version 2.
 */
export const STEPS: readonly Step[] = [];
