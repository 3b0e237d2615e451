/** Inputs that lack a feed, and how many of them one feed may serve. */
import type { Fitting, FittingOf, Plan, TerminalRef } from '../schema.ts';

type Consumer = FittingOf<'amplifier'> | FittingOf<'load'>;

const isConsumer = (fitting: Fitting): fitting is Consumer => fitting.kind === 'amplifier' || fitting.kind === 'load';

const consumersOn = (plan: Plan, sheetId: string): Consumer[] =>
  plan.fittings.filter((fitting): fitting is Consumer => isConsumer(fitting) && fitting.sheetId === sheetId);

/** One input of a consumer: its supply and the ground beside it, and the current it may draw, A. */
export interface Inlet {
  readonly consumer: Consumer;
  readonly supply: TerminalRef;
  readonly ground: TerminalRef;
  readonly currentA: number;
}

/** At the voltage that an amplifier shuts down near, V: the most it may draw. */
const LEAST_V = 11;

function currentOf(consumer: Consumer): number {
  if (consumer.kind === 'load') return consumer.currentA.value;
  const byOutput = consumer.ratedW === null ? 0 : consumer.ratedW.value / consumer.efficiency.value / LEAST_V;
  const byFuses = (consumer.onboardFusesA ?? []).reduce((sum, ratingA) => sum + ratingA, 0);
  return byOutput > 0 ? byOutput : byFuses;
}

/** Every input of the consumers on a sheet, fed or not. */
export const inletsOn = (plan: Plan, sheetId: string): Inlet[] =>
  consumersOn(plan, sheetId).flatMap((consumer): Inlet[] => {
    const isTwo = consumer.kind === 'amplifier' && consumer.supplyInputs === 'two';
    const marks = isTwo ? ['', '2'] : [''];
    return marks.map((mark) => ({
      consumer,
      supply: { fittingId: consumer.id, terminal: `supply${mark}` },
      ground: { fittingId: consumer.id, terminal: `ground${mark}` },
      currentA: currentOf(consumer) / marks.length,
    }));
  });

/**
 * The most that one feed is laid for, A: beyond it no link and no cable that a workshop holds serve with room to spare,
 * and the feed is split. Source: our choice, under the largest links of ISO 8820-5 at a hot holder.
 */
const FEED_MOST_A = 230;

/** The inlets in as few feeds as carry them, in their order; one that is too large alone has a feed of its own. */
export function feedsOf(inlets: readonly Inlet[]): Inlet[][] {
  const feeds: { inlets: Inlet[]; currentA: number }[] = [];
  for (const inlet of inlets) {
    const room = feeds.find(({ currentA }) => currentA + inlet.currentA <= FEED_MOST_A);
    if (room === undefined) feeds.push({ inlets: [inlet], currentA: inlet.currentA });
    else {
      room.inlets.push(inlet);
      room.currentA += inlet.currentA;
    }
  }
  return feeds.map((feed) => feed.inlets);
}
