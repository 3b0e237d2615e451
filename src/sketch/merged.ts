/** Runs once, after all that changes together has changed. */
export function merged(run: () => void): () => void {
  let isDue = false;
  return () => {
    if (isDue) return;
    isDue = true;
    queueMicrotask(() => {
      isDue = false;
      run();
    });
  };
}
