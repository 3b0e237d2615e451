/** The drawing as a pane shows it at its zoom: what would lie on one another lies side by side, with all that hangs on it. */
import { asideOf, besideAt } from '../geom/aside.ts';
import { runById } from '../plan/byId.ts';
import { runPoints } from '../plan/runs.ts';
import type { Plan, Point } from '../plan/schema.ts';
import { type LaneSize, laneSizeAt, lanesOf, seenLine } from './lanes.ts';
import { flatOf, pointsOfFlat } from './runs.ts';
import type { Drawing, HazardShape, LabelShape, RunShape } from './shapes.ts';

type Things = Partial<Pick<Drawing, 'runs' | 'hazards' | 'labels'>>;

/** A run that has a lane, by what hangs on it. */
interface InLane {
  /** Its own line in the plan. */
  readonly line: readonly Point[];
  /** To the right of that line, m. */
  readonly byM: number;
  /** As it is drawn. */
  readonly seen: readonly Point[];
}

const isSamePlace = (one: Point | undefined, other: Point | undefined): boolean =>
  one?.xM === other?.xM && one?.yM === other?.yM;

/** A stripe begins at either end of its run, and ends at the other or on the way. */
function stripeInLane(hazard: HazardShape, { line, byM }: InLane, { taperM }: LaneSize): HazardShape {
  const points = pointsOfFlat(hazard.points);
  const isTurned = !isSamePlace(points[0], line[0]);
  const aside = asideOf(points, isTurned ? -byM : byM, taperM);
  const isWhole = isSamePlace(points.at(-1), line.at(isTurned ? 0 : -1));
  if (isWhole) return { ...hazard, points: flatOf(aside) };
  const [end, before] = [points.at(-1), points.at(-2)];
  if (end === undefined || before === undefined) return hazard;
  return { ...hazard, points: flatOf([...aside.slice(0, -2), besideAt([before, end], end, isTurned ? -byM : byM)]) };
}

/** On its own run, and away from the others: half of it beside a run that goes up or down, and all of it on one that goes across. */
function labelInLane(label: LabelShape, { line, byM }: InLane): LabelShape {
  const moved = (at: Point): Point => besideAt(line, at, byM);
  const at = moved(label.at);
  const asideX = byM === 0 ? 0 : (at.xM - label.at.xM) / (2 * Math.abs(byM));
  return { ...label, at, asideX, ...(label.elsewhere && { elsewhere: label.elsewhere.map(moved) }) };
}

/** The things of a plan as they lie at a zoom; the same things where no two of its runs share a line. */
export function sideBySide<T extends Things>(plan: Plan, things: T, pxPerM: number): T {
  const lanes = lanesOf(plan);
  if (lanes.size === 0) return things;
  const size = laneSizeAt(pxPerM);
  const inLane = new Map(
    [...lanes].flatMap(([id, { lane }]): [string, InLane][] => {
      const run = runById(plan, id);
      if (run === undefined) return [];
      return [[id, { line: runPoints(plan, run), byM: lane * size.laneM, seen: seenLine(plan, run, size).points }]];
    }),
  );
  /** Those of a list that are in a lane, drawn there. */
  const each = <U>(list: readonly U[] | undefined, idOf: (one: U) => string, draw: (one: U, at: InLane) => U) =>
    list?.map((one) => {
      const at = inLane.get(idOf(one));
      return at === undefined ? one : draw(one, at);
    });
  const { runs, hazards, labels } = things;
  return {
    ...things,
    ...(runs && { runs: each(runs, runIdOf, runInLane) }),
    ...(hazards && { hazards: each(hazards, runIdOf, (one, at) => stripeInLane(one, at, size)) }),
    ...(labels && { labels: each(labels, ({ id }) => id, labelInLane) }),
  };
}

const runIdOf = ({ runId }: { readonly runId: string }): string => runId;

const runInLane = (run: RunShape, { seen }: InLane): RunShape => ({ ...run, points: flatOf(seen), isInLane: true });
