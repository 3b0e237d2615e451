/** The panes as places on the page: which one a finger is over, and what of the sheet lies under it. */
import { type PaneSize, toScreen, toSheet } from '../desk/camera.ts';
import type { Camera, Desk, DeskState, PaneId } from '../desk/desk.ts';
import type { Point } from '../plan/schema.ts';
import { setCamera } from './cameras.ts';
import type { ClientPoint } from './input/gestures.ts';

interface Mounted {
  element: HTMLElement;
  size: PaneSize;
}

/** Where the panes lay and looked at some time. */
export interface PanesThen {
  readonly mounted: ReadonlyMap<PaneId, Mounted>;
  readonly boxes: Map<PaneId, DOMRect>;
  readonly cameras: DeskState['cameras'];
}

export class Panes {
  #mounted: ReadonlyMap<PaneId, Mounted> = new Map();
  /** Cameras as they were fitted: as long as one is in use, nobody has moved it. Kept while a pane is not shown. */
  readonly #fitted = new Map<PaneId, Camera>();

  /** Where the panes lie on the page: looked at once for a drag, since each look after a change lays the page out anew. */
  #boxes = new Map<PaneId, DOMRect>();
  /** Instead of the desk's, while something is heard of later than it was done. */
  #camerasThen: DeskState['cameras'] | null = null;

  constructor(private readonly desk: Desk) {}

  /** Called when a pane appears or changes its size. */
  mount(id: PaneId, element: HTMLElement, size: PaneSize): void {
    // where one has grown, another lies elsewhere
    this.lookAnew();
    this.#mounted = new Map([...this.#mounted, [id, { element, size }]]);
  }

  unmount(id: PaneId): void {
    this.#mounted = new Map([...this.#mounted].filter(([mounted]) => mounted !== id));
    this.lookAnew();
  }

  /** The page may have been laid out otherwise since. */
  lookAnew(): void {
    this.#boxes = new Map();
  }

  /** Where the panes lie and look now, for what is done now and heard of later. */
  asNow(): PanesThen {
    for (const id of this.#mounted.keys()) this.#boxOf(id);
    return { mounted: this.#mounted, boxes: this.#boxes, cameras: this.desk.getState().cameras };
  }

  /** Acts as if the panes still lay and looked as they did then. */
  asThen(then: PanesThen, act: () => void): void {
    const [mounted, boxes] = [this.#mounted, this.#boxes];
    this.#mounted = then.mounted;
    this.#boxes = then.boxes;
    this.#camerasThen = then.cameras;
    try {
      act();
    } finally {
      this.#mounted = mounted;
      this.#boxes = boxes;
      this.#camerasThen = null;
    }
  }

  #boxOf(id: PaneId): DOMRect | null {
    const known = this.#boxes.get(id);
    if (known !== undefined) return known;
    const box = this.#mounted.get(id)?.element.getBoundingClientRect();
    if (box === undefined) return null;
    this.#boxes.set(id, box);
    return box;
  }

  /** Whether someone has moved the camera of a pane that shows this sheet. */
  isMoved(id: PaneId, sheetId: string): boolean {
    const camera = this.camera(id);
    return camera !== null && camera.sheetId === sheetId && camera !== this.#fitted.get(id);
  }

  fit(id: PaneId, camera: Camera): void {
    this.#fitted.set(id, camera);
    setCamera(this.desk, id, camera);
  }

  camera(id: PaneId): Camera | null {
    return (this.#camerasThen ?? this.desk.getState().cameras)[id];
  }

  sizeOf(id: PaneId): PaneSize | null {
    return this.#mounted.get(id)?.size ?? null;
  }

  /** The pane under a point of the page; null beside all of them: over the shelf, say. */
  at({ xPx, yPx }: ClientPoint): PaneId | null {
    for (const id of this.#mounted.keys()) {
      const box = this.#boxOf(id);
      if (box !== null && xPx >= box.left && xPx <= box.right && yPx >= box.top && yPx <= box.bottom) return id;
    }
    return null;
  }

  /** One that is seen; null before any is. */
  any(): { id: PaneId; element: HTMLElement } | null {
    const [first] = this.#mounted;
    return first === undefined ? null : { id: first[0], element: first[1].element };
  }

  /** Place on the sheet under a point of the page, seen through that pane; null before it has been measured. */
  toSheet(id: PaneId, point: ClientPoint): { at: Point; pxPerM: number } | null {
    const mounted = this.#mounted.get(id);
    const camera = this.camera(id);
    if (mounted === undefined || camera === null) return null;
    return { at: toSheet(camera, mounted.size, this.inPane(id, point)), pxPerM: camera.pxPerM };
  }

  /** Px from the top left of the pane. */
  inPane(id: PaneId, { xPx, yPx }: ClientPoint): { xPx: number; yPx: number } {
    const box = this.#boxOf(id);
    return { xPx: xPx - (box?.left ?? 0), yPx: yPx - (box?.top ?? 0) };
  }

  /** Px from the top left of the pane at which a place of the sheet is drawn. */
  toPane(id: PaneId, at: Point): { xPx: number; yPx: number } | null {
    const mounted = this.#mounted.get(id);
    const camera = this.camera(id);
    return mounted === undefined || camera === null ? null : toScreen(camera, mounted.size, at);
  }
}
