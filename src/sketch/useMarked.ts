/** What is marked on the sketch: the selection, and the places of the finding looked at. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import { answerOf } from '../desk/answer.ts';
import { answeredPlan, type Selection } from '../desk/desk.ts';
import type { Marked } from './paint/marks.ts';
import type { Table } from './table.ts';

const NO_PLACES: ReadonlySet<string> = new Set();

/** The places of the finding looked at, and what is picked out. */
export function useMarked({ desk, seen }: Table): Marked {
  const selected = useStore(desk, (state) => state.selection);
  /** The fitting that is being placed is picked out before it is part of the plan. */
  const aimedId = useStore(seen, ({ state }) => (state.name === 'place.aiming' ? state.fitting.id : null));
  const findingId = useStore(desk, (state) => state.findingId);
  // where no finding is looked at, the answer marks nothing
  const plan = useStore(desk, (state) => (state.findingId === null ? null : answeredPlan(state)));
  return useMemo(() => {
    const finding = plan === null ? undefined : answerOf(plan).findings.find(({ id }) => id === findingId);
    const places = finding === undefined ? NO_PLACES : new Set(finding.places.map(({ id }) => id));
    const selection: Selection | null = aimedId === null ? selected : { kind: 'fitting', id: aimedId };
    return { selection, places, placeColour: finding?.severity ?? 'note' };
  }, [selected, aimedId, findingId, plan]);
}
