/**
 * Reads a browser's own trace: how long JavaScript ran from one move of the pointer to the next. Time of its own thread:
 * what the rest of the machine does meanwhile is no part of it.
 */

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Microseconds. */
  readonly ts: number;
  readonly dur?: number;
  /** The same two by the clock of the thread, which stands still while it waits for a processor. */
  readonly tts?: number;
  readonly tdur?: number;
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
    let [spentUs, until] = [0, 0];
    for (const { ts, tts = 0, tdur = 0 } of scripts) {
      if (ts < move.ts || ts >= end) continue;
      const from = Math.max(tts, until);
      spentUs += Math.max(0, tts + tdur - from);
      until = Math.max(until, tts + tdur);
    }
    return spentUs / 1000;
  });
}
