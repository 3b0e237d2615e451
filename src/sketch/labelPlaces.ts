/** Where the labels of a pane stand: laid out anew when what they stand beside changes, not with every move of a finger. */
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import type { PaneSize } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import { relabelled } from '../drawing/labels.ts';
import type { Drawing, LabelShape } from '../drawing/shapes.ts';
import type { Plan } from '../plan/schema.ts';
import { unitsFor } from '../words/index.ts';
import { withGhosts } from './ghosts.ts';
import { groundOf, layOutLabels, layOutMoving, type PlacedLabel } from './labelLayout.ts';
import { labelWords } from './labelWords.ts';
import type { Live } from './live.ts';
import { remembered } from './remembered.ts';
import { drawingIn } from './sight.ts';
import type { Scene } from './useScene.ts';

export interface PlacedLabels {
  /** The same list while nothing in it changes. */
  still: readonly PlacedLabel[];
  live: readonly PlacedLabel[];
}

/** What of a pane its labels hang on, beside the gesture under way. */
export interface LabelCase {
  scene: Scene;
  camera: Camera;
  size: PaneSize;
  /** The id whose label is shown even where it covers another. */
  keep: string | null;
  scale: number;
}

interface Figured {
  /** Of the plan as it is. */
  drawn: readonly LabelShape[];
  answer: Assessment;
  labels: readonly LabelShape[];
}

const NONE: readonly PlacedLabel[] = [];

/** The labels of one pane, from one frame to the next. */
export class LabelPlaces {
  #figured: Figured | null = null;
  #still = NONE;

  /** The labels of the plan with the figures of the newest answer; each answer renews only what it says otherwise. */
  readonly #figures = remembered(({ plan, sheet, drawn }: Scene, answered: Plan): readonly LabelShape[] => {
    if (answered === plan) return drawn.labels;
    const last = this.#figured;
    const before = last?.drawn === drawn.labels ? last : { answer: answerOf(plan), labels: drawn.labels };
    const now = answerOf(answered);
    const answers = { before: before.answer, now };
    const labels = relabelled(before.labels, plan, sheet.id, answers, labelWords(unitsFor(plan)));
    this.#figured = { drawn: drawn.labels, answer: now, labels };
    return labels;
  });

  /** The same as they are shown here. */
  readonly #seen = remembered(({ drawn, settled, sight, proposal }: Scene, figures: readonly LabelShape[]) =>
    figures === drawn.labels
      ? settled.labels
      : withGhosts(drawingIn(sight, { ...drawn, labels: figures }), proposal).labels,
  );

  readonly #laidOut = remembered(
    (settled: Drawing, camera: Camera, size: PaneSize, keep: string | null, scale: number): readonly PlacedLabel[] =>
      layOutLabels(settled, camera, size, { keep, scale }),
  );

  readonly #ground = remembered(({ still }: Scene, camera: Camera, size: PaneSize, scale: number) =>
    groundOf({ ...still, hazards: [] }, camera, size, scale),
  );

  /** Where they stood, with the figures of the newest answer. */
  readonly #stood = remembered(
    (laidOut: readonly PlacedLabel[], labels: readonly LabelShape[], changed: ReadonlySet<string>) => {
      const left = labels.filter(({ kind, id }) => kind !== 'hazard' && !changed.has(id));
      const now = new Map(left.map((label) => [label.key, label]));
      return laidOut.flatMap((one) => {
        const label = now.get(one.label.key);
        if (label === undefined) return [];
        return label.title === one.label.title && label.figures === one.label.figures ? [one] : [{ ...one, label }];
      });
    },
  );

  /** Where they stand now; `live`: what the gesture makes of the scene, with the answer for `answered`. */
  of({ scene, camera, size, keep, scale }: LabelCase, live: Live, answered: Plan): PlacedLabels {
    const { settled, changed } = scene;
    const laidOut = this.#laidOut(settled, camera, size, keep, scale);
    if (changed.size === 0) return { still: this.#same(laidOut), live: NONE };
    const stood = this.#stood(laidOut, this.#seen(scene, this.#figures(scene, answered)), changed);
    const moving = {
      runs: live.runs,
      fittings: live.fittings.filter(({ fittingId }) => changed.has(fittingId)),
      hazards: live.shown.hazards,
      labels: live.labels,
    };
    const ground = this.#ground(scene, camera, size, scale);
    const placed = layOutMoving(stood, ground, moving, camera, size, { keep, scale });
    return { still: this.#same(placed.still), live: placed.live };
  }

  /** The list before, where it holds the same labels. */
  #same(list: readonly PlacedLabel[]): readonly PlacedLabel[] {
    const before = this.#still;
    const isSame = list.length === before.length && list.every((label, place) => label === before[place]);
    if (!isSame) this.#still = list;
    return this.#still;
  }
}
