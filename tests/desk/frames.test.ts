import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { pageFrames } from '../../src/desk/frames.ts';

/** What the page has asked for, by the browser's own frames. */
let asked: (() => void)[] = [];
let done: string[] = [];

beforeEach(() => {
  [asked, done] = [[], []];
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => asked.push(run));
});
afterEach(() => {
  // nothing is left for the frames of the next test
  while (asked.length > 0) frame();
  vi.unstubAllGlobals();
});

function frame(): void {
  const due = asked;
  asked = [];
  for (const run of due) run();
}

const note = (name: string) => () => void done.push(name);

describe('jobs that wait for a frame', () => {
  it('are done in one, in the order of asking', () => {
    for (const name of ['one', 'two', 'three']) pageFrames(note(name));
    expect(done).toEqual([]);
    expect(asked).toHaveLength(1);
    frame();
    expect(done).toEqual(['one', 'two', 'three']);
    frame();
    expect(done).toEqual(['one', 'two', 'three']);
  });

  it('are done as often as they were asked for, though they are the same', () => {
    const job = note('same');
    pageFrames(job);
    const callOff = pageFrames(job);
    pageFrames(job);
    callOff();
    frame();
    expect(done).toEqual(['same', 'same']);
  });

  it('are left out when they are called off, and calling off again does nothing', () => {
    const callOff = pageFrames(note('one'));
    pageFrames(note('two'));
    callOff();
    callOff();
    frame();
    callOff();
    expect(done).toEqual(['two']);
  });

  it('are done once where all before them were called off', () => {
    pageFrames(note('one'))();
    pageFrames(note('two'));
    frame();
    frame();
    expect(done).toEqual(['two']);
  });

  it('are left out too when a job of the same frame calls them off', () => {
    let callOff = () => {};
    pageFrames(() => callOff());
    callOff = pageFrames(note('late'));
    pageFrames(note('last'));
    frame();
    frame();
    expect(done).toEqual(['last']);
  });

  it('that a job asks for come with the next frame, before what is asked for after it', () => {
    pageFrames(() => {
      done.push('first');
      pageFrames(note('next'));
    });
    pageFrames(note('second'));
    frame();
    expect(done).toEqual(['first', 'second']);
    pageFrames(note('later'));
    expect(asked).toHaveLength(1);
    frame();
    expect(done).toEqual(['first', 'second', 'next', 'later']);
  });

  it('are done though one before them fails, which is reported', () => {
    const reported: unknown[] = [];
    vi.stubGlobal('reportError', (error: unknown) => reported.push(error));
    const fault = new Error('made up');
    pageFrames(() => {
      throw fault;
    });
    pageFrames(note('after'));
    frame();
    expect(done).toEqual(['after']);
    expect(reported).toEqual([fault]);
  });
});
