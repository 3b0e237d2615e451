/** Time as the input sees it: injected, so that a test decides when half a second has gone by. */
export interface Clock {
  nowMs(): number;
  /** Runs once after the time; answers how to call it off. */
  after(ms: number, run: () => void): () => void;
}

export const pageClock: Clock = {
  nowMs: () => performance.now(),
  after: (ms, run) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
};
