import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { PaneSize } from '../desk/camera.ts';
import type { PaneId } from '../desk/desk.ts';
import { runById } from '../plan/byId.ts';
import type { Plan } from '../plan/schema.ts';
import { runTitle, unitsFor, words } from '../words/index.ts';
import { Finger } from './Finger.tsx';
import { heldAt } from './handDrawing.ts';
import { liveFigures } from './liveFigures.ts';
import type { Palette } from './palette.ts';
import { figuresIn } from './sight.ts';
import type { Table } from './table.ts';
import type { HandState } from './tools/state.ts';
import { useLive } from './useLive.ts';
import type { Scene } from './useScene.ts';

/** What letting go would do; null where that goes without saying. */
function noteOf(state: HandState, plan: Plan): string | null {
  const { drawing } = words.sketch;
  if (state.name === 'panning') return state.isLocked === true ? drawing.isLocked : null;
  if (state.name !== 'place.aiming' && state.name !== 'move.draggingFitting') return null;
  const run = state.splits === null ? undefined : runById(plan, state.splits);
  return run === undefined ? null : drawing.splits(runTitle(plan, run));
}

interface FingerNoteProps {
  id: PaneId;
  table: Table;
  scene: Scene;
  size: PaneSize;
  surface: HTMLElement | null;
  palette: Palette;
  textScale: number;
}

/** Beside the finger while it is over this pane. Hears of every frame by itself. */
export function FingerNote({ id, table, scene, size, surface, palette, textScale }: FingerNoteProps) {
  const { panes } = table;
  const { state, finger } = useStore(table.seen);
  const { plan, answer } = useLive(table.desk, scene);
  const isBehind = useStore(table.desk, (desk) => desk.isBehind);
  const isOver = useMemo(() => finger !== null && (panes.at(finger.at) ?? finger.pane) === id, [panes, id, finger]);
  const at = useMemo(() => (finger === null ? null : panes.inPane(id, finger.at)), [panes, id, finger]);
  if (finger === null || at === null || !isOver) return null;
  const exact = heldAt(state, plan, scene.sheet.id);
  return (
    <Finger
      at={at}
      isMouse={finger.device === 'mouse'}
      size={size}
      figures={figuresIn(scene.sight, liveFigures(state, plan, answer, unitsFor(plan)))}
      isBehind={isBehind}
      note={noteOf(state, scene.plan)}
      textScale={textScale}
      exact={exact === null ? null : panes.toPane(id, exact)}
      surface={surface}
      palette={palette}
    />
  );
}
