import type { Context } from 'konva/lib/Context';
import type { Shape as KonvaShape } from 'konva/lib/Shape';
import { memo, type RefObject, useCallback, useEffect, useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { PaneSize } from '../desk/camera.ts';
import { answeredPlan, type Camera, shownPlan } from '../desk/desk.ts';
import { type SeenHazard, seenStretch } from '../drawing/hazard.ts';
import type { Drawing, Shape as PlainShape, RunShape } from '../drawing/shapes.ts';
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
import type { Scene } from './useScene.ts';

type Paint = (context: CanvasRenderingContext2D) => void;

function groundPaint(outline: readonly PlainShape[], runs: readonly RunShape[], view: View): Paint {
  return (context) => {
    paintGrid(context, view);
    paintShapes(context, outline, view.frame, view.palette);
    paintRuns(context, runs, view);
  };
}

/** What a gesture changes, as one pane shows it. */
interface Held {
  live: Live;
  /** On what marks and locks are painted. */
  spoken: Pick<Drawing, 'runs' | 'fittings'>;
  stripes: readonly SeenHazard[];
  marked: Marked;
  locked: ReadonlySet<string>;
  hand: HandView;
  /** Paints what the hand is about, and what is picked out; null until it has been fetched. */
  late: Late | null;
}

/** `left`: what is spoken of among what the gesture leaves. */
function heldIn(
  { desk, seen, late: source }: Table,
  scene: Scene,
  marked: Marked,
  left: Held['spoken'],
  pxPerM: number,
): Held {
  const late = source.getState();
  const state = desk.getState();
  const own = liveOf(scene, shownPlan(state), answeredPlan(state));
  const live = late?.sideBySide(own.plan, own, pxPerM) ?? own;
  const spoken = {
    runs: [...left.runs, ...live.runs],
    fittings: [...left.fittings, ...live.fittings.filter(({ fittingId }) => scene.changed.has(fittingId))],
  };
  const stripes = live.hazards.map((hazard) => seenStretch(hazard, pxPerM));
  return { live, spoken, stripes, marked, locked: scene.locked, hand: seen.getState(), late };
}

function paintStripes(context: CanvasRenderingContext2D, { stripes }: Held, areCramped: boolean, view: View): void {
  for (const { hazard, isCramped } of stripes) if (isCramped === areCramped) paintHazard(context, hazard, view);
}

/** Cables and stripes: under all plates. */
function paintLines(context: CanvasRenderingContext2D, held: Held, view: View): void {
  const { live, spoken, marked, hand, late } = held;
  late?.paintRunMarks(context, spoken, marked, view);
  paintRuns(context, live.runs, view);
  paintStripes(context, held, false, view);
  const drawing = late?.drawingOf(hand.state, live.plan) ?? null;
  if (drawing !== null) late?.paintHandMarks(context, hand.guides, drawing, view);
}

/** Over all plates: those that are moved, and marks. */
function paintOver(context: CanvasRenderingContext2D, held: Held, view: View): void {
  const { live, spoken, marked, locked, late } = held;
  paintFittings(context, live.fittings, view);
  paintStripes(context, held, true, view);
  late?.paintBendMarks(context, spoken, marked, locked, view);
  late?.paintFittingMarks(context, spoken, marked, view);
  late?.paintLocks(context, spoken, locked, view);
}

/** A layer that is painted in one go. */
const Painted = memo(function Painted({ paint, shape }: { paint: Paint; shape?: RefObject<KonvaShape | null> }) {
  const sceneFunc = (context: Context) => paint(context._context);
  return (
    <Layer listening={false}>
      <Shape {...(shape && { ref: shape })} listening={false} perfectDrawEnabled={false} sceneFunc={sceneFunc} />
    </Layer>
  );
});

/** Paints a layer anew at once: its shape is alone on it, there is nothing else to be gone through. */
function repaint({ current }: RefObject<KonvaShape | null>, paint: Paint): void {
  const context = current?.getLayer()?.getContext();
  if (context === undefined) return;
  context.clear();
  context.save();
  paint(context._context);
  context.restore();
}

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

/** What a gesture changes: each frame of it is heard here, and painted at once within that frame. */
function useHeld(table: Table, scene: Scene, marked: Marked, left: Held['spoken'], view: View) {
  const lines = useRef<KonvaShape>(null);
  const over = useRef<KonvaShape>(null);
  const now = useCallback(
    () => heldIn(table, scene, marked, left, view.frame.scale),
    [table, scene, marked, left, view],
  );
  useEffect(
    () =>
      paintWithFrames(table, () => {
        const held = now();
        repaint(lines, (context) => paintLines(context, held, view));
        repaint(over, (context) => paintOver(context, held, view));
      }),
    [table, now, view],
  );
  return {
    lines: { shape: lines, paint: useCallback<Paint>((context) => paintLines(context, now(), view), [now, view]) },
    over: { shape: over, paint: useCallback<Paint>((context) => paintOver(context, now(), view), [now, view]) },
  };
}

/**
 * The sheet through one camera, on four canvas layers, each painted in one go: cables under plates, and of either what a
 * gesture leaves as it is under what it changes. What it leaves is painted anew only when that becomes other things.
 */
export const SheetStage = memo(function SheetStage({ table, camera, size, scene, marked, palette }: SheetStageProps) {
  const late = useStore(table.late);
  const view = useMemo(() => viewOf(camera, size, palette), [camera, size, palette]);
  const { shapes } = scene.settled.outline;
  const { fittings } = scene.still;
  const { runs } = useMemo(
    () => late?.sideBySide(scene.plan, scene.still, view.frame.scale) ?? scene.still,
    [late, scene, view],
  );
  const { locked } = scene;
  const left = useMemo(
    () => late?.spokenOf({ runs, fittings }, marked, locked) ?? { runs: [], fittings: [] },
    [late, runs, fittings, marked, locked],
  );
  const held = useHeld(table, scene, marked, left, view);
  return (
    <Stage width={size.widthPx} height={size.heightPx} listening={false}>
      <Painted paint={useMemo(() => groundPaint(shapes, runs, view), [shapes, runs, view])} />
      <Painted {...held.lines} />
      <Painted paint={useCallback<Paint>((context) => paintFittings(context, fittings, view), [fittings, view])} />
      <Painted {...held.over} />
    </Stage>
  );
});
