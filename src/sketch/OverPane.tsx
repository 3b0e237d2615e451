import { useStore } from 'zustand';
import type { PaneSize } from '../desk/camera.ts';
import { type Camera, type PaneId, shownPlan } from '../desk/desk.ts';
import { commit } from '../desk/edit.ts';
import { TARGET_BIG_PX, TARGET_PX } from '../look/tokens.ts';
import { removeBend } from '../plan/edits/removeBend.ts';
import { BendButton } from './BendButton.tsx';
import { FingerNote } from './FingerNote.tsx';
import { placeOfFitting } from './handDrawing.ts';
import type { Marked } from './paint/marks.ts';
import type { Palette } from './palette.ts';
import { Tabs } from './Tabs.tsx';
import type { Table } from './table.ts';
import type { HandState, StateNamed } from './tools/state.ts';
import type { Scene } from './useScene.ts';

type Picking = StateNamed<'run.pickingTerminal' | 'move.pickingTerminal'>;

const isPicking = (state: HandState): state is Picking =>
  state.name === 'run.pickingTerminal' || state.name === 'move.pickingTerminal';

interface OverPaneProps {
  id: PaneId;
  table: Table;
  scene: Scene;
  marked: Marked;
  camera: Camera;
  size: PaneSize;
  surface: HTMLElement | null;
  palette: Palette;
  textScale: number;
}

/** Over a pane while something is held, picked out or to be chosen: figures at the finger, and buttons. */
export function OverPane(props: OverPaneProps) {
  const { id, table, scene, marked, camera, size, surface, palette, textScale } = props;
  const { desk, panes, seen } = table;
  const bigFingers = useStore(desk, (state) => state.bigFingers);
  const isHeld = useStore(seen, ({ finger }) => finger !== null);
  const isIdle = useStore(seen, ({ state }) => state.name === 'move.idle');
  const picking = useStore(seen, ({ state }) => (isPicking(state) && state.pane === id ? state : null));
  const targetPx = bigFingers ? TARGET_BIG_PX : TARGET_PX;
  return (
    <>
      {isHeld && (
        <FingerNote
          id={id}
          table={table}
          scene={scene}
          size={size}
          surface={surface}
          palette={palette}
          textScale={textScale}
        />
      )}
      {isIdle && marked.selection?.kind === 'bend' && (
        <BendButton
          selection={marked.selection}
          plan={scene.plan}
          pxPerM={camera.pxPerM}
          place={(at) => panes.toPane(id, at)}
          size={size}
          targetPx={targetPx}
          textScale={textScale}
          onRemove={(runId, index) => commit(desk, 'removeBend', (plan) => removeBend(plan, runId, index))}
        />
      )}
      {picking !== null && (
        <TerminalTabs
          id={id}
          table={table}
          state={picking}
          sheetId={scene.sheet.id}
          camera={camera}
          size={size}
          targetPx={targetPx}
          textScale={textScale}
        />
      )}
    </>
  );
}

interface TerminalTabsProps {
  id: PaneId;
  table: Table;
  state: Picking;
  sheetId: string;
  camera: Camera;
  size: PaneSize;
  targetPx: number;
  textScale: number;
}

function TerminalTabs({ id, table, state, sheetId, camera, size, targetPx, textScale }: TerminalTabsProps) {
  const plan = useStore(table.desk, shownPlan);
  const place = placeOfFitting(plan, state.fittingId, sheetId);
  const at = place === null ? null : table.panes.toPane(id, place);
  if (at === null) return null;
  return (
    <Tabs
      state={state}
      plan={plan}
      at={at}
      pxPerM={camera.pxPerM}
      size={size}
      targetPx={targetPx}
      textScale={textScale}
      onChoose={(terminal) => table.hand.tell({ kind: 'choose', terminal })}
    />
  );
}
