/**
 * Labels while a gesture is under way: those of what it changes go along with it, and are laid out anew several times a
 * second; the rest stay where they stood, with the figures of the newest answer, and give way to what has come over them.
 */
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import { type PaneSize, toScreen } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import type { Labelled } from '../drawing/labels.ts';
import { relabelled } from '../drawing/relabelled.ts';
import type { LabelShape } from '../drawing/shapes.ts';
import { sideBySide } from '../drawing/sideBySide.ts';
import type { Plan } from '../plan/schema.ts';
import { unitsFor } from '../words/index.ts';
import { withGhosts } from './ghosts.ts';
import { type Clock, pageClock } from './input/clock.ts';
import { type Ground, groundOf, grown, overlap, type Things } from './labelGround.ts';
import { boxOf, clamped, HALF_STROKE_PX, type PlacedLabel, placed, type Wish } from './labelLayout.ts';
import type { LabelCase, PlacedLabels } from './labelPlaces.ts';
import { labelWords } from './labelWords.ts';
import type { Live } from './live.ts';
import { remembered } from './remembered.ts';
import { drawingIn } from './sight.ts';
import { withMoreLengths } from './stripesInSight.ts';
import type { Scene } from './useScene.ts';

/** What a gesture changes, and how its things are labelled. */
export interface Moving extends Things {
  labels: readonly LabelShape[];
}

/**
 * Labels while a gesture is under way: those of what it changes are laid out anew, the rest stay where they stood, and
 * give way to what has come over them. `ground` is what the gesture leaves as it is.
 */
export function layOutMoving(
  stood: readonly PlacedLabel[],
  ground: Ground,
  moving: Moving,
  camera: Camera,
  size: PaneSize,
  wish: Wish,
): PlacedLabels {
  const moved = groundOf(moving, camera, size, wish.scale);
  const grounds = [ground, moved];
  const usual = placed(moving.labels, grounds, camera, size, wish);
  const live = withMoreLengths(usual, moving.labels, grounds, camera, size, wish);
  const over = [...live.map(boxOf), ...moved.plates];
  const still = stood.filter((label) => {
    const box = boxOf(label);
    return !over.some((other) => overlap(box, other)) && !moved.isStriped(grown(box, HALF_STROKE_PX));
  });
  return { still, live };
}

/** What of a plan has a label that stands, and those labels as they are drawn. */
interface Named {
  readonly on: Labelled;
  readonly labels: readonly LabelShape[];
}

interface Figured {
  named: Named;
  answer: Assessment;
  labels: readonly LabelShape[];
}

/** Labels only go along with what they stand beside until the next answer, and no longer than this, ms. */
export const RIDE_MS = 250;

/** The frame that shows an answer has enough to do: they are laid out for it with the next, or after so long, ms. */
export const LATER_MS = 50;

/** How labels were laid out last, and for what. */
interface LaidOut {
  readonly atMs: number;
  readonly pane: LabelCase;
  readonly answered: Plan;
  readonly moving: readonly LabelShape[];
  readonly places: PlacedLabels;
}

/** The same labels as before, with what they stand beside elsewhere; null where there are others. */
function ridden({ moving, places, pane }: LaidOut, labels: readonly LabelShape[]): PlacedLabel[] | null {
  const isSame = labels.length === moving.length && labels.every(({ key }, place) => key === moving[place]?.key);
  if (!isSame) return null;
  return places.live.map((one) => {
    const label = labels[moving.indexOf(one.label)] ?? one.label;
    const [from, to] = [one.label.at, label.at].map((at) => toScreen(pane.camera, pane.size, at));
    if (from === undefined || to === undefined) return one;
    const gone = { ...one, label, xPx: one.xPx + to.xPx - from.xPx, yPx: one.yPx + to.yPx - from.yPx };
    if (label.kind !== 'hazard') return gone;
    // of a close view the stripe's middle may go out at once, where the rest of it stays
    const { x, y } = clamped(boxOf(gone), pane.size);
    return { ...gone, xPx: x, yPx: y };
  });
}

const isSameCase = (one: LabelCase, other: LabelCase): boolean =>
  one.scene === other.scene &&
  one.camera === other.camera &&
  one.size === other.size &&
  one.keep === other.keep &&
  one.scale === other.scale;

export class MovingLabels {
  #figured: Figured | null = null;
  #last: LaidOut | null = null;

  /** Calls off asking again; null unless an answer is shown for which they are not laid out yet. */
  #callOff: (() => void) | null = null;

  constructor(private readonly clock: Clock = pageClock) {}

  /** Of the plan only what has a label that stands: most of a crowded sheet has none, and it needs no new figures. */
  readonly #named = remembered(({ plan, sheet, drawn }: Scene, laidOut: readonly PlacedLabel[]): Named => {
    const keys = new Set(laidOut.map(({ label }) => label.key));
    const on = {
      sheetId: sheet.id,
      runs: plan.runs.filter(({ id }) => keys.has(`run.${id}`)),
      fittings: plan.fittings.filter(({ id }) => keys.has(`fitting.${id}`)),
    };
    return { on, labels: drawn.labels.filter(({ key }) => keys.has(key)) };
  });

  /** Those labels with the figures of the newest answer; each answer renews only what it says otherwise. */
  readonly #figures = remembered(({ plan }: Scene, named: Named, answered: Plan): readonly LabelShape[] => {
    if (answered === plan) return named.labels;
    const last = this.#figured;
    const before = last?.named === named ? last : { answer: answerOf(plan), labels: named.labels };
    const now = answerOf(answered);
    const answers = { before: before.answer, now };
    const labels = relabelled(before.labels, plan, named.on, answers, labelWords(unitsFor(plan)));
    this.#figured = { named, answer: now, labels };
    return labels;
  });

  /** The same as they are shown here. */
  readonly #seen = remembered(
    ({ drawn, sight, proposal }: Scene, labels: readonly LabelShape[]) =>
      withGhosts(drawingIn(sight, { ...drawn, runs: [], fittings: [], labels }), proposal).labels,
  );

  readonly #ground = remembered(({ plan, still }: Scene, camera: Camera, size: PaneSize, scale: number) =>
    groundOf({ ...sideBySide(plan, still, camera.pxPerM), hazards: [] }, camera, size, scale),
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

  /** `laidOut`: where all of them stand while nothing moves. `askAgain` is called where that may be other places soon. */
  of(pane: LabelCase, laidOut: readonly PlacedLabel[], live: Live, answered: Plan, askAgain: () => void): PlacedLabels {
    const { scene } = pane;
    const ridden = this.#ride(pane, live, answered, askAgain);
    if (ridden !== null) return ridden;
    const figures = this.#figures(scene, this.#named(scene, laidOut), answered);
    const stood = this.#stood(laidOut, this.#seen(scene, figures), scene.changed);
    return this.#layOut(pane, stood, live, answered);
  }

  /** Between two layouts; null when another is due. Each answer brings one, that to a finger at rest the last. */
  #ride(pane: LabelCase, live: Live, answered: Plan, askAgain: () => void): PlacedLabels | null {
    const last = this.#last;
    if (last === null || this.#callOff !== null || !isSameCase(last.pane, pane)) return null;
    if (this.clock.nowMs() - last.atMs >= RIDE_MS) return null;
    const moved = ridden(last, live.labels);
    if (moved === null) return null;
    if (last.answered !== answered) this.#callOff = this.clock.after(LATER_MS, askAgain);
    return { still: last.places.still, live: moved };
  }

  #layOut(pane: LabelCase, stood: readonly PlacedLabel[], live: Live, answered: Plan): PlacedLabels {
    const { scene, camera, size, keep, scale } = pane;
    const { changed } = scene;
    const moving = {
      runs: live.runs,
      fittings: live.fittings.filter(({ fittingId }) => changed.has(fittingId)),
      hazards: live.hazards,
      labels: live.labels,
    };
    const ground = this.#ground(scene, camera, size, scale);
    const places = layOutMoving(stood, ground, moving, camera, size, { keep, scale });
    this.#callOff?.();
    this.#callOff = null;
    this.#last = { atMs: this.clock.nowMs(), pane, answered, moving: live.labels, places };
    return places;
  }
}
