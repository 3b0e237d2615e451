import { useEffect, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import type { PaneId } from '../desk/desk.ts';
import { commit } from '../desk/edit.ts';
import { TARGET_BIG_PX, TARGET_PX } from '../look/tokens.ts';
import { removeBend } from '../plan/edits/removeBend.ts';
import type { Sheet } from '../plan/schema.ts';
import { words } from '../words/index.ts';
import { BendButton } from './BendButton.tsx';
import { fittedCamera, resizedCamera } from './cameras.ts';
import { Finger } from './Finger.tsx';
import { heldAt, placeOfFitting, useHandDrawing } from './handDrawing.ts';
import { Labels } from './Labels.tsx';
import { liveFigures } from './liveFigures.ts';
import { PaneTitle, type PaneToggle } from './PaneTitle.tsx';
import type { Marked } from './paint/marks.ts';
import type { Palette } from './palette.ts';
import { ScaleBar } from './ScaleBar.tsx';
import { SheetStage } from './SheetStage.tsx';
import { figuresIn } from './sight.ts';
import { Tabs } from './Tabs.tsx';
import type { Table } from './table.ts';
import type { HandState, StateNamed } from './tools/state.ts';
import { usePaneSize } from './usePaneSize.ts';
import type { Scene } from './useScene.ts';

type Picking = StateNamed<'run.pickingTerminal' | 'move.pickingTerminal'>;

const isPicking = (state: HandState): state is Picking =>
  state.name === 'run.pickingTerminal' || state.name === 'move.pickingTerminal';

interface PaneProps {
  id: PaneId;
  title: string;
  toggle: PaneToggle | null;
  table: Table;
  sheet: Sheet;
  scene: Scene;
  marked: Marked;
  palette: Palette;
  /** How much larger than on a tablet the words are. */
  textScale: number;
}

/** One view of the sheet: two canvas layers that only paint, page text and buttons over them. */
export function Pane({ id, title, toggle, table, sheet, scene, marked, palette, textScale }: PaneProps) {
  const { desk, hand, input, panes } = table;
  const surface = useRef<HTMLDivElement>(null);
  const size = usePaneSize(surface);
  const camera = useStore(desk, (state) => state.cameras[id]);
  const bigFingers = useStore(desk, (state) => state.bigFingers);
  const { state, finger, guides } = useStore(table.seen);
  const drawing = useHandDrawing(state, scene.plan);
  const hasCamera = camera !== null;
  const isHeld = finger !== null;
  const measured = useRef(size);

  useEffect(() => {
    const element = surface.current;
    return element === null ? undefined : input.attach(element, id);
  }, [input, id]);

  useLayoutEffect(() => {
    const element = surface.current;
    if (element === null || size.widthPx === 0 || size.heightPx === 0) return;
    panes.mount(id, element, size);
    return () => panes.unmount(id);
  }, [panes, id, size]);

  useLayoutEffect(() => {
    if (size.widthPx === 0 || size.heightPx === 0) return;
    const before = measured.current;
    measured.current = size;
    // a camera that is gone is one to be fitted anew
    if (hasCamera && panes.isMoved(id, sheet.id)) return;
    const now = panes.camera(id);
    // a pane that changes its size under a finger keeps what lies there; it is fitted anew when the finger has gone
    panes.fit(id, isHeld && now !== null ? resizedCamera(now, before, size) : fittedCamera(sheet, id, size));
  }, [panes, id, sheet, size, hasCamera, isHeld]);

  const targetPx = bigFingers ? TARGET_BIG_PX : TARGET_PX;
  const unprotected = scene.sight === 'all' ? scene.unprotected : undefined;
  const counts = { fittings: scene.plan.fittings.length, runs: scene.plan.runs.length, unprotected };
  const tabsAt = isPicking(state) && state.pane === id ? placeOfFitting(scene.plan, state.fittingId, sheet.id) : null;
  const tabsPx = tabsAt === null ? null : panes.toPane(id, tabsAt);
  const exact = heldAt(state, scene.plan, sheet.id);
  const isOver = finger !== null && (panes.at(finger.at) ?? finger.pane) === id;
  return (
    <section className="sketch-pane" data-pane={id}>
      <div className="sketch-surface" ref={surface} role="img" aria-label={words.sketch.describePane(title, counts)}>
        {camera !== null && (
          <SheetStage
            camera={camera}
            size={size}
            scene={scene}
            marked={marked}
            guides={guides}
            drawing={drawing}
            palette={palette}
          />
        )}
      </div>
      {camera !== null && (
        <>
          <Labels scene={scene} camera={camera} size={size} selection={marked.selection} scale={textScale} />
          <PaneTitle title={title} toggle={toggle} />
          <ScaleBar
            pxPerM={camera.pxPerM}
            scale={sheet.scale.value}
            isFeet={scene.plan.settings.showLength === 'ft-in'}
            units={scene.units}
          />
          {finger !== null && isOver && (
            <Finger
              at={panes.inPane(id, finger.at)}
              isMouse={finger.device === 'mouse'}
              size={size}
              figures={figuresIn(scene.sight, liveFigures(state, scene.plan, scene.answer, scene.units))}
              note={scene.note}
              textScale={textScale}
              exact={exact === null ? null : panes.toPane(id, exact)}
              surface={surface.current}
              palette={palette}
            />
          )}
          {state.name === 'move.idle' && marked.selection?.kind === 'bend' && (
            <BendButton
              selection={marked.selection}
              plan={scene.plan}
              place={(at) => panes.toPane(id, at)}
              size={size}
              targetPx={targetPx}
              textScale={textScale}
              onRemove={(runId, index) => commit(desk, 'removeBend', (plan) => removeBend(plan, runId, index))}
            />
          )}
          {isPicking(state) && tabsPx !== null && (
            <Tabs
              state={state}
              plan={scene.plan}
              at={tabsPx}
              pxPerM={camera.pxPerM}
              size={size}
              targetPx={targetPx}
              textScale={textScale}
              onChoose={(terminal) => hand.tell({ kind: 'choose', terminal })}
            />
          )}
        </>
      )}
    </section>
  );
}
