import type { Selection } from '../../desk/desk.ts';
import { pointsOfFlat } from '../../drawing/runs.ts';
import type { Drawing, FittingShape, RunShape } from '../../drawing/shapes.ts';
import type { ColourName } from '../../look/tokens.ts';
import type { Point } from '../../plan/schema.ts';
import { endHandles } from '../tools/runEnds.ts';
import { fillWith, strokeWith, traceCircle, traceFlat, type View } from './pen.ts';

/** What is marked: picked out by the user, or the place of the finding looked at. */
export interface Marked {
  selection: Selection | null;
  places: ReadonlySet<string>;
  /** Colour of the finding's severity. */
  placeColour: ColourName;
}

/** What of a drawing marks or locks are painted on: few of its things, looked for once and not with every frame. */
export function spokenOf(
  { runs, fittings }: Pick<Drawing, 'runs' | 'fittings'>,
  { selection, places }: Marked,
  locked: ReadonlySet<string>,
): Pick<Drawing, 'runs' | 'fittings'> {
  const isMeant = (id: string): boolean => id === selection?.id || places.has(id) || locked.has(id);
  return {
    runs: runs.filter(({ runId }) => isMeant(runId)),
    fittings: fittings.filter(({ fittingId }) => isMeant(fittingId)),
  };
}

type Context = CanvasRenderingContext2D;

const RING_GAP_PX = 6;
const FINDING_GAP_PX = 12;
const BEND_PX = 8;
const END_PX = 10;
const DASH_PX = [10, 6];

/** Beside the cable on either side, so that its own colour stays. */
function paintSleeve(context: Context, run: RunShape, colour: string, dashPx: readonly number[], view: View): void {
  const { casing, stroke } = run;
  traceFlat(context, run.points, view.frame);
  strokeWith(context, { colour, widthPx: casing.widthPx + 8, dashPx });
  strokeWith(context, { colour: view.palette.casing, widthPx: casing.widthPx });
  strokeWith(context, { colour: view.palette[stroke.colour], widthPx: stroke.widthPx, dashPx: stroke.dashPx });
}

const isSelected = (selection: Selection | null, run: RunShape): boolean =>
  selection !== null && selection.kind !== 'fitting' && selection.id === run.runId;

const isNothing = ({ selection, places }: Marked): boolean => selection === null && places.size === 0;

/** Under the fittings: sleeves of what is picked out or spoken of. */
export function paintRunMarks(context: Context, { runs }: Pick<Drawing, 'runs'>, marked: Marked, view: View): void {
  if (isNothing(marked)) return;
  for (const run of runs) {
    if (marked.places.has(run.runId)) paintSleeve(context, run, view.palette[marked.placeColour], DASH_PX, view);
    if (isSelected(marked.selection, run)) paintSleeve(context, run, view.palette.selected, [], view);
  }
}

function paintHandle(context: Context, at: Point, radiusPx: number, fill: string, edge: string, view: View): void {
  traceCircle(context, at, radiusPx, view);
  fillWith(context, fill);
  strokeWith(context, { colour: edge, widthPx: 3 });
}

/** Over stripes and plates: the bends and ends of the run that is picked out, to take hold of. */
export function paintBendMarks(
  context: Context,
  { runs }: Pick<Drawing, 'runs'>,
  { selection }: Marked,
  locked: ReadonlySet<string>,
  view: View,
): void {
  // asked with every frame of a drag, mostly about nothing
  if (selection === null || selection.kind === 'fitting') return;
  const { selected, raised } = view.palette;
  const active = selection.kind === 'bend' ? selection.index : null;
  for (const run of runs) {
    if (!isSelected(selection, run)) continue;
    const points = pointsOfFlat(run.points);
    const ends = run.isInLane === true ? 2 : 1;
    for (const [index, at] of points.slice(ends, -ends).entries())
      paintHandle(context, at, BEND_PX, index === active ? selected : raised, selected, view);
    if (locked.has(run.runId)) continue;
    // filled, so that they are not taken for bends
    for (const { at } of endHandles(points, view.frame.scale)) paintHandle(context, at, END_PX, selected, raised, view);
  }
}

function paintRing(
  context: Context,
  { at }: FittingShape,
  gapPx: number,
  colour: string,
  dashPx: readonly number[],
  view: View,
): void {
  traceCircle(context, at, view.halfPlatePx * 1.2 + gapPx, view);
  strokeWith(context, { colour, widthPx: 4, dashPx });
}

/** Over everything: rings round fittings. */
export function paintFittingMarks(
  context: Context,
  { fittings }: Pick<Drawing, 'fittings'>,
  marked: Marked,
  view: View,
): void {
  if (isNothing(marked)) return;
  const { selection, places, placeColour } = marked;
  const pickedId = selection?.kind === 'fitting' ? selection.id : null;
  for (const fitting of fittings) {
    if (places.has(fitting.fittingId))
      paintRing(context, fitting, FINDING_GAP_PX, view.palette[placeColour], DASH_PX, view);
    if (fitting.fittingId === pickedId) paintRing(context, fitting, RING_GAP_PX, view.palette.selected, [], view);
  }
}
