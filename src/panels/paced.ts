/** The plan that panels show: while a finger drags no newer one than at a pace at which it can be read. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { answeredPlan, type Desk, type DeskState, inFullPlan } from '../desk/desk.ts';
import type { Plan } from '../plan/schema.ts';

interface Shown {
  readonly plan: Plan;
  /** A newer one has been answered for, and waits. */
  readonly isOld: boolean;
}

type Paced = StoreApi<Shown>;

export interface Pace {
  /** Shown once the finger has rested so long, ms, */
  readonly restMs: number;
  /** or has been waited for so long. */
  readonly mostMs: number;
  /** The newest plan whose answer holds what is shown of it. */
  readonly newest: (state: DeskState) => Plan;
}

/**
 * Findings are read line by line, when the finger rests: until then they had better not jump about. Fields and tables are
 * for after it has. Large figures are glanced at, and come with each answer (`summary/glance.tsx`).
 */
export const PACES = {
  findings: { restMs: 400, mostMs: 2_000, newest: answeredPlan },
  fields: { restMs: 400, mostMs: Number.POSITIVE_INFINITY, newest: inFullPlan },
} as const satisfies Record<string, Pace>;

const known = new WeakMap<Desk, Map<Pace, Paced>>();

function follow(desk: Desk, { restMs, mostMs, newest }: Pace): Paced {
  const now = (): Shown => {
    const state = desk.getState();
    const plan = newest(state);
    return { plan, isOld: plan !== answeredPlan(state) };
  };
  const paced: Paced = createStore(now);
  let pause: ReturnType<typeof setTimeout> | null = null;
  let [movedAtMs, waitsFromMs] = [0, 0];
  const show = (): void => {
    if (pause !== null) clearTimeout(pause);
    pause = null;
    const [next, shown] = [now(), paced.getState()];
    if (next.plan !== shown.plan || next.isOld !== shown.isOld) paced.setState(next);
  };
  const look = (): void => {
    const leftMs = Math.min(movedAtMs + restMs, waitsFromMs + mostMs) - Date.now();
    if (leftMs > 0) pause = setTimeout(look, leftMs);
    else show();
  };
  desk.subscribe((state, before) => {
    // an act that is done is shown at once
    if (state.draft === null) {
      show();
      return;
    }
    if (state.draft !== before.draft) movedAtMs = Date.now();
    if (pause !== null || answeredPlan(state) === paced.getState().plan) return;
    waitsFromMs = Date.now();
    look();
    if (pause !== null && !paced.getState().isOld) paced.setState({ isOld: true });
  });
  return paced;
}

/** One for all that keep that pace: what of one plan stands side by side changes together. */
export function pacedOf(desk: Desk, pace: Pace): Paced {
  const paces = known.get(desk) ?? new Map<Pace, Paced>();
  known.set(desk, paces);
  const paced = paces.get(pace) ?? follow(desk, pace);
  paces.set(pace, paced);
  return paced;
}
