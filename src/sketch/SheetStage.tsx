import type { Context } from 'konva/lib/Context';
import type { Shape as KonvaShape } from 'konva/lib/Shape';
import { memo, type RefObject, useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { PaneSize } from '../desk/camera.ts';
import { answeredPlan, type Camera, shownPlan } from '../desk/desk.ts';
import { seenStretch } from '../drawing/hazard.ts';
import { pointsOfFlat } from '../drawing/runs.ts';
import type { FittingShape, Shape as PlainShape } from '../drawing/shapes.ts';
import { boundsOf, boxHolds, growBox } from '../geom/box.ts';
import { nearestOnPolyline } from '../geom/polyline.ts';
import type { Point } from '../plan/schema.ts';
import { withEnds } from './changes.ts';
import { Layer, Shape, Stage } from './konva.ts';
import { type Live, liveOf } from './live.ts';
import type { Late } from './loadLate.ts';
import { merged } from './merged.ts';
import { paintGrid } from './paint/grid.ts';
import { paintHazard } from './paint/hazard.ts';
import type { Marked } from './paint/marks.ts';
import { paintShapes, type View, viewOf } from './paint/pen.ts';
import { paintFittings } from './paint/plates.ts';
import { paintRuns } from './paint/runs.ts';
import type { Palette } from './palette.ts';
import type { Table } from './table.ts';
import type { HandView } from './tools/hand.ts';
import type { Trace } from './tools/state.ts';
import type { Scene } from './useScene.ts';

type Still = Pick<Scene['still'], 'runs' | 'fittings'>;
type Paint = (context: CanvasRenderingContext2D) => void;

/**
 * Plates that lie over what the live layer draws: over moved and marked runs, over the one being drawn, over stripes
 * that pass. The rest of the plates stay on the still layer.
 */
function fittingsOver(live: Live, still: Still, marked: Marked, trace: Trace | null, view: View): FittingShape[] {
  const { selection, places } = marked;
  const ids = new Set(places);
  if (selection !== null) ids.add(selection.id);
  if (trace !== null) ids.add(trace.from.fittingId);
  const over = withEnds(live.plan, ids);
  const stripes = live.shown.hazards.map(({ points }) => pointsOfFlat(points));
  const reachM = (2 * view.halfPlatePx) / view.frame.scale;
  // most plates are far from every stripe: a box tells so at less cost than a distance
  const box = boundsOf(stripes.flat());
  const near = box === null ? null : growBox(box, reachM);
  const under = still.fittings.filter(
    ({ fittingId, at }) =>
      (over.size > 0 && over.has(fittingId)) ||
      (near !== null && boxHolds(near, at) && isPassedBy(stripes, at, reachM)),
  );
  // with those to which its runs lead, of which some are among the still ones
  return [...new Map([...under, ...live.fittings].map((fitting) => [fitting.fittingId, fitting])).values()];
}

const isPassedBy = (stripes: readonly (readonly Point[])[], at: Point, reachM: number): boolean =>
  stripes.some((stripe) => {
    const nearest = nearestOnPolyline(stripe, at);
    return nearest !== null && nearest.distanceM < reachM;
  });

function stillPaint(outline: readonly PlainShape[], { runs, fittings }: Still, view: View): Paint {
  return (context) => {
    paintGrid(context, view);
    paintShapes(context, outline, view.frame, view.palette);
    paintRuns(context, runs, view);
    paintFittings(context, fittings, view);
  };
}

interface OverIt {
  still: Still;
  marked: Marked;
  locked: ReadonlySet<string>;
  hand: HandView;
  /** Paints what the hand is about, and what is picked out; null until it has been fetched. */
  late: Late | null;
}

function livePaint(context: CanvasRenderingContext2D, live: Live, over: OverIt, view: View): void {
  const { shown, runs } = live;
  const { still, marked, locked, hand, late } = over;
  const drawing = late?.drawingOf(hand.state, live.plan) ?? null;
  const stripes = shown.hazards.map((hazard) => seenStretch(hazard, view.frame.scale));
  const paintStripes = (areCramped: boolean) => {
    for (const { hazard, isCramped } of stripes) if (isCramped === areCramped) paintHazard(context, hazard, view);
  };
  late?.paintRunMarks(context, shown, marked, view);
  paintRuns(context, runs, view);
  paintStripes(false);
  if (drawing !== null) late?.paintHandMarks(context, hand.guides, drawing, view);
  paintFittings(context, fittingsOver(live, still, marked, drawing?.trace ?? null, view), view);
  paintStripes(true);
  late?.paintBendMarks(context, shown, marked, locked, view);
  late?.paintFittingMarks(context, shown, marked, view);
  late?.paintLocks(context, shown, locked, view);
}

const Painted = memo(function Painted({ paint, shape }: { paint: Paint; shape?: RefObject<KonvaShape | null> }) {
  const sceneFunc = (context: Context) => paint(context._context);
  return <Shape {...(shape && { ref: shape })} listening={false} perfectDrawEnabled={false} sceneFunc={sceneFunc} />;
});

interface LayerProps {
  table: Table;
  scene: Scene;
  marked: Marked;
  view: View;
}

const StillThings = memo(function StillThings({ table, scene, view }: Omit<LayerProps, 'marked'>) {
  const { shapes } = scene.settled.outline;
  const late = useStore(table.late);
  const { runs, fittings } = late?.sideBySide(scene.plan, scene.still, view.frame.scale) ?? scene.still;
  return (
    <Painted paint={useMemo(() => stillPaint(shapes, { runs, fittings }, view), [shapes, runs, fittings, view])} />
  );
});

/** Paints the layer of a shape that is alone on it, at once: there is nothing else to be gone through. */
function repaint(shape: KonvaShape | null, paint: Paint): void {
  const context = shape?.getLayer()?.getContext();
  if (context === undefined) return;
  context.clear();
  context.save();
  paint(context._context);
  context.restore();
}

/** Hears of every frame by itself and paints it at once, within that frame: nothing is drawn anew around it. */
const LiveThings = memo(function LiveThings({ table, scene, marked, view }: LayerProps) {
  const shape = useRef<KonvaShape>(null);
  const paint = useMemo(
    () => (context: CanvasRenderingContext2D) => {
      const { desk, seen } = table;
      const late = table.late.getState();
      const live = liveOf(scene, shownPlan(desk.getState()), answeredPlan(desk.getState()));
      const over = { still: scene.still, marked, locked: scene.locked, hand: seen.getState(), late };
      livePaint(context, late?.sideBySide(live.plan, live, view.frame.scale) ?? live, over, view);
    },
    [table, scene, marked, view],
  );
  useEffect(() => paintWithFrames(table, () => repaint(shape.current, paint)), [table, paint]);
  return <Painted paint={paint} shape={shape} />;
});

/** Calls `paint` once for all that changes together of what a gesture shows. Answers how to leave off. */
function paintWithFrames({ desk, seen, late }: Table, paint: () => void): () => void {
  const ask = merged(paint);
  const leave = [
    seen.subscribe(ask),
    late.subscribe(ask),
    desk.subscribe((now, before) => {
      if (now.draft !== before.draft || now.answered !== before.answered) ask();
    }),
  ];
  return () => {
    for (const each of leave) each();
  };
}

interface SheetStageProps {
  table: Table;
  camera: Camera;
  size: PaneSize;
  scene: Scene;
  marked: Marked;
  palette: Palette;
}

/**
 * The sheet through one camera: two canvas layers, each painted in one go. What a gesture leaves as it is lies on the
 * still one, which is painted anew only when that changes.
 */
export const SheetStage = memo(function SheetStage(props: SheetStageProps) {
  const { table, camera, size, scene, marked, palette } = props;
  const view = useMemo(() => viewOf(camera, size, palette), [camera, size, palette]);
  return (
    <Stage width={size.widthPx} height={size.heightPx} listening={false}>
      <Layer listening={false} name="still">
        <StillThings table={table} scene={scene} view={view} />
      </Layer>
      <Layer listening={false} name="live">
        <LiveThings table={table} scene={scene} marked={marked} view={view} />
      </Layer>
    </Stage>
  );
});
