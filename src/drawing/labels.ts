/**
 * What stands beside fittings and runs: the user's own name and one line of figures. The words come from outside, so
 * that the drawing is the same in every language.
 */
import type { Assessment, SourceAnswer } from '../assess/answer.ts';
import { fuseRatingA, type RunBrief, runBrief } from '../assess/brief.ts';
import { between, distance } from '../geom/point.ts';
import { polylineLength, segmentsOf } from '../geom/polyline.ts';
import { runById } from '../plan/byId.ts';
import { placeOn, runPoints } from '../plan/runs.ts';
import type { Fitting, Plan, Point, Run, Sheet } from '../plan/schema.ts';
import { shownName } from '../words/names.ts';
import type { LabelShape } from './shapes.ts';

/** How figures are said. */
export interface LabelWords {
  length(m: number): string;
  /** A length that was measured, and so beats the drawn one. */
  taped(m: number): string;
  current(a: number): string;
  power(w: number): string;
  gauge(id: string): string;
  /** Beside the stripe: how long the unprotected stretch is. */
  unprotected(m: number): string;
  /** Beside a point where a cable goes on on that other sheet. */
  continuesAt(sheet: Sheet): string;
  /** Of a run that does not move. */
  locked: string;
  /** Between two figures of one line. */
  separator: string;
}

/** The one figure that tells a fitting from others of its kind. */
function fittingFigures(fitting: Fitting, answer: Assessment, words: LabelWords): string {
  switch (fitting.kind) {
    case 'fuse':
    case 'breaker':
    case 'battery': {
      const ratingA = fuseRatingA(answer, fitting.id);
      return ratingA === null ? '' : words.current(ratingA);
    }
    case 'amplifier':
      return fitting.ratedW === null ? '' : words.power(fitting.ratedW.value);
    case 'load':
      return words.current(fitting.currentA.value);
    case 'alternator':
      return words.current(fitting.ratedA.value);
    case 'charger':
      return words.current(fitting.outputMaxA.value);
    default:
      return '';
  }
}

/** What a fitting is called beside it: of a point where a cable goes on, where that is. */
function fittingTitle(plan: Plan, fitting: Fitting, sheetId: string, words: LabelWords): string {
  const otherId =
    fitting.kind === 'continuation' && (fitting.sheetId === sheetId ? fitting.other.sheetId : fitting.sheetId);
  const other = plan.sheets.find(({ id }) => id === otherId);
  return other === undefined ? shownName(plan, fitting) : words.continuesAt(other);
}

function fittingLabel(
  plan: Plan,
  fitting: Fitting,
  sheetId: string,
  answer: Assessment,
  words: LabelWords,
): LabelShape | null {
  const at = placeOn(fitting, sheetId);
  if (at === null) return null;
  const figures = fittingFigures(fitting, answer, words);
  return {
    key: `fitting.${fitting.id}`,
    kind: 'fitting',
    id: fitting.id,
    at,
    title: fittingTitle(plan, fitting, sheetId, words),
    figures,
  };
}

/** The middle of the longest straight piece: clear of bends, which are there to be taken hold of. */
function middleOf(points: readonly Point[]): Point | null {
  const [longest] = byLength(points);
  return longest === undefined ? null : between(...longest, 0.5);
}

const byLength = (points: readonly Point[]): (readonly [Point, Point])[] =>
  [...segmentsOf(points)]
    .map(([a, b]): [Point, Point] => [a, b])
    .sort((one, other) => distance(...other) - distance(...one));

/** Other places along a run: nearer to the ends of its longest piece, and in the middle of the next. */
function besideMiddle(points: readonly Point[], shares = [0.3, 0.7]): Point[] {
  const [longest, next] = byLength(points);
  return [
    ...(longest === undefined ? [] : shares.map((share) => between(...longest, share))),
    ...(next === undefined ? [] : [between(...next, 0.5)]),
  ];
}

function runLabel(plan: Plan, run: Run, answer: RunBrief, words: LabelWords): LabelShape | null {
  const points = runPoints(plan, run);
  const at = middleOf(points);
  // an unprotected stretch has its length beside it in large figures already
  if (at === null || run.kind === 'remote' || answer.unprotectedM > 0) return null;
  const { lengthM, origin } = answer.length;
  const lengthText = origin === 'taped' ? words.taped(lengthM) : words.length(lengthM);
  const gauge = answer.gauge === null ? [] : [words.gauge(answer.gauge)];
  const locked = run.locked ? [words.locked] : [];
  const figures = [...gauge, lengthText, ...locked].join(words.separator);
  return {
    key: `run.${run.id}`,
    kind: 'run',
    id: run.id,
    at,
    elsewhere: besideMiddle(points),
    title: run.name,
    figures,
  };
}

/** Shares of its longest piece beside which the length may stand too, so that it stays near a stripe seen in part. */
const ALONG = [0.3, 0.7, 0.1, 0.9];

function hazardLabel(plan: Plan, sheetId: string, source: SourceAnswer, words: LabelWords): LabelShape | null {
  if (!(source.unprotectedM > 0)) return null;
  const runs = source.runIds.flatMap((id) => runById(plan, id) ?? []).filter((run) => run.sheetId === sheetId);
  // the longest of its runs first: that is where the stripe is seen
  const along = runs.map((run) => runPoints(plan, run)).sort((a, b) => polylineLength(b) - polylineLength(a));
  const [line = []] = along;
  const at = middleOf(line);
  if (at === null) return null;
  const figures = words.unprotected(source.unprotectedM);
  const [id, elsewhere] = [source.fittingId, besideMiddle(line, ALONG)];
  return { key: `hazard.${id}`, kind: 'hazard', id, at, elsewhere, along, title: '', figures };
}

/** What on a sheet labels are wanted for. */
export interface Labelled {
  readonly sheetId: string;
  readonly fittings: readonly Fitting[];
  readonly runs: readonly Run[];
}

/**
 * Labels of what is on one sheet, the most telling first: where two would overlap, the earlier one stays. The lengths of
 * unprotected stretches are always among them.
 */
export function drawLabels(plan: Plan, on: Labelled, answer: Assessment, words: LabelWords): LabelShape[] {
  const labels = [
    ...answer.sources.map((source) => hazardLabel(plan, on.sheetId, source, words)),
    ...on.fittings.map((fitting) => fittingLabel(plan, fitting, on.sheetId, answer, words)),
    ...on.runs.map((run) => {
      const of = runBrief(answer, run.id);
      return of === undefined ? null : runLabel(plan, run, of, words);
    }),
  ];
  return labels.filter((label) => label !== null);
}
