/**
 * Answers the drafts of a gesture beside the page. An assessment of a large plan takes longer than a frame: the sketch
 * follows the finger with every frame, the answer as soon as it is worked out.
 */
import type { Assessment } from '../assess/answer.ts';
import { type Packed, unpacked } from '../assess/packed.ts';
import { changeFrom, type PlanChange } from '../plan/change.ts';
import type { Plan } from '../plan/schema.ts';
import { answerOf, assessNow, keepAnswer } from './answer.ts';
import type { Desk } from './desk.ts';
import { wholePlan } from './whole.ts';

/** To the worker: the plan of which changes will be told, or one of them, whose answer is asked for. */
export type Asked = { readonly plan: Plan } | { readonly change: PlanChange };

/** The part of a Worker that is used. It answers in the order in which it is asked. */
export interface Assistant {
  postMessage(asked: Asked): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Packed>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** So long no answer has come while the finger moved on: what is shown is marked as behind, ms. */
export const BEHIND_MS = 250;

/** While a finger moves answers come no faster than this, ms: figures that change oftener cannot be read. */
const PACE_MS = 200;

/** And, where answers take long, no faster than so many times what the last one took: it rests in between. */
const TIMES_TAKEN = 1.5;

/** One that has rested so long is answered at once, ms: */
const REST_MS = 50;

/** that is looked at so often, ms; each look takes time from the finger. */
const LOOK_MS = 100;

/**
 * An answer waits for the next draft, to be drawn together with it and not in a frame of its own: half as long again as
 * the two drafts before were apart, ms, within these bounds.
 */
export const TOGETHER = { leastMs: 40, mostMs: 160 } as const;
const LONGER = 1.5;

/** A draft that comes sooner after it than this takes it not along: to hear of it was enough for one frame, ms. */
const APART_MS = 12;

/** The hand has been still so long: the plan is told before the next gesture needs to, ms. */
const STILL_MS = 300;

export class Answering {
  /** What the worker holds. */
  #base: Plan | null = null;
  /** The draft that was asked about last, and of which gesture it is. */
  #asked: { readonly draft: Plan; readonly gesture: number } | null = null;
  /** Its answer has not come yet. */
  #isAsking = false;
  /** When it was asked for, and how long the last answer took, ms. */
  #askedAtMs = 0;
  #tookMs = 0;
  /** A draft whose answer has come and is not shown yet, and until when. */
  #waiting: Plan | null = null;
  #heardAtMs = 0;
  #soon: ReturnType<typeof setTimeout> | undefined;
  /** When the last draft of the gesture came, and how long after the one before. */
  #cameAtMs: number | null = null;
  #apartMs = 0;
  /** Gestures that have ended: an answer to one of them is kept, and not shown. */
  #gesture = 0;
  /** The answer before, of which parts that read the same are kept. */
  #last: Assessment | null = null;
  #patience: ReturnType<typeof setTimeout> | undefined;
  /** Until the next question may be asked. */
  #pause: ReturnType<typeof setTimeout> | undefined;
  #still: ReturnType<typeof setTimeout> | undefined;
  readonly #leave: () => void;

  constructor(
    private readonly desk: Desk,
    private readonly assistant: Assistant,
  ) {
    assistant.onmessage = ({ data }) => this.#hear(data);
    // without it the page works out each draft by itself, and says there what is wrong
    assistant.onerror = () => this.stop();
    this.#leave = desk.subscribe((state, before) => {
      if (state.draft !== before.draft) this.#follow();
      if (state.plan !== before.plan || state.proposal !== before.proposal) this.#tellWhenStill();
    });
    this.#tellWhenStill();
  }

  stop(): void {
    this.#leave();
    // what has been heard and not been shown yet is not shown any more: nobody would follow it up
    this.#gesture += 1;
    this.#callOffWaiting();
    this.#wait(false);
    clearTimeout(this.#pause);
    clearTimeout(this.#still);
    this.assistant.onmessage = null;
    this.assistant.terminate();
    this.desk.setState({ answered: null, isBehind: false });
  }

  /** A draft has come, or has gone. */
  #follow(): void {
    const state = this.desk.getState();
    if (state.draft === null) {
      this.#gesture += 1;
      this.#cameAtMs = null;
      this.#callOffWaiting();
      this.#wait(false);
      return;
    }
    const nowMs = Date.now();
    [this.#apartMs, this.#cameAtMs] = [nowMs - (this.#cameAtMs ?? nowMs), nowMs];
    // until the first answer, that of the plan before
    if (state.answered === null) this.desk.setState({ answered: wholePlan(state) });
    else if (nowMs - this.#heardAtMs >= APART_MS) this.#showWaiting();
    this.#askNewest();
    this.#followUp();
  }

  /** Waits for the answer to what is shown; back where the answer is of, there is nothing to wait for. */
  #followUp(): void {
    const { draft, answered, isBehind } = this.desk.getState();
    if (draft !== answered) {
      if (!isBehind) this.#wait(true);
      return;
    }
    this.#wait(false);
    if (isBehind) this.desk.setState({ isBehind: false });
  }

  /** Asks for what is shown now, once the question before is answered and the pause after it over. */
  #askNewest(): void {
    const { draft, answered } = this.desk.getState();
    if (draft === null || draft === answered || draft === this.#asked?.draft) return;
    if (this.#isAsking || this.#pause !== undefined) return;
    this.#ask(draft);
    this.#pauseAfterAsking();
  }

  /** Until the next question is due: looks now and then whether the finger rests, which costs less than to be told. */
  #pauseAfterAsking(): void {
    this.#pause = setTimeout(() => {
      const nowMs = Date.now();
      const paceMs = Math.max(PACE_MS, TIMES_TAKEN * this.#tookMs);
      const isDue = nowMs - this.#askedAtMs >= paceMs || nowMs - (this.#cameAtMs ?? 0) >= REST_MS;
      this.#pause = undefined;
      if (isDue) this.#askNewest();
      else this.#pauseAfterAsking();
    }, LOOK_MS);
  }

  #ask(draft: Plan): void {
    const base = this.#tellBase();
    this.#asked = { draft, gesture: this.#gesture };
    this.#isAsking = true;
    this.#askedAtMs = Date.now();
    this.assistant.postMessage({ change: changeFrom(base, draft) });
  }

  /** Tells the plan that drafts will be changes of, unless it has been told; answers it. */
  #tellBase(): Plan {
    const base = wholePlan(this.desk.getState());
    if (base !== this.#base) {
      this.assistant.postMessage({ plan: base });
      this.#base = base;
      this.#last = answerOf(base);
    }
    return base;
  }

  /** While the hand is still: to send a large plan takes longer than a frame, and so does its answer. */
  #tellWhenStill(): void {
    clearTimeout(this.#still);
    this.#still = setTimeout(() => {
      // a question that is still open is about the plan before
      if (this.desk.getState().draft === null && !this.#isAsking) this.#tellBase();
    }, STILL_MS);
  }

  #hear(packed: Packed): void {
    const asked = this.#asked;
    if (asked === null) return;
    this.#isAsking = false;
    this.#tookMs = Date.now() - this.#askedAtMs;
    const { draft, gesture } = asked;
    const answer = unpacked(packed, this.#last, () => assessNow(draft));
    this.#last = answer;
    keepAnswer(draft, answer);
    this.#askNewest();
    if (gesture === this.#gesture) this.#showSoon(draft);
  }

  /** With the next draft, if one is on its way. */
  #showSoon(draft: Plan): void {
    this.#callOffWaiting();
    [this.#waiting, this.#heardAtMs] = [draft, Date.now()];
    const waitMs = Math.max(TOGETHER.leastMs, Math.min(TOGETHER.mostMs, LONGER * this.#apartMs));
    this.#soon = setTimeout(() => this.#showWaiting(), waitMs);
  }

  #callOffWaiting(): void {
    clearTimeout(this.#soon);
    this.#waiting = null;
  }

  #showWaiting(): void {
    const draft = this.#waiting;
    this.#callOffWaiting();
    if (draft !== null) this.#show(draft);
  }

  #show(draft: Plan): void {
    const { draft: shown, answered, isBehind } = this.desk.getState();
    // the finger has come back to where the answer is of: that of another place would be behind it
    if (shown === answered) return;
    // an answer that came late is behind still, until one comes in time or the finger rests
    const wasLate = this.#patience === undefined;
    this.#wait(false);
    if (shown !== draft) this.#wait(true);
    this.desk.setState({ answered: draft, isBehind: isBehind && wasLate && shown !== draft });
  }

  /** Begins to wait for an answer, or ends it; a wait that is on already goes on. */
  #wait(isWaiting: boolean): void {
    if (!isWaiting) {
      clearTimeout(this.#patience);
      this.#patience = undefined;
      return;
    }
    this.#patience ??= setTimeout(() => {
      this.#patience = undefined;
      this.desk.setState({ isBehind: true });
    }, BEHIND_MS);
  }
}

/** Starts the worker; drafts are answered there from then on. */
export function answerDrafts(desk: Desk): Answering {
  return new Answering(desk, new Worker(new URL('./assess.worker.ts', import.meta.url), { type: 'module' }));
}
