/**
 * The bare stage of `bench:drag`, a page of its own: what any Konva page has to do at least to drag a fuse. One stage, the
 * shapes that the page draws of the same plan, and on a layer of its own what moves: the fuse, its runs, and over those
 * the plates to which they lead. No stripes, labels, figures, answers or second pane.
 */
import Konva from 'konva/lib/Core';
import { Circle } from 'konva/lib/shapes/Circle';
import { Line } from 'konva/lib/shapes/Line';
import { drawFitting, halfPlatePx } from '../../src/drawing/fittings.ts';
import { drawRun } from '../../src/drawing/runs.ts';
import type { Shape, Stroke } from '../../src/drawing/shapes.ts';
import { COLOURS, type ColourName } from '../../src/look/tokens.ts';
import { runPoints } from '../../src/plan/runs.ts';
import type { Fitting, Point, Run } from '../../src/plan/schema.ts';
import { BOARD, spreadPlan } from './spreadPlan.ts';

const HELD = 'main';
const plan = spreadPlan(Number(new URLSearchParams(location.search).get('n')));
const stage = new Konva.Stage({ container: 'root', width: innerWidth, height: innerHeight });
const still = new Konva.Layer({ listening: false });
const moving = new Konva.Layer({ listening: false });
stage.add(still, moving);

const pxPerM = Math.min(innerWidth / BOARD.lengthM, innerHeight / BOARD.widthM);
const half = halfPlatePx(pxPerM);
const toPx = ({ xM, yM }: Point) => ({
  x: innerWidth / 2 + (xM - BOARD.lengthM / 2) * pxPerM,
  y: innerHeight / 2 + (yM - BOARD.widthM / 2) * pxPerM,
});

interface Drawn {
  stroke: Stroke | null;
  fill: ColourName | null;
}

const inkOf = ({ stroke, fill }: Drawn) => ({
  ...(stroke && { stroke: COLOURS[stroke.colour], strokeWidth: stroke.widthPx, dash: [...stroke.dashPx] }),
  ...(fill && { fill: COLOURS[fill] }),
  lineCap: 'round' as const,
  perfectDrawEnabled: false,
});

function nodeOf(shape: Shape): Line | Circle {
  if (shape.kind === 'circle')
    return new Circle({ x: shape.x * half, y: shape.y * half, radius: shape.radius * half, ...inkOf(shape) });
  return new Line({ points: shape.points.map((value) => value * half), closed: shape.closed, ...inkOf(shape) });
}

function plateOf(fitting: Fitting): Konva.Group {
  const { at, parts } = drawFitting(fitting);
  return new Konva.Group(toPx(at)).add(...parts.map(nodeOf));
}

const flatPx = (points: readonly Point[]): number[] => points.flatMap((point) => Object.values(toPx(point)));

/** Its light edge and its own stroke. */
function linesOf(run: Run): Line[] {
  const { stroke, casing } = drawRun(plan, run, undefined);
  const points = flatPx(runPoints(plan, run));
  return [casing, stroke].map((own) => new Line({ points, ...inkOf({ stroke: own, fill: null }) }));
}

const isAtHeld = ({ from, to }: Run): boolean => [from.fittingId, to.fittingId].includes(HELD);
const ownRuns = plan.runs.filter(isAtHeld);
const ends = new Set(ownRuns.flatMap(({ from, to }) => [from.fittingId, to.fittingId]));
still.add(...plan.runs.filter((run) => !isAtHeld(run)).flatMap(linesOf));
still.add(...plan.fittings.filter(({ id }) => !ends.has(id)).map(plateOf));

const cables = ownRuns.map((run) => ({ lines: linesOf(run), points: flatPx(runPoints(plan, run)), run }));
const plates = new Map(plan.fittings.filter(({ id }) => ends.has(id)).map((fitting) => [fitting.id, plateOf(fitting)]));
moving.add(...cables.flatMap(({ lines }) => lines), ...plates.values());

function show(x: number, y: number): void {
  plates.get(HELD)?.position({ x, y });
  for (const { lines, points, run } of cables) {
    const rest = run.from.fittingId === HELD ? [x, y, ...points.slice(2)] : [...points.slice(0, -2), x, y];
    for (const line of lines) line.points(rest);
  }
  moving.batchDraw();
}

let isDown = false;
addEventListener('pointerdown', () => {
  isDown = true;
});
addEventListener('pointerup', () => {
  isDown = false;
});
addEventListener('pointermove', ({ clientX, clientY }) => {
  if (isDown) show(clientX, clientY);
});
document.body.dataset.ready = 'yes';
