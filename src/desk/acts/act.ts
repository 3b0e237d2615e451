import type { Desk, DeskState } from '../desk.ts';

/** One thing the user can do: button, key and touch all run the same. */
export interface Act {
  readonly id: string;
  /**
   * Default keys, written as aria-keyshortcuts has them: 'Control+z', 'Shift+Control+z', 'ArrowLeft', 'Plus'.
   * Control stands for Command on Apple keyboards.
   */
  readonly keys: readonly string[];
  /** True when a key held down repeats the act. */
  readonly repeats?: boolean;
  allowed(state: DeskState): boolean;
  run(desk: Desk): void;
}
