/**
 * Work that waits for the next frame, all of it done in one go: what changes the desk together is drawn once, not once
 * for each.
 */
export type Frames = (run: () => void) => () => void;

let waiting = new Set<() => void>();

/** Runs once before the next paint, in the order of asking; answers how to call it off. */
export const pageFrames: Frames = (run) => {
  const job = () => run();
  if (waiting.size === 0) {
    const mine = waiting;
    requestAnimationFrame(() => {
      waiting = new Set();
      for (const each of mine) each();
    });
  }
  waiting.add(job);
  return () => void waiting.delete(job);
};
