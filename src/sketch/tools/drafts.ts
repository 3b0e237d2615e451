/**
 * The draft of a gesture: the same pure edit that will be committed, shown at most once per animation frame. The plan
 * itself, the saved bytes and the history stay as they are until the commit.
 */
import type { Desk } from '../../desk/desk.ts';
import {
  type Aftermath,
  beginGesture,
  cancelGesture,
  commitGesture,
  draftGesture,
  type Edit,
} from '../../desk/edit.ts';
import type { Frames } from '../../desk/frames.ts';

export class Drafts {
  #waiting: Edit | null = null;
  #callOff: (() => void) | null = null;

  constructor(
    private readonly desk: Desk,
    private readonly frames: Frames,
  ) {}

  begin(act: string): void {
    this.#forget();
    beginGesture(this.desk, act);
  }

  /** Shows the plan as the edit would leave it, with the next frame. */
  show(edit: Edit): void {
    this.#waiting = edit;
    this.#callOff ??= this.frames(() => this.#flush());
  }

  /** Makes the last edit the plan. Answers false when nothing changed, or the gesture had been dropped meanwhile. */
  commit(aftermath: Aftermath = {}): boolean {
    this.#flush();
    return commitGesture(this.desk, aftermath);
  }

  cancel(): void {
    this.#forget();
    cancelGesture(this.desk);
  }

  #flush(): void {
    const edit = this.#waiting;
    this.#forget();
    if (edit !== null) draftGesture(this.desk, edit);
  }

  #forget(): void {
    this.#callOff?.();
    this.#callOff = null;
    this.#waiting = null;
  }
}
