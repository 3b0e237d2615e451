/** What both panes show of a sheet: its drawing, and what of it the gesture under way leaves as it is. */
import { useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import { answerOf } from '../desk/answer.ts';
import { wholePlan } from '../desk/whole.ts';
import { drawSheet } from '../drawing/draw.ts';
import type { Drawing, FittingShape, RunShape } from '../drawing/shapes.ts';
import type { Proposal } from '../plan/propose/proposal.ts';
import type { Plan, Sheet } from '../plan/schema.ts';
import { unitsFor } from '../words/index.ts';
import { type CloseUp, closeUpOf, looksAlike } from './closeUp.ts';
import { withGhosts } from './ghosts.ts';
import { labelWords } from './labelWords.ts';
import { drawingIn, type Sight, useSight } from './sight.ts';
import type { Table } from './table.ts';

/** The same from frame to frame while a finger drags; what changes with it is worked out in `live.ts`. */
export interface Scene {
  /** The plan as the gesture found it. */
  plan: Plan;
  sheet: Sheet;
  /** The drawing of that plan as it is. */
  drawn: Drawing;
  /** As it is shown here: to whom, and with what is proposed told apart. */
  settled: Drawing;
  /** What the gesture under way changes, brings or takes away. */
  changed: ReadonlySet<string>;
  /** What it leaves as it is, drawn once. */
  still: { runs: readonly RunShape[]; fittings: readonly FittingShape[] };
  /** Ids of what is locked. */
  locked: ReadonlySet<string>;
  sight: Sight;
  proposal: Proposal;
  /** What the nearer pane looks at; the same object while that is the same. */
  closeUp: CloseUp | null;
}

const lockedIn = ({ fittings, runs }: Plan): ReadonlySet<string> =>
  new Set([...fittings, ...runs].filter(({ locked }) => locked).map(({ id }) => id));

/** As long as a tool is taken up it stays as it was: what is to be hit next does not move away. */
function useCloseUp({ desk }: Table, plan: Plan, sheet: Sheet, { outline }: Drawing): CloseUp | null {
  const last = useRef<{ closeUp: CloseUp | null; of: string } | null>(null);
  const isAtWork = useStore(desk, ({ hand }) => hand.way !== 'move');
  const now = useMemo(() => closeUpOf(plan, sheet, outline), [plan, sheet, outline]);
  const of = `${plan.id} ${sheet.id}`;
  const isOther = last.current?.of !== of;
  if (isOther || !(isAtWork || looksAlike(last.current?.closeUp ?? null, now))) last.current = { closeUp: now, of };
  return last.current?.closeUp ?? null;
}

export function useScene(table: Table, sheet: Sheet): Scene {
  const { desk, changes } = table;
  const plan = useStore(desk, wholePlan);
  const changed = useStore(desk, (state) =>
    changes.of(wholePlan(state), state.draft, table.late.getState()?.besideThese),
  );
  const proposal = useStore(desk, (state) => state.proposal);
  const sight = useSight();
  const drawn = useMemo(() => drawSheet(plan, sheet, answerOf(plan), labelWords(unitsFor(plan))), [plan, sheet]);
  const settled = useMemo(() => withGhosts(drawingIn(sight, drawn), proposal), [drawn, sight, proposal]);
  const still = useMemo(
    () => ({
      runs: settled.runs.filter(({ runId }) => !changed.has(runId)),
      fittings: settled.fittings.filter(({ fittingId }) => !changed.has(fittingId)),
    }),
    [settled, changed],
  );
  const locked = useMemo(() => lockedIn(plan), [plan]);
  const closeUp = useCloseUp(table, plan, sheet, drawn);
  return useMemo(
    () => ({ plan, sheet, drawn, settled, changed, still, locked, sight, proposal, closeUp }),
    [plan, sheet, drawn, settled, changed, still, locked, sight, proposal, closeUp],
  );
}
