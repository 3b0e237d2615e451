/** What both panes show: the drawing of the plan as the hand would leave it, and which part of it moves. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import { shownPlan } from '../desk/desk.ts';
import { wholePlan } from '../desk/whole.ts';
import { drawSheet } from '../drawing/draw.ts';
import type { LabelWords } from '../drawing/labels.ts';
import type { Drawing, FittingShape, RunShape } from '../drawing/shapes.ts';
import type { Plan, Sheet } from '../plan/schema.ts';
import { runTitle, sheetTitle, type Units, unitsFor, words } from '../words/index.ts';
import { withGhosts } from './ghosts.ts';
import { drawingIn, type Sight, useSight } from './sight.ts';
import type { Table } from './table.ts';

export interface Scene {
  plan: Plan;
  answer: Assessment;
  units: Units;
  shown: Drawing;
  /** What the gesture under way leaves as it is, drawn once. */
  still: { runs: readonly RunShape[]; fittings: readonly FittingShape[] };
  /** What it changes, drawn with every frame; its fittings include those at the ends of its runs, to lie over them. */
  live: { runs: readonly RunShape[]; fittings: readonly FittingShape[] };
  /** Ids of what is locked. */
  locked: ReadonlySet<string>;
  /** The longest unprotected stretch in words; null when there is none. */
  unprotected: string | null;
  sight: Sight;
  /** What letting go would do, beside the figures at the finger. */
  note: string | null;
}

function labelWords(units: Units): LabelWords {
  const { live } = words.sketch;
  return {
    length: units.length,
    taped: (m) => live.taped(units.length(m)),
    current: units.current,
    power: units.power,
    gauge: units.gauge,
    unprotected: units.length,
    continuesAt: (sheet) => live.continuesAt(sheetTitle(sheet)),
    locked: live.locked,
    separator: live.separator,
  };
}

/** Ids of fittings and runs that the draft changes, brings or takes away; a run moves with the fittings at its ends. */
function changedIds(plan: Plan, draft: Plan): ReadonlySet<string> {
  const before = new Set<unknown>([...plan.fittings, ...plan.runs]);
  const after = new Set<unknown>([...draft.fittings, ...draft.runs]);
  const changed = new Set<string>();
  for (const thing of [...plan.fittings, ...plan.runs]) if (!after.has(thing)) changed.add(thing.id);
  for (const thing of [...draft.fittings, ...draft.runs]) if (!before.has(thing)) changed.add(thing.id);
  for (const { id, from, to } of [...plan.runs, ...draft.runs]) {
    if (changed.has(from.fittingId) || changed.has(to.fittingId)) changed.add(id);
  }
  return changed;
}

/** The ids with the fittings at the ends of those that are runs. */
export function withEnds(plan: Plan, ids: ReadonlySet<string>): ReadonlySet<string> {
  const ends = plan.runs.filter(({ id }) => ids.has(id)).flatMap(({ from, to }) => [from.fittingId, to.fittingId]);
  return new Set([...ids, ...ends]);
}

function useNote(table: Table, plan: Plan): string | null {
  const splits = useStore(table.hand.store, ({ state }) =>
    state.name === 'place.aiming' || state.name === 'move.draggingFitting' ? state.splits : null,
  );
  const isLocked = useStore(table.hand.store, ({ state }) => state.name === 'panning' && state.isLocked === true);
  if (isLocked) return words.sketch.drawing.isLocked;
  const run = plan.runs.find(({ id }) => id === splits);
  return run === undefined ? null : words.sketch.drawing.splits(runTitle(plan, run));
}

export function useScene(table: Table, sheet: Sheet): Scene {
  const plan = useStore(table.desk, wholePlan);
  const shownNow = useStore(table.desk, shownPlan);
  const note = useNote(table, plan);
  const proposal = useStore(table.desk, (state) => state.proposal);
  const sight = useSight();
  const settled = useMemo(
    () => withGhosts(drawingIn(sight, drawSheet(plan, sheet, answerOf(plan), labelWords(unitsFor(plan)))), proposal),
    [plan, sheet, sight, proposal],
  );
  return useMemo(() => {
    const answer = answerOf(shownNow);
    const units = unitsFor(shownNow);
    const isStill = shownNow === plan;
    const shown = isStill
      ? settled
      : withGhosts(drawingIn(sight, drawSheet(shownNow, sheet, answer, labelWords(units))), proposal);
    const changed = isStill ? new Set<string>() : changedIds(plan, shownNow);
    const over = withEnds(shownNow, changed);
    const longestM = Math.max(0, ...answer.sources.map(({ unprotectedM }) => unprotectedM));
    return {
      plan: shownNow,
      answer,
      units,
      shown: isStill ? shown : { ...shown, outline: settled.outline },
      still: {
        runs: settled.runs.filter(({ runId }) => !changed.has(runId)),
        fittings: settled.fittings.filter(({ fittingId }) => !changed.has(fittingId)),
      },
      live: {
        runs: shown.runs.filter(({ runId }) => changed.has(runId)),
        fittings: shown.fittings.filter(({ fittingId }) => over.has(fittingId)),
      },
      locked: new Set([...shownNow.fittings, ...shownNow.runs].filter(({ locked }) => locked).map(({ id }) => id)),
      unprotected: longestM > 0 ? units.length(longestM) : null,
      sight,
      note,
    };
  }, [plan, shownNow, settled, sheet, sight, note, proposal]);
}
