import type { Assessment } from '../assess/answer.ts';
import { type RunBrief, runBrief } from '../assess/brief.ts';
import { CASING_PX, type ColourName, RUN_DASH, strokePx } from '../look/tokens.ts';
import { runPoints } from '../plan/runs.ts';
import type { Plan, Point, Run, RunKind } from '../plan/schema.ts';
import type { RunShape } from './shapes.ts';

const RUN_COLOUR: Readonly<Record<RunKind, ColourName>> = {
  power: 'positive',
  ground: 'ground',
  remote: 'remote',
  factory: 'factory',
};
/** A remote lead carries no power and has no size of its own. */
const REMOTE_PX = 3;

export const flatOf = (points: readonly Point[]): number[] => points.flatMap(({ xM, yM }) => [xM, yM]);

export const pointsOfFlat = (flat: readonly number[]): Point[] =>
  Array.from({ length: flat.length / 2 }, (_, i) => ({ xM: flat[2 * i] ?? 0, yM: flat[2 * i + 1] ?? 0 }));

/** A run as it is drawn: as thick as its conductor, in the colour and dash of its kind, with a light edge. */
export function drawRun(plan: Plan, run: Run, answer: RunBrief | undefined): RunShape {
  const widthPx = run.kind === 'remote' ? REMOTE_PX : strokePx(answer?.areaMm2 ?? null);
  return {
    runId: run.id,
    kind: run.kind,
    points: flatOf(runPoints(plan, run)),
    stroke: { colour: RUN_COLOUR[run.kind], widthPx, dashPx: RUN_DASH[run.kind] },
    casing: { colour: 'casing', widthPx: widthPx + 2 * CASING_PX, dashPx: [] },
  };
}

/** The length of a run's cable, slack and rise included or as taped, m; null for a run that the answer does not know. */
export const cableM = (answer: Assessment, runId: string): number | null =>
  runBrief(answer, runId)?.length.lengthM ?? null;
