import { changeRun } from '../edits/changeRun.ts';
import { KNOWN_GAUGES } from '../gauges.ts';
import type { Plan } from '../schema.ts';

/** Runs of the feed and the size that the answer gives them now. */
export interface Sized {
  readonly runId: string;
  readonly gauge: string;
}

/** The next size up that the shop holds; null when there is none. 'sae:4' with 8, 4 and 2 in stock: 'sae:2'. */
export function nextInStock(stock: readonly string[], gauge: string): string | null {
  const system = (id: string): string => id.slice(0, id.indexOf(':'));
  const place = KNOWN_GAUGES.indexOf(gauge);
  const larger = stock
    .filter((id) => system(id) === system(gauge) && KNOWN_GAUGES.indexOf(id) > place)
    .sort((one, other) => KNOWN_GAUGES.indexOf(one) - KNOWN_GAUGES.indexOf(other));
  return larger[0] ?? null;
}

/**
 * The plan with the feed one size of the stock thicker, fixed; null when no larger size is held. What is assumed of it is
 * told then: a cable that is yet to be bought is bought marked, and a fixed size of which nothing is told counts as one
 * that lies there unmarked.
 */
export function thickerFeed(plan: Plan, feed: readonly Sized[]): Plan | null {
  let thicker = plan;
  for (const { runId, gauge } of feed) {
    const size = nextInStock(plan.settings.stock, gauge);
    const run = plan.runs.find(({ id }) => id === runId);
    if (size === null || run === undefined) return null;
    const { material, insulationC } = run.conductor;
    const bought = {
      material: { value: material.value, origin: 'told' },
      insulationC: { value: insulationC.value, origin: 'told' },
    } as const;
    thicker = changeRun(thicker, runId, { conductor: { ...run.conductor, ...bought, size } });
  }
  return thicker === plan ? null : thicker;
}
