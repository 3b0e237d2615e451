import fc from 'fast-check';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { answerOf, loadAssess } from '../../src/desk/answer.ts';
import { Answering, BEHIND_MS, TOGETHER } from '../../src/desk/answering.ts';
import { answeredPlan, createDesk, type Desk, shownPlan } from '../../src/desk/desk.ts';
import {
  beginGesture,
  cancelGesture,
  commit,
  commitGesture,
  draftGesture,
  openOnDesk,
  redo,
  undo,
} from '../../src/desk/edit.ts';
import { nameProposedBy, proposeFeed } from '../../src/desk/proposing.ts';
import { wholePlan } from '../../src/desk/whole.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeRun } from '../../src/plan/edits/removeRun.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { emptyVan, vanWithFeed } from './plans.ts';
import { BESIDE, BESIDE_A, FakeAssistant } from './support/fakeAssistant.ts';

beforeAll(loadAssess);
beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A desk with someone beside it. */
class Bench {
  readonly desk: Desk;
  readonly assistant = new FakeAssistant();
  readonly answering: Answering;

  constructor(plan: Plan = vanWithFeed(), isExample = false) {
    this.desk = createDesk(plan, { isExample, bigFingers: false });
    this.answering = new Answering(this.desk, this.assistant);
  }

  get state() {
    return this.desk.getState();
  }

  /** The plan whose answer is shown, and that answer. */
  get answered(): Plan {
    return answeredPlan(this.state);
  }

  get answer(): Assessment {
    return answerOf(this.answered);
  }

  begin(): void {
    beginGesture(this.desk, 'move');
  }

  /** The finger holds the amplifier there, m from the nose; answers the draft. */
  drag(xM: number): Plan {
    draftGesture(this.desk, (plan) => moveFitting(plan, 'amp', { xM, yM: 1 }));
    return shownPlan(this.state);
  }

  /** So long that an answer that has come is shown, though no draft comes any more. */
  frame(): void {
    this.wait(TOGETHER.mostMs);
  }

  /** The oldest question is answered, and shown while the finger rests. */
  reply(): void {
    this.assistant.reply();
    this.frame();
  }

  /** Time goes by; whatever the assistant is asked meanwhile it leaves for later. */
  wait(ms: number): void {
    vi.advanceTimersByTime(ms);
  }

  /** Everything is answered, as it is when the finger rests for long. */
  settle(): void {
    for (let round = 0; round < 20; round += 1) {
      this.reply();
      this.wait(100);
    }
  }
}

const ampAt = (plan: Plan) => plan.fittings.find(({ id }) => id === 'amp')?.at.xM;
const asked = ({ assistant }: Bench) => assistant.asked.map(ampAt);

describe('the draft of a gesture', () => {
  it('is shown with the answer to the plan until its own has come, and then with that', () => {
    const bench = new Bench();
    const before = answerOf(bench.state.plan);
    bench.begin();
    const draft = bench.drag(3);
    expect(shownPlan(bench.state)).toBe(draft);
    expect(bench.answered).toBe(bench.state.plan);
    expect(bench.answer).toBe(before);

    bench.reply();
    expect(bench.answered).toBe(draft);
    expect(bench.answer.planId).toBe(BESIDE);
    expect(bench.answer.runs[0]?.length.lengthM).toBe(assess(draft).runs[0]?.length.lengthM);
    expect(bench.answer.runs[0]?.length.lengthM).not.toBe(before.runs[0]?.length.lengthM);
  });

  it('is shown with its answer when the next draft is, or a little later', () => {
    const bench = new Bench();
    bench.begin();
    const first = bench.drag(3);
    bench.assistant.reply();
    bench.wait(TOGETHER.leastMs - 1);
    expect(bench.answered).toBe(bench.state.plan);
    bench.wait(1);
    expect(bench.answered).toBe(first);

    bench.wait(200);
    // the finger has rested, and all of it was asked for
    bench.assistant.reply();
    const second = bench.drag(2.9);
    bench.assistant.reply();
    // one that comes at once does not take it along: to hear of it was enough for one frame
    const next = bench.drag(2.85);
    expect(bench.answered).toBe(first);
    expect(shownPlan(bench.state)).toBe(next);
    bench.wait(16);
    expect(bench.answered).toBe(first);
    const sets: number[] = [];
    bench.desk.subscribe(({ draft }) => sets.push(ampAt(draft ?? bench.state.plan) ?? 0));
    const third = bench.drag(2.8);
    expect(bench.answered).toBe(second);
    expect(shownPlan(bench.state)).toBe(third);
    // within the very change that brings the draft: what is drawn for the one is drawn for both
    expect(new Set(sets)).toEqual(new Set([2.8]));
    bench.settle();
    expect(bench.answered).toBe(third);
  });

  it('waits longer for the next draft of a slower finger, and not for ever', () => {
    const shownAfterMs = (apartMs: number): number => {
      const bench = new Bench();
      bench.begin();
      bench.drag(3);
      bench.settle();
      bench.wait(1_000);
      const draft = bench.drag(2.9);
      bench.wait(apartMs);
      bench.drag(2.8);
      bench.assistant.reply();
      let waitedMs = 0;
      while (bench.answered !== draft && waitedMs < 1_000) {
        bench.wait(1);
        waitedMs += 1;
      }
      bench.answering.stop();
      return waitedMs;
    };
    expect(shownAfterMs(16)).toBe(40);
    expect(shownAfterMs(80)).toBe(120);
    expect(shownAfterMs(140)).toBe(160);
  });

  it('is asked about one at a time, the newest next: those between are left out', () => {
    const bench = new Bench();
    bench.begin();
    for (const xM of [3.4, 3.3, 3.2, 3.1]) bench.drag(xM);
    expect(asked(bench)).toEqual([3.4]);
    bench.wait(200);
    expect(asked(bench)).toEqual([3.4]);
    bench.reply();
    bench.wait(200);
    expect(asked(bench)).toEqual([3.4, 3.1]);
    bench.drag(3);
    bench.drag(2.9);
    bench.settle();
    expect(asked(bench)).toEqual([3.4, 3.1, 2.9]);
    expect(ampAt(bench.answered)).toBe(2.9);
  });

  it('is asked about once, however long the finger rests and however late its frame is', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.wait(200);
    bench.assistant.reply();
    bench.wait(200);
    bench.frame();
    bench.settle();
    expect(asked(bench)).toEqual([3]);
    expect(bench.state.isBehind).toBe(false);
  });

  it('is asked about five times a second while the finger moves, and at once when it rests', () => {
    const bench = new Bench();
    bench.begin();
    const askedAtMs: number[] = [];
    for (let ms = 0; ms < 2_000; ms += 16) {
      const before = asked(bench).length;
      bench.drag(3 - ms / 2_000);
      bench.assistant.reply();
      bench.wait(16);
      if (asked(bench).length > before) askedAtMs.push(ms);
    }
    const apart = askedAtMs.slice(1).map((ms, place) => ms - (askedAtMs[place] ?? 0));
    expect(Math.min(...apart)).toBeGreaterThanOrEqual(190);
    expect(Math.max(...apart)).toBeLessThanOrEqual(260);

    // it stops right after a question
    let xM = 2;
    for (let count = asked(bench).length; asked(bench).length === count; bench.wait(16)) {
      xM -= 0.01;
      bench.drag(xM);
      bench.assistant.reply();
    }
    const last = bench.drag(xM - 0.01);
    bench.assistant.reply();
    bench.wait(110);
    expect(asked(bench).at(-1)).toBe(ampAt(last));
  });

  it('is asked about more seldom where an answer takes long', () => {
    const bench = new Bench();
    bench.begin();
    const askedAtMs: number[] = [];
    for (let ms = 0; ms < 4_000; ms += 16) {
      const before = asked(bench).length;
      bench.drag(3 - ms / 4_000);
      if (ms - (askedAtMs.at(-1) ?? 0) >= 300) bench.assistant.reply();
      bench.wait(16);
      if (asked(bench).length > before) askedAtMs.push(ms);
    }
    const apart = askedAtMs.slice(1).map((ms, place) => ms - (askedAtMs[place] ?? 0));
    expect(Math.min(...apart.slice(1))).toBeGreaterThanOrEqual(440);
    expect(Math.max(...apart)).toBeLessThanOrEqual(560);
  });

  it('is answered where a proposal lies on the desk, with what is proposed', async () => {
    vi.useRealTimers();
    const bench = new Bench();
    nameProposedBy(bench.desk, (kind) => kind);
    commit(bench.desk, 'removeRun', (plan) => removeRun(plan, 'feed'));
    await proposeFeed(bench.desk);
    const whole = wholePlan(bench.state);
    expect(whole.runs.length).toBeGreaterThan(0);
    vi.useFakeTimers();
    bench.begin();
    const draft = bench.drag(3);
    expect(bench.answered).toBe(whole);
    bench.reply();
    expect(bench.answered).toBe(draft);
    expect(bench.answer.runs.map(({ runId }) => runId)).toEqual(draft.runs.map(({ id }) => id));
    bench.answering.stop();
  });
});

describe('the plan of which drafts are changes', () => {
  it('is told while the hand is still, and not again by the gesture', () => {
    const bench = new Bench();
    const { bases } = bench.assistant;
    expect(bases).toEqual([]);
    bench.wait(400);
    expect(bases).toEqual([bench.state.plan]);
    commit(bench.desk, 'rename', (plan) => renamePlan(plan, 'Other'));
    bench.wait(400);
    expect(bases.map(({ name }) => name)).toEqual(['Van', 'Other']);
    bench.begin();
    bench.drag(3);
    bench.settle();
    expect(bases).toHaveLength(2);
  });

  it('is told by the gesture that comes too soon, and never while a question is open', () => {
    const bench = new Bench();
    const { bases } = bench.assistant;
    bench.begin();
    bench.drag(3);
    expect(bases).toHaveLength(1);
    commitGesture(bench.desk);
    bench.wait(1000);
    expect(bases).toHaveLength(1);
    bench.reply();
    bench.begin();
    const draft = bench.drag(2.9);
    expect(bases).toHaveLength(2);
    bench.reply();
    expect(bench.answered).toBe(draft);
    expect({ ...bench.answer, planId: draft.id }).toEqual(assess(draft));
  });
});

describe('an answer that comes when its gesture has ended', () => {
  const ENDS: [how: string, end: (bench: Bench) => void][] = [
    ['committed', ({ desk }) => commitGesture(desk)],
    ['cancelled', ({ desk }) => cancelGesture(desk)],
    ['undone', ({ desk }) => undo(desk)],
    ['dropped by another act', ({ desk }) => commit(desk, 'rename', (plan) => renamePlan(plan, 'Other'))],
    ['dropped by another plan', ({ desk }) => openOnDesk(desk, emptyVan(), { isExample: false })],
  ];

  it.each(ENDS)('is not shown: %s', (_, end) => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    end(bench);
    const { plan } = bench.state;
    const answer = answerOf(plan);
    for (const happens of [() => bench.assistant.reply(), () => bench.frame(), () => bench.wait(1000)]) {
      happens();
      expect(bench.state).toMatchObject({ draft: null, answered: null, isBehind: false });
      expect(bench.answered).toBe(plan);
      expect(bench.answer).toBe(answer);
    }
  });

  it.each(ENDS)('is not shown in its last frame either: %s', (_, end) => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.assistant.reply();
    end(bench);
    bench.frame();
    expect(bench.state).toMatchObject({ draft: null, answered: null, isBehind: false });
    expect(bench.answered).toBe(bench.state.plan);
  });

  it.each(ENDS)('is not shown by the gesture after it, which is answered for itself: %s', (_, end) => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    end(bench);
    const { plan } = bench.state;
    bench.begin();
    const draft = draftAnother(bench);
    expect(bench.answered).toBe(plan);
    // the answer to the old one, then that to the new one
    bench.reply();
    expect(bench.answered).toBe(plan);
    bench.wait(200);
    bench.reply();
    expect(bench.answered).toBe(draft);
    expect({ ...bench.answer, planId: draft.id }).toEqual(assess(draft));
  });

  /** Also on an empty plan there is something to hold. */
  function draftAnother({ desk }: Bench): Plan {
    draftGesture(desk, (plan) => ({ ...moveFitting(plan, 'battery', { xM: 0.6, yM: 0.9 }), name: 'Held' }));
    return shownPlan(desk.getState());
  }
});

describe('a gesture that is committed', () => {
  it('with its draft answered leaves that answer to the plan: it is not worked out again', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.reply();
    const shown = bench.answer;
    commitGesture(bench.desk);
    expect(answerOf(bench.state.plan)).toBe(shown);
    expect(shown.planId).toBe(BESIDE);
  });

  it('before its draft is answered has the answer at once all the same', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    commitGesture(bench.desk);
    const { plan } = bench.state;
    expect(answerOf(plan)).toEqual(assess(plan));
    // what comes later does not take its place
    bench.reply();
    expect(answerOf(plan).planId).toBe(plan.id);
  });

  it('on the example has an answer under the id of the copy', () => {
    const bench = new Bench(vanWithFeed(), true);
    bench.begin();
    bench.drag(3);
    bench.reply();
    commitGesture(bench.desk);
    const { plan } = bench.state;
    expect(plan.id).not.toBe(vanWithFeed().id);
    expect(answerOf(plan)).toEqual(assess(plan));
  });
});

describe('an assistant that fails', () => {
  it.each<[string, (bench: Bench) => void]>([
    ['before it has answered', () => undefined],
    ['with an answer that waits for its frame', (bench) => bench.assistant.reply()],
    ['with an answer shown', (bench) => bench.reply()],
    [
      'while it is behind',
      (bench) => {
        bench.wait(BEHIND_MS);
        bench.drag(2.8);
      },
    ],
  ])('leaves the drafts to the page: %s', (_, before) => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    before(bench);
    bench.assistant.fail();
    expect(bench.assistant.isEnded).toBe(true);
    for (const xM of [2.6, 2.4]) {
      bench.frame();
      bench.wait(1000);
      expect(bench.answered).toBe(shownPlan(bench.state));
      const draft = bench.drag(xM);
      expect(bench.answered).toBe(draft);
      expect(bench.answer).toEqual(assess(draft));
      expect(bench.state.isBehind).toBe(false);
    }
    commitGesture(bench.desk);
    expect(bench.answer).toEqual(assess(bench.state.plan));
  });

  it('is not heard any more', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.assistant.fail();
    const draft = bench.drag(2.6);
    // a message that was under way when it failed
    bench.assistant.reply();
    bench.frame();
    bench.wait(1000);
    expect(bench.answered).toBe(draft);
    expect(bench.state).toMatchObject({ answered: null, isBehind: false });
  });
});

describe('what is shown', () => {
  /** The finger moves on with every frame for so long; each question is answered so long after it was asked. */
  function dragFor(bench: Bench, forMs: number, answersInMs: number): boolean[] {
    const behind: boolean[] = [];
    let [dueMs, xM] = [Number.POSITIVE_INFINITY, 3.4];
    for (let nowMs = 0; nowMs < forMs; nowMs += 16) {
      xM -= 0.001;
      bench.drag(xM);
      if (bench.assistant.waiting.length === 0) dueMs = Number.POSITIVE_INFINITY;
      else if (dueMs === Number.POSITIVE_INFINITY) dueMs = nowMs + answersInMs;
      if (nowMs >= dueMs) {
        bench.assistant.reply();
        dueMs = Number.POSITIVE_INFINITY;
      }
      behind.push(bench.state.isBehind);
      bench.wait(16);
    }
    return behind;
  }

  it('is behind once no answer has come for a quarter of a second, and not before', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.wait(BEHIND_MS - 1);
    expect(bench.state.isBehind).toBe(false);
    bench.wait(1);
    expect(BEHIND_MS).toBe(250);
    expect(bench.state.isBehind).toBe(true);
  });

  it('is behind no more when the answer comes to a finger that rests', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.wait(2000);
    expect(bench.state.isBehind).toBe(true);
    bench.reply();
    expect(bench.state.isBehind).toBe(false);
    bench.wait(2000);
    expect(bench.state.isBehind).toBe(false);
  });

  it('is never behind while answers come in time, however long the drag', () => {
    const bench = new Bench();
    bench.begin();
    expect(dragFor(bench, 3000, 100)).not.toContain(true);
  });

  it('stays behind while every answer comes late, and does not flicker', () => {
    const bench = new Bench();
    bench.begin();
    const behind = dragFor(bench, 3000, 400);
    const since = behind.indexOf(true);
    expect(since * 16).toBeGreaterThanOrEqual(BEHIND_MS - 16);
    expect(since * 16).toBeLessThan(BEHIND_MS + 48);
    expect(behind.slice(since)).not.toContain(false);
  });

  it('is behind no more once answers come in time again', () => {
    const bench = new Bench();
    bench.begin();
    expect(dragFor(bench, 1000, 400).at(-1)).toBe(true);
    const after = dragFor(bench, 1500, 50);
    expect(after.at(-1)).toBe(false);
    expect(after.lastIndexOf(true) * 16).toBeLessThan(700);
  });

  it('is not behind where the finger holds a thing where it was', () => {
    const bench = new Bench();
    bench.begin();
    expect(bench.drag(3.5)).toBe(bench.state.plan);
    bench.wait(2000);
    expect(bench.state.isBehind).toBe(false);
    // away, and back
    bench.drag(3);
    bench.reply();
    bench.wait(200);
    bench.drag(3.5);
    bench.settle();
    bench.wait(2000);
    expect(bench.answered).toBe(bench.state.plan);
    expect(bench.state.isBehind).toBe(false);
  });

  it.each<[string, (desk: Desk) => void]>([
    ['committed', commitGesture],
    ['cancelled', cancelGesture],
    ['begun anew', (desk) => beginGesture(desk, 'move')],
    ['dropped by another plan', (desk) => openOnDesk(desk, emptyVan(), { isExample: false })],
  ])('is not behind after the gesture: %s', (_, end) => {
    for (const heldMs of [100, 1000]) {
      const bench = new Bench();
      bench.begin();
      bench.drag(3);
      bench.wait(heldMs);
      expect(bench.state.isBehind).toBe(heldMs > BEHIND_MS);
      end(bench.desk);
      expect(bench.state.isBehind).toBe(false);
      bench.wait(1000);
      expect(bench.state.isBehind).toBe(false);
    }
  });
});

describe('the tables of an answer', () => {
  /** Whether they were handed in, and not worked out when they were read. */
  const areHandedIn = (answer: Assessment) => answer.supply.meanOffA === BESIDE_A;

  it('come when the finger rests, once', () => {
    const bench = new Bench();
    const { plan } = bench.state;
    bench.begin();
    const draft = bench.drag(3);
    expect(bench.state.inFull).toBe(plan);
    bench.reply();
    expect(bench.answered).toBe(draft);
    expect([bench.assistant.tablesAsked, bench.state.inFull]).toEqual([1, plan]);
    bench.assistant.reply();
    expect(bench.state.inFull).toBe(draft);
    expect(areHandedIn(bench.answer)).toBe(true);
    const { runs, fuses, amplifiers, shorts } = assess(draft);
    expect(bench.answer).toMatchObject({ runs, fuses, amplifiers, shorts });
    bench.settle();
    expect(bench.assistant.tablesAsked).toBe(1);
    expect(asked(bench)).toEqual([3]);
  });

  it('are not asked for while it moves, and are right for whoever reads them all the same', () => {
    const bench = new Bench();
    bench.begin();
    for (let ms = 0; ms < 2_000; ms += 16) {
      bench.drag(3 - ms / 2_000);
      bench.assistant.reply();
      bench.wait(16);
    }
    expect(asked(bench).length).toBeGreaterThan(5);
    expect([bench.assistant.tablesAsked, bench.state.inFull]).toEqual([0, bench.state.plan]);
    expect(areHandedIn(bench.answer)).toBe(false);
    expect(bench.answer.runs).toEqual(assess(bench.answered).runs);
    expect(bench.answer.supply).toEqual(assess(bench.answered).supply);
    bench.settle();
    expect(bench.assistant.tablesAsked).toBe(1);
    expect(bench.state.inFull).toBe(shownPlan(bench.state));
  });

  it('of where it rested before are known until it rests again', () => {
    const bench = new Bench();
    bench.begin();
    const rested = bench.drag(3);
    bench.settle();
    bench.drag(2.9);
    expect(bench.state.inFull).toBe(rested);
    bench.reply();
    expect(bench.state.inFull).toBe(rested);
    bench.settle();
    expect(ampAt(bench.state.inFull ?? rested)).toBe(2.9);
  });

  it('that come after the finger has lifted are those of the plan that it left', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.reply();
    commitGesture(bench.desk);
    expect(bench.assistant.tablesAsked).toBe(1);
    bench.assistant.reply();
    expect(bench.state.inFull).toBeNull();
    expect(areHandedIn(bench.answer)).toBe(true);
  });

  it('of a gesture that was dropped are not shown', () => {
    const bench = new Bench();
    bench.begin();
    bench.drag(3);
    bench.reply();
    cancelGesture(bench.desk);
    bench.assistant.reply();
    expect(bench.state.inFull).toBeNull();
    bench.begin();
    bench.drag(2.9);
    expect(bench.state.inFull).toBe(bench.state.plan);
  });
});

describe('in whatever order things happen', () => {
  type Step =
    | { do: 'begin' | 'reply' | 'frame' | 'commit' | 'cancel' | 'undo' | 'redo' | 'rename' | 'open' }
    | { do: 'drag'; xM: number }
    | { do: 'wait'; ms: number };

  const step: fc.Arbitrary<Step> = fc.oneof(
    {
      weight: 6,
      arbitrary: fc.integer({ min: 0, max: 10 }).map((tenth): Step => ({ do: 'drag', xM: 3 + tenth / 10 })),
    },
    { weight: 3, arbitrary: fc.constantFrom<Step>({ do: 'begin' }, { do: 'commit' }) },
    { weight: 6, arbitrary: fc.constantFrom<Step>({ do: 'reply' }, { do: 'frame' }) },
    { weight: 3, arbitrary: fc.constantFrom(10, 90, 300).map((ms): Step => ({ do: 'wait', ms })) },
    {
      weight: 2,
      arbitrary: fc.constantFrom<Step>(
        { do: 'cancel' },
        { do: 'undo' },
        { do: 'redo' },
        { do: 'rename' },
        { do: 'open' },
      ),
    },
  );

  /** All but the derivations and what the assistant makes up: the id of the plan, a figure of its supply. */
  const plain = ({ whys: _, planId: _id, supply: _supply, ...answer }: Assessment) => answer;

  /** Without what may still have to be worked out. */
  const inBrief = ({ headline, notTold, figures, findings, sources, zones }: ReturnType<typeof plain>) => ({
    headline,
    notTold,
    figures,
    findings,
    sources,
    zones,
  });

  /** Answers of the page's own, by what the plan holds. */
  const right = new Map<string, ReturnType<typeof plain>>();
  function rightAnswer(plan: Plan): ReturnType<typeof plain> {
    const key = savePlan(plan);
    const answer = right.get(key) ?? plain(assess(plan));
    right.set(key, answer);
    return answer;
  }

  const DO: Readonly<Record<Exclude<Step['do'], 'drag' | 'wait'>, (bench: Bench) => unknown>> = {
    begin: (bench) => bench.begin(),
    reply: (bench) => bench.assistant.reply(),
    frame: (bench) => bench.frame(),
    commit: ({ desk }) => commitGesture(desk),
    cancel: ({ desk }) => cancelGesture(desk),
    undo: ({ desk }) => undo(desk),
    redo: ({ desk }) => redo(desk),
    rename: ({ desk }) => commit(desk, 'rename', (plan) => renamePlan(plan, `${plan.name.slice(0, 20)}+`)),
    open: ({ desk }) =>
      openOnDesk(desk, moveFitting(vanWithFeed(), 'battery', { xM: 0.7, yM: 1 }), { isExample: false }),
  };

  function take(bench: Bench, happens: Step): void {
    if (happens.do === 'wait') bench.wait(happens.ms);
    else if (happens.do === 'drag') bench.drag(happens.xM);
    else DO[happens.do](bench);
  }

  it('the answer is that of the plan it is shown for, which is a draft of this gesture, or the plan', {
    timeout: 600_000,
  }, () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60, size: 'max' }), fc.boolean(), (steps, isExample) => {
        const bench = new Bench(vanWithFeed(), isExample);
        /** Of the gesture under way, in order; the plan first. */
        let drafts: Plan[] = [];
        let shownSoFar = 0;
        let [compared, comparedInFull]: [Plan | null, Plan | null] = [null, null];
        for (const happens of [{ do: 'begin' } as const, ...steps]) {
          const plansBefore = bench.state.plan;
          take(bench, happens);
          const { draft, plan, answered, inFull, isBehind } = bench.state;
          if (draft === null || happens.do === 'begin' || plan !== plansBefore) [drafts, shownSoFar] = [[plan], 0];
          if (draft !== null && drafts.at(-1) !== draft) drafts.push(draft);

          if (bench.answered !== compared)
            expect(inBrief(plain(bench.answer))).toEqual(inBrief(rightAnswer(bench.answered)));
          compared = bench.answered;
          if (inFull !== null && inFull !== comparedInFull)
            expect(plain(answerOf(inFull))).toEqual(rightAnswer(inFull));
          comparedInFull = inFull;
          expect(bench.assistant.waiting.length).toBeLessThanOrEqual(1);
          if (draft === null) {
            expect([answered, inFull, isBehind, bench.answered === plan]).toEqual([null, null, false, true]);
            continue;
          }
          // never one of another gesture, and never one older than was shown already
          const place = drafts.lastIndexOf(bench.answered);
          expect(place).toBeGreaterThanOrEqual(shownSoFar);
          shownSoFar = drafts.indexOf(bench.answered);
          if (isBehind) expect(bench.answered === draft).toBe(false);
        }
        bench.settle();
        expect(bench.answered).toBe(shownPlan(bench.state));
        expect(bench.state.isBehind).toBe(false);
        if (bench.state.draft !== null) expect(bench.state.inFull).toBe(bench.answered);
        commitGesture(bench.desk);
        const { supply, planId, ...answer } = assess(bench.state.plan);
        expect(bench.answer).toMatchObject(answer);
        bench.answering.stop();
      }),
      { numRuns: process.env.FEEDRUN_LONG === undefined ? 100 : 3000, seed: 20261126 },
    );
  });
});
