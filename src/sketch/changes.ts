/** Which fittings and runs a draft changes. */
import { runById, runsAt } from '../plan/byId.ts';
import { differing } from '../plan/differing.ts';
import type { Plan } from '../plan/schema.ts';

/** Ids of what is in one list and not, as the same object, in the other. */
function otherIds(before: readonly { id: string }[], after: readonly { id: string }[]): string[] {
  const places = differing(before, after);
  if (places !== null) return places.flatMap((place) => [before[place], after[place]].flatMap((one) => one?.id ?? []));
  const [old, now] = [new Set(before), new Set(after)];
  return [...before.filter((thing) => !now.has(thing)), ...after.filter((thing) => !old.has(thing))].map(
    ({ id }) => id,
  );
}

/** Ids of the runs of a plan that share a line with one of those: they lie beside it as long as it is there. */
type Beside = (plan: Plan, ids: readonly string[]) => readonly string[];

/** Ids of what the draft changes, brings or takes away; a run moves with the fittings at its ends. */
function changedIds(plan: Plan, draft: Plan, beside: Beside | undefined): ReadonlySet<string> {
  const fittings = otherIds(plan.fittings, draft.fittings);
  const carried = fittings.flatMap((id) => [...runsAt(plan, id), ...runsAt(draft, id)]);
  const ids = [...fittings, ...otherIds(plan.runs, draft.runs), ...carried.map(({ id }) => id)];
  return new Set([...ids, ...[plan, draft].flatMap((one) => beside?.(one, ids) ?? [])]);
}

/** The ids with the fittings at the ends of those that are runs. */
export function withEnds(plan: Plan, ids: ReadonlySet<string>): ReadonlySet<string> {
  const runs = [...ids].flatMap((id) => runById(plan, id) ?? []);
  return new Set([...ids, ...runs.flatMap(({ from, to }) => [from.fittingId, to.fittingId])]);
}

const NOTHING: ReadonlySet<string> = new Set();

/**
 * What the gesture under way has changed so far. A set that only grows, and stays the same while it does not: what has
 * been moved once goes on being drawn with every frame, so that the rest is not drawn anew when it comes back home.
 */
export class Changes {
  #draft: Plan | null = null;
  #ids = NOTHING;

  of(plan: Plan, draft: Plan | null, beside?: Beside): ReadonlySet<string> {
    if (draft === this.#draft) return this.#ids;
    this.#draft = draft;
    if (draft === null) {
      this.#ids = NOTHING;
    } else if (draft !== plan) {
      const now = changedIds(plan, draft, beside);
      if ([...now].some((id) => !this.#ids.has(id))) this.#ids = new Set([...this.#ids, ...now]);
    }
    return this.#ids;
  }
}
