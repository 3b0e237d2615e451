/** Processor time, not time on the clock: on a busy machine nothing would be warm. */
const WARM_CPU_MS = 600;
const WARM_CALLS = 3;
const SAMPLES = 15;
/** A sample is no shorter than this, so that the clock can tell it. */
const SAMPLE_MS = 2;

export interface Measured {
  readonly medianMs: number;
  readonly bestMs: number;
  /** Median of the processor time of all threads, the collector's and the compiler's too. */
  readonly cpuMs: number;
  readonly samples: number;
}

const median = (values: readonly number[]): number =>
  [...values].sort((one, other) => one - other)[values.length >> 1] ?? Number.NaN;

/** Time of one call, after that much processor time of warming: median and best of 15 samples, of fewer only when `mostMs` has passed. */
export function measure(call: () => unknown, mostMs: number, warmCpuMs = WARM_CPU_MS): Measured {
  const begin = performance.now();
  const warming = process.cpuUsage();
  const warmedMs = (): number => {
    const { user, system } = process.cpuUsage(warming);
    return (user + system) / 1000;
  };
  let calls = 0;
  do {
    call();
    calls += 1;
  } while ((calls < WARM_CALLS || warmedMs() < warmCpuMs) && performance.now() - begin < mostMs / 3);
  const repeats = Math.max(1, Math.ceil((SAMPLE_MS * calls) / warmedMs()));
  const walls: number[] = [];
  const cpus: number[] = [];
  while (walls.length < SAMPLES && (walls.length === 0 || performance.now() - begin < mostMs)) {
    const cpu = process.cpuUsage();
    const start = performance.now();
    for (let count = 0; count < repeats; count += 1) call();
    walls.push((performance.now() - start) / repeats);
    const { user, system } = process.cpuUsage(cpu);
    cpus.push((user + system) / 1000 / repeats);
  }
  return { medianMs: median(walls), bestMs: Math.min(...walls), cpuMs: median(cpus), samples: walls.length };
}

/** Exponent of growth: slope of the least-squares line through log time on log size. */
export function growth(points: readonly { readonly size: number; readonly ms: number }[]): number {
  const logs = points.map(({ size, ms }) => ({ x: Math.log(size), y: Math.log(ms) }));
  const mean = (pick: (log: { x: number; y: number }) => number): number =>
    logs.reduce((sum, log) => sum + pick(log), 0) / logs.length;
  const [x, y] = [mean((log) => log.x), mean((log) => log.y)];
  return mean((log) => (log.x - x) * (log.y - y)) / mean((log) => (log.x - x) ** 2);
}
