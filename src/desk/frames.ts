/**
 * Work that waits for the next frame, all of it done in one go: what changes the desk together is drawn once, not once
 * for each.
 */
export type Frames = (run: () => void) => () => void;

type Jobs = Set<() => void>;

/** Of the next frame; null while nothing waits for it. */
let waiting: Jobs | null = null;

function nextFrame(): Jobs {
  const jobs: Jobs = new Set();
  requestAnimationFrame(() => {
    waiting = null;
    for (const job of jobs) {
      try {
        job();
      } catch (error) {
        // one that fails takes none of the others with it
        reportError(error);
      }
    }
  });
  return jobs;
}

/** Runs once before the next paint, in the order of asking; answers how to call it off. */
export const pageFrames: Frames = (run) => {
  const job = () => run();
  waiting ??= nextFrame();
  const jobs = waiting.add(job);
  return () => void jobs.delete(job);
};
