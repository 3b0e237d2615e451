import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Agenda } from '../../src/desk/agenda.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** An agenda, and what of it has been done and when, ms from the beginning. */
function begun() {
  const agenda = new Agenda();
  const fromMs = Date.now();
  const done: [name: string, atMs: number][] = [];
  const set = (name: string, ms: number) => agenda.set(name, ms, () => done.push([name, Date.now() - fromMs]));
  return { agenda, done, set };
}

describe('an agenda', () => {
  it('does each thing once, at its time, in whatever order they were set', () => {
    const { done, set } = begun();
    set('late', 300);
    set('soon', 100);
    set('between', 200);
    vi.advanceTimersByTime(1_000);
    expect(done).toEqual([
      ['soon', 100],
      ['between', 200],
      ['late', 300],
    ]);
  });

  it('puts off, brings forward and calls off', () => {
    const { agenda, done, set } = begun();
    set('put off', 100);
    set('brought forward', 500);
    set('called off', 100);
    vi.advanceTimersByTime(50);
    set('put off', 100);
    set('brought forward', 10);
    agenda.callOff('called off');
    expect(['put off', 'called off'].map((name) => agenda.has(name))).toEqual([true, false]);
    vi.advanceTimersByTime(1_000);
    expect(done).toEqual([
      ['brought forward', 60],
      ['put off', 150],
    ]);
    expect(agenda.has('put off')).toBe(false);
  });

  it('lets what is done set itself again', () => {
    const { agenda } = begun();
    let rounds = 0;
    const again = () => {
      rounds += 1;
      if (rounds < 3) agenda.set('again', 100, again);
    };
    agenda.set('again', 100, again);
    vi.advanceTimersByTime(299);
    expect(rounds).toBe(2);
    vi.advanceTimersByTime(1_000);
    expect(rounds).toBe(3);
  });

  it('lets what is done call off what is due at the same time', () => {
    const { agenda, done, set } = begun();
    agenda.set('first', 100, () => agenda.callOff('second'));
    set('second', 100);
    vi.advanceTimersByTime(1_000);
    expect(done).toEqual([]);
  });

  it('takes one timer of the browser for things that are put off again and again, and none back', () => {
    const { set } = begun();
    const [timers, taken] = [vi.spyOn(globalThis, 'setTimeout'), vi.spyOn(globalThis, 'clearTimeout')];
    for (let ms = 0; ms < 90; ms += 10) {
      set('soon', 100);
      set('later', 200);
      vi.advanceTimersByTime(10);
    }
    expect(timers).toHaveBeenCalledTimes(1);
    expect(taken).not.toHaveBeenCalled();
  });

  it('that is cleared does nothing more', () => {
    const { agenda, done, set } = begun();
    set('soon', 100);
    agenda.clear();
    vi.advanceTimersByTime(1_000);
    expect([done, vi.getTimerCount()]).toEqual([[], 0]);
    set('anew', 100);
    vi.advanceTimersByTime(100);
    expect(done).toEqual([['anew', 1_100]]);
  });
});
