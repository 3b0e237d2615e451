/** Reads a browser's own trace: how long JavaScript ran from one move of the pointer to the next. */

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly ts: number;
  readonly dur?: number;
  readonly args?: { readonly name?: string; readonly data?: { readonly type?: string } };
}

/** What runs a script; they lie within one another, so only their union counts. */
const SCRIPT = new Set(['FunctionCall', 'EventDispatch', 'TimerFire', 'FireAnimationFrame', 'RunMicrotasks']);

function isTrace(data: unknown): data is { traceEvents: TraceEvent[] } {
  return typeof data === 'object' && data !== null && 'traceEvents' in data && Array.isArray(data.traceEvents);
}

/** Script time between moves, ms, one figure a move; the last move, of which the end is not seen, is left out. */
export function framesOf(text: string): number[] {
  const trace: unknown = JSON.parse(text);
  if (!isTrace(trace)) throw new Error('That is no trace.');
  const { traceEvents } = trace;
  const moves = traceEvents
    .filter(({ name, args }) => name === 'EventDispatch' && args?.data?.type === 'pointermove')
    .sort((one, other) => one.ts - other.ts);
  const [first] = moves;
  if (first === undefined) throw new Error('The trace holds no move of the pointer.');
  const scripts = traceEvents
    .filter(({ name, ph, pid, tid }) => ph === 'X' && SCRIPT.has(name) && pid === first.pid && tid === first.tid)
    .sort((one, other) => one.ts - other.ts);
  return moves.slice(0, -1).map((move, index) => {
    const end = moves[index + 1]?.ts ?? Number.POSITIVE_INFINITY;
    let [spentUs, until] = [0, move.ts];
    for (const { ts, dur = 0 } of scripts) {
      if (ts < move.ts || ts >= end) continue;
      const from = Math.max(ts, until);
      const to = Math.min(ts + dur, end);
      if (to > from) spentUs += to - from;
      until = Math.max(until, to);
    }
    return spentUs / 1000;
  });
}
