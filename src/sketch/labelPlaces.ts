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
import { groundOf } from './labelGround.ts';
import { layOutLabels, layOutMoving, type PlacedLabel } from './labelLayout.ts';
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

/** What of a plan has a label that stands, and those labels as they are drawn. */
interface Named {
  readonly plan: Plan;
  readonly labels: readonly LabelShape[];
}

interface Figured {
  named: Named;
  answer: Assessment;
  labels: readonly LabelShape[];
}

const NONE: readonly PlacedLabel[] = [];

/** The labels of one pane, from one frame to the next. */
export class LabelPlaces {
  #figured: Figured | null = null;
  #still = NONE;

  /** Of the plan only what has a label that stands: most of a crowded sheet has none, and it needs no new figures. */
  readonly #named = remembered(({ plan, drawn }: Scene, laidOut: readonly PlacedLabel[]): Named => {
    const keys = new Set(laidOut.map(({ label }) => label.key));
    const [runs, fittings] = [
      plan.runs.filter(({ id }) => keys.has(`run.${id}`)),
      plan.fittings.filter(({ id }) => keys.has(`fitting.${id}`)),
    ];
    return { plan: { ...plan, runs, fittings }, labels: drawn.labels.filter(({ key }) => keys.has(key)) };
  });

  /** Those labels with the figures of the newest answer; each answer renews only what it says otherwise. */
  readonly #figures = remembered(({ plan, sheet }: Scene, named: Named, answered: Plan): readonly LabelShape[] => {
    if (answered === plan) return named.labels;
    const last = this.#figured;
    const before = last?.named === named ? last : { answer: answerOf(plan), labels: named.labels };
    const now = answerOf(answered);
    const answers = { before: before.answer, now };
    const labels = relabelled(before.labels, named.plan, sheet.id, answers, labelWords(unitsFor(plan)));
    this.#figured = { named, answer: now, labels };
    return labels;
  });

  /** The same as they are shown here. */
  readonly #seen = remembered(
    ({ drawn, sight, proposal }: Scene, labels: readonly LabelShape[]) =>
      withGhosts(drawingIn(sight, { ...drawn, runs: [], fittings: [], labels }), proposal).labels,
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
    const figures = this.#figures(scene, this.#named(scene, laidOut), answered);
    const stood = this.#stood(laidOut, this.#seen(scene, figures), changed);
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
