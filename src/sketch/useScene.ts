/** What both panes show: the drawing of the plan as the hand would leave it, and which part of it moves. */
import { useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import { answeredPlan } from '../desk/desk.ts';
import { wholePlan } from '../desk/whole.ts';
import { drawSheet, drawThings } from '../drawing/draw.ts';
import { type LabelWords, relabelled } from '../drawing/labels.ts';
import type { Drawing, FittingShape, LabelShape, RunShape } from '../drawing/shapes.ts';
import { runById, runsAt } from '../plan/byId.ts';
import type { Plan, Sheet } from '../plan/schema.ts';
import { runTitle, sheetTitle, type Units, unitsFor, words } from '../words/index.ts';
import { withGhosts } from './ghosts.ts';
import { drawingIn, type Sight, useSight } from './sight.ts';
import type { Table } from './table.ts';

export interface Scene {
  plan: Plan;
  /** For the plan that is shown, or while that is still being worked out, for the one before. */
  answer: Assessment;
  units: Units;
  /** All that is seen: what the gesture leaves, then what it changes. */
  shown: Drawing;
  /** The plan as the gesture found it, with every label; the same as `shown` while the hand is still. */
  settled: Drawing;
  /** What the gesture under way changes, brings or takes away. */
  changed: ReadonlySet<string>;
  /** What it leaves as it is, drawn once; labels with the figures of the newest answer. */
  still: { runs: readonly RunShape[]; fittings: readonly FittingShape[]; labels: readonly LabelShape[] };
  /** What it changes, drawn with every frame; its fittings include those at the ends of its runs, to lie over them. */
  live: { runs: readonly RunShape[]; fittings: readonly FittingShape[]; labels: readonly LabelShape[] };
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

const NOTHING_LIVE: Scene['live'] = { runs: [], fittings: [], labels: [] };

/** Ids of what is in one list and not, as the same object, in the other. */
function differing(before: readonly { id: string }[], after: readonly { id: string }[]): string[] {
  // most drafts move things and leave the lists as they are
  const isAligned = before.length === after.length;
  const [old, now] = isAligned ? [null, null] : [new Set(before), new Set(after)];
  return [
    ...before.filter((thing, place) => (now === null ? after[place] !== thing : !now.has(thing))),
    ...after.filter((thing, place) => (old === null ? before[place] !== thing : !old.has(thing))),
  ].map(({ id }) => id);
}

/** Ids of fittings and runs that the draft changes, brings or takes away; a run moves with the fittings at its ends. */
function changedIds(plan: Plan, draft: Plan): ReadonlySet<string> {
  const fittings = differing(plan.fittings, draft.fittings);
  const carried = fittings.flatMap((id) => [...runsAt(plan, id), ...runsAt(draft, id)]);
  return new Set([...fittings, ...differing(plan.runs, draft.runs), ...carried.map(({ id }) => id)]);
}

/** The ids with the fittings at the ends of those that are runs. */
export function withEnds(plan: Plan, ids: ReadonlySet<string>): ReadonlySet<string> {
  const runs = [...ids].flatMap((id) => runById(plan, id) ?? []);
  return new Set([...ids, ...runs.flatMap(({ from, to }) => [from.fittingId, to.fittingId])]);
}

function useNote(table: Table, plan: Plan): string | null {
  const splits = useStore(table.seen, ({ state }) =>
    state.name === 'place.aiming' || state.name === 'move.draggingFitting' ? state.splits : null,
  );
  const isLocked = useStore(table.seen, ({ state }) => state.name === 'panning' && state.isLocked === true);
  if (isLocked) return words.sketch.drawing.isLocked;
  const run = plan.runs.find(({ id }) => id === splits);
  return run === undefined ? null : words.sketch.drawing.splits(runTitle(plan, run));
}

const NOTHING: ReadonlySet<string> = new Set();

/**
 * What the gesture under way has changed so far. A set that only grows, and stays the same while it does not: what has
 * been moved once goes on being drawn with every frame, so that the rest is not drawn anew when it comes back home.
 */
function useChanged(plan: Plan, draft: Plan | null): ReadonlySet<string> {
  const last = useRef(NOTHING);
  if (draft === null) {
    last.current = NOTHING;
  } else if (draft !== plan) {
    const now = changedIds(plan, draft);
    if ([...now].some((id) => !last.current.has(id))) last.current = new Set([...last.current, ...now]);
  }
  return last.current;
}

interface Figured {
  /** Of the plan as it is. */
  drawn: readonly LabelShape[];
  answer: Assessment;
  labels: readonly LabelShape[];
}

/** The labels of the plan with the figures of the newest answer; each answer renews only what it says otherwise. */
function useFigures(drawn: readonly LabelShape[], plan: Plan, sheetId: string, answered: Plan): readonly LabelShape[] {
  const last = useRef<Figured | null>(null);
  return useMemo(() => {
    if (answered === plan) return drawn;
    const from = last.current?.drawn === drawn ? last.current : { answer: answerOf(plan), labels: drawn };
    const now = answerOf(answered);
    const answers = { before: from.answer, now };
    const labels = relabelled(from.labels, plan, sheetId, answers, labelWords(unitsFor(plan)));
    last.current = { drawn, answer: now, labels };
    return labels;
  }, [drawn, plan, sheetId, answered]);
}

const lockedIn = ({ fittings, runs }: Plan): ReadonlySet<string> =>
  new Set([...fittings, ...runs].filter(({ locked }) => locked).map(({ id }) => id));

export function useScene(table: Table, sheet: Sheet): Scene {
  const plan = useStore(table.desk, wholePlan);
  const draft = useStore(table.desk, (state) => state.draft);
  const shownNow = draft ?? plan;
  const answered = useStore(table.desk, answeredPlan);
  const proposal = useStore(table.desk, (state) => state.proposal);
  const note = useNote(table, plan);
  const sight = useSight();
  const changed = useChanged(plan, draft);
  const locked = useMemo(() => lockedIn(plan), [plan]);

  const drawn = useMemo(() => drawSheet(plan, sheet, answerOf(plan), labelWords(unitsFor(plan))), [plan, sheet]);
  const settled = useMemo(() => withGhosts(drawingIn(sight, drawn), proposal), [drawn, sight, proposal]);
  const left = useMemo(
    () => ({
      runs: settled.runs.filter(({ runId }) => !changed.has(runId)),
      fittings: settled.fittings.filter(({ fittingId }) => !changed.has(fittingId)),
    }),
    [settled, changed],
  );
  const figures = useFigures(drawn.labels, plan, sheet.id, answered);
  const labels = useMemo(() => {
    if (figures === drawn.labels) return settled.labels;
    return withGhosts(drawingIn(sight, { ...drawn, labels: figures }), proposal).labels;
  }, [drawn, settled, figures, sight, proposal]);

  return useMemo(() => {
    const answer = answerOf(answered);
    const units = unitsFor(shownNow);
    const longestM = Math.max(0, ...answer.sources.map(({ unprotectedM }) => unprotectedM));
    const unprotected = longestM > 0 ? units.length(longestM) : null;
    const scene = { plan: shownNow, answer, units, settled, changed, locked, unprotected, sight, note };
    const still = { ...left, labels: labels.filter(({ kind, id }) => kind !== 'hazard' && !changed.has(id)) };
    if (changed.size === 0) return { ...scene, shown: settled, still, live: NOTHING_LIVE };
    const things = drawThings(shownNow, sheet, answer, labelWords(units), withEnds(shownNow, changed));
    const drawn = withGhosts(drawingIn(sight, { outline: settled.outline, ...things }), proposal);
    const live = {
      runs: drawn.runs.filter(({ runId }) => changed.has(runId)),
      fittings: drawn.fittings,
      labels: drawn.labels.filter(({ kind, id }) => kind === 'hazard' || changed.has(id)),
    };
    const moved = live.fittings.filter(({ fittingId }) => changed.has(fittingId));
    const shown = {
      ...drawn,
      runs: [...left.runs, ...live.runs],
      fittings: [...left.fittings, ...moved],
      labels: [...still.labels, ...live.labels],
    };
    return { ...scene, shown, still, live };
  }, [shownNow, answered, settled, left, labels, changed, locked, sheet, sight, note, proposal]);
}
