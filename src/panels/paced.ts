/** The plan that panels show: while a finger drags no newer one than at a pace that can be read. */
import { createStore, type StoreApi } from 'zustand/vanilla';
import { answeredPlan, type Desk } from '../desk/desk.ts';
import type { Plan } from '../plan/schema.ts';

type Paced = StoreApi<{ readonly plan: Plan }>;

const known = new WeakMap<Desk, Map<number, Paced>>();

function follow(desk: Desk, paceMs: number): Paced {
  const newest = () => ({ plan: answeredPlan(desk.getState()) });
  const paced: Paced = createStore(newest);
  let pause: ReturnType<typeof setTimeout> | null = null;
  const show = (): void => {
    if (pause !== null) clearTimeout(pause);
    pause = null;
    if (newest().plan !== paced.getState().plan) paced.setState(newest());
  };
  desk.subscribe((state) => {
    // an act that is done is shown at once
    if (state.draft === null) show();
    else if (answeredPlan(state) !== paced.getState().plan) pause ??= setTimeout(show, paceMs);
  });
  return paced;
}

/** One for all that keeps that pace: what of one plan stands side by side changes together. */
export function pacedOf(desk: Desk, paceMs: number): Paced {
  const paces = known.get(desk) ?? new Map<number, Paced>();
  known.set(desk, paces);
  const paced = paces.get(paceMs) ?? follow(desk, paceMs);
  paces.set(paceMs, paced);
  return paced;
}
