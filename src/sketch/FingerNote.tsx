import { useLayoutEffect, useRef } from 'react';
import type { PaneSize } from '../desk/camera.ts';
import { answeredPlan, type PaneId, shownPlan } from '../desk/desk.ts';
import { runById } from '../plan/byId.ts';
import type { Plan } from '../plan/schema.ts';
import { runTitle, unitsFor, words } from '../words/index.ts';
import { FingerSheet } from './fingerSheet.ts';
import { type FingerShown, fingerShown } from './fingerShown.ts';
import { heldAt } from './handDrawing.ts';
import { liveOf } from './live.ts';
import { liveFigures } from './liveFigures.ts';
import { merged } from './merged.ts';
import { nearestPane } from './nearestPane.ts';
import type { Palette } from './palette.ts';
import { figuresIn } from './sight.ts';
import type { Table } from './table.ts';
import type { HandState } from './tools/state.ts';
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

/** What is shown in this pane now; null while the finger is over another, or gone. */
function shownIn({ id, table, scene, size, textScale }: FingerNoteProps): FingerShown | null {
  const { desk, panes, seen } = table;
  const { state, finger } = seen.getState();
  if (finger === null || nearestPane(panes, finger.at, finger.pane) !== id) return null;
  const at = panes.inPane(id, finger.at);
  if (at === null) return null;
  const { plan, answer } = liveOf(scene, shownPlan(desk.getState()), answeredPlan(desk.getState()));
  const exact = heldAt(state, plan, scene.sheet.id);
  return fingerShown({
    at,
    isMouse: finger.device === 'mouse',
    size,
    figures: figuresIn(scene.sight, liveFigures(state, plan, answer, unitsFor(plan))),
    note: noteOf(state, scene.plan),
    textScale,
    exact: exact === null ? null : panes.toPane(id, exact),
  });
}

/** Beside the finger while it is over this pane. Hears of every frame by itself, and writes into the page by hand. */
export function FingerNote(props: FingerNoteProps) {
  const { table, surface, palette } = props;
  const host = useRef<HTMLDivElement>(null);
  const newest = useRef(props);
  const rewrite = useRef<(() => void) | null>(null);

  useLayoutEffect(() => {
    const element = host.current;
    if (element === null) return;
    const { desk, seen } = table;
    const sheet = new FingerSheet(element, surface, palette);
    const write = () => {
      if (element.isConnected) sheet.show(shownIn(newest.current), desk.getState().isBehind);
    };
    rewrite.current = write;
    const ask = merged(write);
    const leave = [seen.subscribe(ask), desk.subscribe(ask)];
    return () => {
      for (const each of leave) each();
      rewrite.current = null;
      sheet.clear();
    };
  }, [table, surface, palette]);

  useLayoutEffect(() => {
    newest.current = props;
    rewrite.current?.();
  });

  return <div className="sketch-finger-place" ref={host} />;
}
