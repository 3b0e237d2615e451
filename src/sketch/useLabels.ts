/** Where the labels of a pane stand: laid out anew when what they stand beside changes, not with every move of a finger. */
import { useMemo, useRef } from 'react';
import type { PaneSize } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import { groundOf, layOutLabels, layOutMoving, type PlacedLabel } from './labelLayout.ts';
import type { Scene } from './useScene.ts';

export interface PlacedLabels {
  /** The same list while nothing in it changes. */
  still: readonly PlacedLabel[];
  live: readonly PlacedLabel[];
}

const NONE: readonly PlacedLabel[] = [];

/** The list before, where it holds the same labels. */
function useSameList(list: readonly PlacedLabel[]): readonly PlacedLabel[] {
  const last = useRef(NONE);
  const isSame = list.length === last.current.length && list.every((label, place) => label === last.current[place]);
  if (!isSame) last.current = list;
  return last.current;
}

export function useLabels(
  scene: Scene,
  camera: Camera,
  size: PaneSize,
  keep: string | null,
  scale: number,
): PlacedLabels {
  const { settled, shown, changed, still, live } = scene;
  const wish = { keep, scale };
  const laidOut = useMemo(
    () => layOutLabels(settled, camera, size, { keep, scale }),
    [settled, camera, size, keep, scale],
  );
  const { runs, fittings } = still;
  const isMoving = changed.size > 0;
  const ground = useMemo(
    () => (isMoving ? groundOf({ runs, fittings, hazards: [] }, camera, size, scale) : null),
    [isMoving, runs, fittings, camera, size, scale],
  );
  // where they stood, with the figures of the newest answer
  const stood = useMemo(() => {
    const now = new Map(still.labels.map((label) => [label.key, label]));
    return laidOut.flatMap((one) => {
      const label = now.get(one.label.key);
      if (label === undefined) return [];
      return label.title === one.label.title && label.figures === one.label.figures ? [one] : [{ ...one, label }];
    });
  }, [laidOut, still.labels]);
  const moved = {
    runs: live.runs,
    fittings: live.fittings.filter(({ fittingId }) => changed.has(fittingId)),
    hazards: shown.hazards,
    labels: live.labels,
  };
  const moving =
    ground === null ? { still: laidOut, live: NONE } : layOutMoving(stood, ground, moved, camera, size, wish);
  return { still: useSameList(moving.still), live: moving.live };
}
