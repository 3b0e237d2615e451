import type { Context } from 'konva/lib/Context';
import { memo, useMemo } from 'react';
import type { PaneSize } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import { seenStretch } from '../drawing/hazard.ts';
import { pointsOfFlat } from '../drawing/runs.ts';
import type { FittingShape, Shape as PlainShape } from '../drawing/shapes.ts';
import { nearestOnPolyline } from '../geom/polyline.ts';
import type { Point } from '../plan/schema.ts';
import type { HandDrawing } from './handDrawing.ts';
import { Layer, Shape, Stage } from './konva.ts';
import { paintGrid } from './paint/grid.ts';
import { paintHandMarks } from './paint/handMarks.ts';
import { paintHazard } from './paint/hazard.ts';
import { paintLocks } from './paint/locks.ts';
import { type Marked, paintBendMarks, paintFittingMarks, paintRunMarks } from './paint/marks.ts';
import { paintShapes, type View, viewOf } from './paint/pen.ts';
import { paintFittings, paintRuns } from './paint/things.ts';
import type { Palette } from './palette.ts';
import type { Guide } from './snap.ts';
import { type Scene, withEnds } from './useScene.ts';

type Still = Pick<Scene['still'], 'runs' | 'fittings'>;
type Paint = (context: CanvasRenderingContext2D) => void;

/**
 * Plates that lie over what the live layer draws: over moved and marked runs, over the one being drawn, over stripes
 * that pass. The rest of the plates stay on the still layer.
 */
function fittingsOver(scene: Scene, marked: Marked, drawing: HandDrawing, view: View): FittingShape[] {
  const { selection, places } = marked;
  const ids = new Set([...scene.live.fittings.map(({ fittingId }) => fittingId), ...places]);
  if (selection !== null) ids.add(selection.id);
  if (drawing.trace !== null) ids.add(drawing.trace.from.fittingId);
  const over = withEnds(scene.plan, ids);
  const stripes = scene.shown.hazards.map(({ points }) => pointsOfFlat(points));
  const reachM = (2 * view.halfPlatePx) / view.frame.scale;
  const isPassed = (at: Point) =>
    stripes.some((stripe) => (nearestOnPolyline(stripe, at)?.distanceM ?? Number.POSITIVE_INFINITY) < reachM);
  return scene.shown.fittings.filter(({ fittingId, at }) => over.has(fittingId) || isPassed(at));
}

function stillPaint(outline: readonly PlainShape[], { runs, fittings }: Still, view: View): Paint {
  return (context) => {
    paintGrid(context, view);
    paintShapes(context, outline, view.frame, view.palette);
    paintRuns(context, runs, view);
    paintFittings(context, fittings, view);
  };
}

function livePaint(scene: Scene, marked: Marked, guides: readonly Guide[], drawing: HandDrawing, view: View): Paint {
  const { shown, live, locked } = scene;
  const over = fittingsOver(scene, marked, drawing, view);
  const stripes = shown.hazards.map((hazard) => seenStretch(hazard, view.frame.scale));
  const paintStripes = (context: CanvasRenderingContext2D, areCramped: boolean) => {
    for (const { hazard, isCramped } of stripes) if (isCramped === areCramped) paintHazard(context, hazard, view);
  };
  return (context) => {
    paintRunMarks(context, shown, marked, view);
    paintRuns(context, live.runs, view);
    paintStripes(context, false);
    paintHandMarks(context, guides, drawing, view);
    paintFittings(context, over, view);
    paintStripes(context, true);
    paintBendMarks(context, shown, marked, locked, view);
    paintFittingMarks(context, shown, marked, view);
    paintLocks(context, shown, locked, view);
  };
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

/**
 * The sheet through one camera: two canvas layers, each painted in one go. What a gesture leaves as it is lies on the
 * still one, which is painted anew only when that changes.
 */
export const SheetStage = memo(function SheetStage(props: SheetStageProps) {
  const { camera, size, scene, marked, guides, drawing, palette } = props;
  const view = useMemo(() => viewOf(camera, size, palette), [camera, size, palette]);
  const { shapes } = scene.settled.outline;
  const { runs, fittings } = scene.still;
  const still = useMemo(() => stillPaint(shapes, { runs, fittings }, view), [shapes, runs, fittings, view]);
  const live = livePaint(scene, marked, guides, drawing, view);
  return (
    <Stage width={size.widthPx} height={size.heightPx} listening={false}>
      <Layer listening={false} name="still">
        <Painted paint={still} />
      </Layer>
      <Layer listening={false} name="live">
        <Painted paint={live} />
      </Layer>
    </Stage>
  );
});

const Painted = memo(function Painted({ paint }: { paint: Paint }) {
  return (
    <Shape listening={false} perfectDrawEnabled={false} sceneFunc={(context: Context) => paint(context._context)} />
  );
});
