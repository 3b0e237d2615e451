import { memo } from 'react';
import type { PaneSize } from '../../desk/camera.ts';
import type { Camera } from '../../desk/desk.ts';
import { halfPlatePx } from '../../drawing/fittings.ts';
import { seenStretch } from '../../drawing/hazard.ts';
import { pointsOfFlat } from '../../drawing/runs.ts';
import type { FittingShape } from '../../drawing/shapes.ts';
import { nearestOnPolyline } from '../../geom/polyline.ts';
import type { Point } from '../../plan/schema.ts';
import type { HandDrawing } from '../handDrawing.ts';
import { Group, Layer, Stage } from '../konva.ts';
import type { Palette } from '../palette.ts';
import type { Guide } from '../snap.ts';
import type { Trace } from '../tools/state.ts';
import { type Scene, withEnds } from '../useScene.ts';
import { Grid } from './Grid.tsx';
import { HandMarks } from './HandMarks.tsx';
import { Hazard } from './Hazard.tsx';
import { Locks } from './Locks.tsx';
import { BendMarks, FittingMarks, type Marked, RunMarks } from './Marks.tsx';
import { OutlineNode, Things } from './Things.tsx';

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

interface SheetStageProps {
  camera: Camera;
  size: PaneSize;
  scene: Scene;
  marked: Marked;
  guides: readonly Guide[];
  drawing: HandDrawing;
  palette: Palette;
}

/** The sheet through one camera: two canvas layers that only paint. Drawn anew only when what it shows has changed. */
export const SheetStage = memo(function SheetStage(props: SheetStageProps) {
  const { camera, size, scene, marked, guides, palette } = props;
  const { aim, trace, stroke } = props.drawing;
  const halfPlateM = halfPlatePx(camera.pxPerM) / camera.pxPerM;
  const frame = {
    x: size.widthPx / 2 - camera.centreXM * camera.pxPerM,
    y: size.heightPx / 2 - camera.centreYM * camera.pxPerM,
    scaleX: camera.pxPerM,
    scaleY: camera.pxPerM,
    listening: false,
  };
  const { locked } = scene;
  const marks = { drawing: scene.shown, marked, locked, halfPlateM, pxPerM: camera.pxPerM, palette };
  const over = fittingsOver(scene, marked, trace, halfPlateM);
  const seen = scene.shown.hazards.map((hazard) => seenStretch(hazard, camera.pxPerM));
  const stripes = (cramped: boolean) =>
    seen
      .filter(({ isCramped }) => isCramped === cramped)
      .map(({ hazard }) => <Hazard key={hazard.runId} hazard={hazard} camera={camera} size={size} palette={palette} />);
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
          <Locks
            drawing={scene.shown}
            locked={locked}
            halfPlateM={halfPlateM}
            pxPerM={camera.pxPerM}
            palette={palette}
          />
        </Group>
      </Layer>
    </Stage>
  );
});
