import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { PaneId } from '../desk/desk.ts';
import { commit } from '../desk/edit.ts';
import { halfPlatePx } from '../drawing/fittings.ts';
import { seenStretch } from '../drawing/hazard.ts';
import { pointsOfFlat } from '../drawing/runs.ts';
import type { FittingShape } from '../drawing/shapes.ts';
import { nearestOnPolyline } from '../geom/polyline.ts';
import { TARGET_BIG_PX, TARGET_PX } from '../look/tokens.ts';
import { fittingById } from '../plan/byId.ts';
import { removeBend } from '../plan/edits/removeBend.ts';
import type { Point, Sheet } from '../plan/schema.ts';
import { words } from '../words/index.ts';
import { BendButton } from './BendButton.tsx';
import { fittedCamera, resizedCamera } from './cameras.ts';
import { Finger } from './Finger.tsx';
import { Group, Layer, Stage } from './konva.ts';
import { Labels } from './Labels.tsx';
import { Grid } from './layers/Grid.tsx';
import { HandMarks } from './layers/HandMarks.tsx';
import { Hazard } from './layers/Hazard.tsx';
import { BendMarks, FittingMarks, type Marked, RunMarks } from './layers/Marks.tsx';
import { OutlineNode, Things } from './layers/Things.tsx';
import { liveFigures } from './liveFigures.ts';
import { PaneTitle, type PaneToggle } from './PaneTitle.tsx';
import type { Palette } from './palette.ts';
import { ScaleBar } from './ScaleBar.tsx';
import { Tabs } from './Tabs.tsx';
import type { Table } from './table.ts';
import type { HandState, Trace } from './tools/state.ts';
import { usePaneSize } from './usePaneSize.ts';
import { type Scene, withEnds } from './useScene.ts';

const NO_STROKE: readonly Point[] = [];

const traceOf = (state: HandState): Trace | null =>
  state.name === 'run.drawing' || state.name === 'run.pickingTerminal' ? state.trace : null;

/**
 * Plates that lie over what the live layer draws: over moved and marked runs, over the one being drawn, over stripes
 * that pass. The rest of the plates stay on the still layer.
 */
function fittingsOver(
  scene: Scene,
  { selection, places }: Marked,
  trace: Trace | null,
  halfPlateM: number,
): FittingShape[] {
  const ids = new Set([...scene.live.fittings.map(({ fittingId }) => fittingId), ...places]);
  if (selection !== null) ids.add(selection.id);
  if (trace !== null) ids.add(trace.from.fittingId);
  const over = withEnds(scene.plan, ids);
  const stripes = scene.shown.hazards.map(({ points }) => pointsOfFlat(points));
  const isPassed = (at: Point) =>
    stripes.some((stripe) => (nearestOnPolyline(stripe, at)?.distanceM ?? Number.POSITIVE_INFINITY) < 2 * halfPlateM);
  return scene.shown.fittings.filter(({ fittingId, at }) => over.has(fittingId) || isPassed(at));
}

export interface PaneProps {
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
  const { state, finger, guides } = useStore(hand.store);
  const trace = traceOf(state);
  const aim = state.name === 'place.aiming' ? state.at : null;
  const stroke = state.name === 'run.drawing' ? state.stroke : NO_STROKE;
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

  const halfPlateM = camera === null ? 0 : halfPlatePx(camera.pxPerM) / camera.pxPerM;
  const stage = useMemo(() => {
    if (camera === null) return null;
    const frame = {
      x: size.widthPx / 2 - camera.centreXM * camera.pxPerM,
      y: size.heightPx / 2 - camera.centreYM * camera.pxPerM,
      scaleX: camera.pxPerM,
      scaleY: camera.pxPerM,
      listening: false,
    };
    const marks = { drawing: scene.shown, marked, halfPlateM, pxPerM: camera.pxPerM, palette };
    const over = fittingsOver(scene, marked, trace, halfPlateM);
    const seen = scene.shown.hazards.map((hazard) => seenStretch(hazard, camera.pxPerM));
    const stripes = (cramped: boolean) =>
      seen
        .filter(({ isCramped }) => isCramped === cramped)
        .map(({ hazard }) => (
          <Hazard key={hazard.runId} hazard={hazard} camera={camera} size={size} palette={palette} />
        ));
    return (
      <Stage width={size.widthPx} height={size.heightPx} listening={false}>
        <Layer listening={false} name="still">
          <Grid camera={camera} size={size} palette={palette} />
          <Group {...frame}>
            <OutlineNode shapes={scene.shown.outline.shapes} palette={palette} />
            <Things runs={scene.still.runs} fittings={scene.still.fittings} halfPlateM={halfPlateM} palette={palette} />
          </Group>
        </Layer>
        <Layer listening={false} name="live">
          <Group {...frame}>
            <RunMarks {...marks} />
            <Things runs={scene.live.runs} fittings={[]} halfPlateM={halfPlateM} palette={palette} />
          </Group>
          {stripes(false)}
          <Group {...frame}>
            <HandMarks
              guides={guides}
              aim={aim}
              trace={trace}
              stroke={stroke}
              halfPlateM={halfPlateM}
              pxPerM={camera.pxPerM}
              palette={palette}
            />
            <Things runs={[]} fittings={over} halfPlateM={halfPlateM} palette={palette} />
          </Group>
          {stripes(true)}
          <Group {...frame}>
            <BendMarks {...marks} />
            <FittingMarks {...marks} />
          </Group>
        </Layer>
      </Stage>
    );
  }, [camera, size, scene, marked, halfPlateM, palette, guides, aim, trace, stroke]);

  const targetPx = bigFingers ? TARGET_BIG_PX : TARGET_PX;
  const counts = { fittings: scene.plan.fittings.length, runs: scene.plan.runs.length, unprotected: scene.unprotected };
  const tabsAt =
    state.name === 'run.pickingTerminal' && state.pane === id
      ? fittingById(scene.plan, state.fittingId)?.at
      : undefined;
  const tabsPx = tabsAt === undefined ? null : panes.toPane(id, tabsAt);
  const isOver = finger !== null && (panes.at(finger.at) ?? finger.pane) === id;
  return (
    <section className="sketch-pane" data-pane={id}>
      <div className="sketch-surface" ref={surface} role="img" aria-label={words.sketch.describePane(title, counts)}>
        {stage}
      </div>
      {camera !== null && (
        <>
          <Labels drawing={scene.shown} camera={camera} size={size} selection={marked.selection} scale={textScale} />
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
              figures={liveFigures(state, scene.plan, scene.answer, scene.units)}
              note={scene.note}
              textScale={textScale}
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
          {state.name === 'run.pickingTerminal' && tabsPx !== null && (
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
