/** Where the labels of a pane stand: laid out anew when what they stand beside changes, not with every move of a finger. */
import type { PaneSize } from '../desk/camera.ts';
import type { Camera } from '../desk/desk.ts';
import type { Drawing } from '../drawing/shapes.ts';
import type { Plan } from '../plan/schema.ts';
import { layOutLabels, type PlacedLabel } from './labelLayout.ts';
import type { Live } from './live.ts';
import type { Late } from './loadLate.ts';
import { remembered } from './remembered.ts';
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

const NONE: readonly PlacedLabel[] = [];

/** The labels of one pane, from one frame to the next. */
export class LabelPlaces {
  #still = NONE;
  /** Through which it was seen before anything was held: names are not searched room for in what scrolls under a finger. */
  #atRest: Camera | null = null;
  #moving: InstanceType<Late['MovingLabels']> | null = null;

  readonly #laidOut = remembered(
    (
      plan: Plan,
      settled: Drawing,
      camera: Camera,
      size: PaneSize,
      keep: string | null,
      scale: number,
      late: Late | null,
      isScrolled: boolean,
    ): readonly PlacedLabel[] => {
      const seen = late?.sideBySide(plan, settled, camera.pxPerM) ?? settled;
      const wish = { keep, scale };
      const placed = layOutLabels(seen, camera, size, wish);
      return late === null || isScrolled ? placed : late.withMoreLabels(placed, seen, camera, size, wish);
    },
  );

  /**
   * Where they stand now; `live`: what the gesture makes of the scene, with the answer for `answered`. Without `late`
   * there is no hand yet that could move anything. `askAgain` is called where they may stand elsewhere a little later.
   */
  of(pane: LabelCase, live: Live, answered: Plan, late: Late | null, askAgain: () => void): PlacedLabels {
    const { scene, camera, size, keep, scale } = pane;
    if (scene.changed.size === 0) this.#atRest = camera;
    const isScrolled = camera !== this.#atRest;
    const laidOut = this.#laidOut(scene.plan, scene.settled, camera, size, keep, scale, late, isScrolled);
    if (scene.changed.size === 0 || late === null) return { still: this.#same(laidOut), live: NONE };
    this.#moving ??= new late.MovingLabels();
    const now = this.#moving.of(pane, laidOut, late.sideBySide(live.plan, live, camera.pxPerM), answered, askAgain);
    return { still: this.#same(now.still), live: now.live };
  }

  /** The list before, where it holds the same labels. */
  #same(list: readonly PlacedLabel[]): readonly PlacedLabel[] {
    const before = this.#still;
    const isSame = list.length === before.length && list.every((label, place) => label === before[place]);
    if (!isSame) this.#still = list;
    return this.#still;
  }
}
