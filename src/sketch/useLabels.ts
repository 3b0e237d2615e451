/** Where the labels of a pane stand: laid out anew when what they stand beside changes, not with every move of a finger. */
import { useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import type { PaneSize } from '../desk/camera.ts';
import { answeredPlan, type Camera, type Desk } from '../desk/desk.ts';
import { relabelled } from '../drawing/labels.ts';
import type { LabelShape } from '../drawing/shapes.ts';
import { unitsFor } from '../words/index.ts';
import { withGhosts } from './ghosts.ts';
import { groundOf, layOutLabels, layOutMoving, type PlacedLabel } from './labelLayout.ts';
import { labelWords } from './labelWords.ts';
import { drawingIn } from './sight.ts';
import { useLive } from './useLive.ts';
import type { Scene } from './useScene.ts';

export interface PlacedLabels {
  /** The same list while nothing in it changes. */
  still: readonly PlacedLabel[];
  live: readonly PlacedLabel[];
}

const NONE: readonly PlacedLabel[] = [];

interface Figured {
  /** Of the plan as it is. */
  drawn: readonly LabelShape[];
  answer: Assessment;
  labels: readonly LabelShape[];
}

/** The labels of the plan with the figures of the newest answer; each answer renews only what it says otherwise. */
function useFigures(desk: Desk, { plan, sheet, drawn, settled, sight, proposal }: Scene): readonly LabelShape[] {
  const answered = useStore(desk, answeredPlan);
  const last = useRef<Figured | null>(null);
  const figures = useMemo(() => {
    if (answered === plan) return drawn.labels;
    const before =
      last.current?.drawn === drawn.labels ? last.current : { answer: answerOf(plan), labels: drawn.labels };
    const now = answerOf(answered);
    const answers = { before: before.answer, now };
    const labels = relabelled(before.labels, plan, sheet.id, answers, labelWords(unitsFor(plan)));
    last.current = { drawn: drawn.labels, answer: now, labels };
    return labels;
  }, [drawn, plan, sheet, answered]);
  return useMemo(() => {
    if (figures === drawn.labels) return settled.labels;
    return withGhosts(drawingIn(sight, { ...drawn, labels: figures }), proposal).labels;
  }, [drawn, settled, figures, sight, proposal]);
}

/** The list before, where it holds the same labels. */
function useSameList(list: readonly PlacedLabel[]): readonly PlacedLabel[] {
  const last = useRef(NONE);
  const isSame = list.length === last.current.length && list.every((label, place) => label === last.current[place]);
  if (!isSame) last.current = list;
  return last.current;
}

interface Wish {
  /** The id whose label is shown even where it covers another. */
  keep: string | null;
  scale: number;
}

export function useLabels(
  desk: Desk,
  scene: Scene,
  camera: Camera,
  size: PaneSize,
  { keep, scale }: Wish,
): PlacedLabels {
  const { settled, changed } = scene;
  const { runs, fittings } = scene.still;
  const figures = useFigures(desk, scene);
  const live = useLive(desk, scene);
  const laidOut = useMemo(
    () => layOutLabels(settled, camera, size, { keep, scale }),
    [settled, camera, size, keep, scale],
  );
  const isMoving = changed.size > 0;
  const ground = useMemo(
    () => (isMoving ? groundOf({ runs, fittings, hazards: [] }, camera, size, scale) : null),
    [isMoving, runs, fittings, camera, size, scale],
  );
  // where they stood, with the figures of the newest answer
  const stood = useMemo(() => {
    const left = figures.filter(({ kind, id }) => kind !== 'hazard' && !changed.has(id));
    const now = new Map(left.map((label) => [label.key, label]));
    return laidOut.flatMap((one) => {
      const label = now.get(one.label.key);
      if (label === undefined) return [];
      return label.title === one.label.title && label.figures === one.label.figures ? [one] : [{ ...one, label }];
    });
  }, [laidOut, figures, changed]);
  const moved = {
    runs: live.runs,
    fittings: live.fittings.filter(({ fittingId }) => changed.has(fittingId)),
    hazards: live.shown.hazards,
    labels: live.labels,
  };
  const placed =
    ground === null
      ? { still: laidOut, live: NONE }
      : layOutMoving(stood, ground, moved, camera, size, { keep, scale });
  return { still: useSameList(placed.still), live: placed.live };
}
