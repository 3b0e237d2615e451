/**
 * Answers the drafts of a gesture beside the page. An assessment of a large plan takes longer than a frame: the sketch
 * follows the finger with every frame, the answer as soon as it is worked out.
 */
import type { Assessment } from '../assess/answer.ts';
import { type Packed, unpacked } from '../assess/packed.ts';
import { type Tables, tellTables } from '../assess/tables.ts';
import { changeFrom } from '../plan/change.ts';
import type { Plan } from '../plan/schema.ts';
import { Agenda } from './agenda.ts';
import { answerOf, assessNow, keepAnswer, loadAssess } from './answer.ts';
import type { Asked, Told } from './beside.ts';
import type { Desk } from './desk.ts';
import { wholePlan } from './whole.ts';

/** The part of a Worker that is used. It answers in the order in which it is asked. */
export interface Assistant {
  postMessage(asked: Asked): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Told>) => void) | null;
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

/** What has been asked for last, and of which gesture it is. */
interface Question {
  readonly draft: Plan;
  readonly gesture: number;
  readonly atMs: number;
  /** Its answer has come, and then its tables. */
  state: 'asked' | 'heard' | 'in full';
}

export class Answering {
  /** What the worker holds. */
  #base: Plan | null = null;
  #question: Question | null = null;
  /** What was asked for has not come yet. */
  #isAsking = false;
  /** How long the last answer took, ms. */
  #tookMs = 0;
  /** A draft whose answer has come and is not shown yet, and when that was. */
  #waiting: Plan | null = null;
  #heardAtMs = 0;
  /** When the last draft of the gesture came, and how long after the one before. */
  #cameAtMs: number | null = null;
  #apartMs = 0;
  /** Gestures that have ended: an answer to one of them is kept, and not shown. */
  #gesture = 0;
  /** The answer before, of which parts that read the same are kept. */
  #last: Assessment | null = null;
  readonly #agenda = new Agenda();
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
    this.#waiting = null;
    this.#agenda.clear();
    this.assistant.onmessage = null;
    this.assistant.terminate();
    this.desk.setState({ answered: null, inFull: null, isBehind: false });
  }

  /** A draft has come, or has gone. */
  #follow(): void {
    const state = this.desk.getState();
    if (state.draft === null) {
      this.#gesture += 1;
      this.#cameAtMs = null;
      this.#waiting = null;
      this.#wait(false);
      return;
    }
    const nowMs = Date.now();
    [this.#apartMs, this.#cameAtMs] = [nowMs - (this.#cameAtMs ?? nowMs), nowMs];
    // until the first answer, that of the plan before
    if (state.answered === null) this.desk.setState({ answered: wholePlan(state), inFull: wholePlan(state) });
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
    if (draft === null || this.#isAsking || this.#agenda.has('pause')) return;
    if (draft === this.#question?.draft) this.#askInFull(this.#question);
    else if (draft !== answered) this.#ask(draft);
  }

  /** Until the next question is due: looks now and then whether the finger rests, which costs less than to be told. */
  #pauseAfterAsking(): void {
    this.#agenda.set('pause', LOOK_MS, () => {
      const paceMs = Math.max(PACE_MS, TIMES_TAKEN * this.#tookMs);
      const isDue = Date.now() - (this.#question?.atMs ?? 0) >= paceMs || this.#isResting();
      if (isDue) this.#askNewest();
      else this.#pauseAfterAsking();
    });
  }

  #isResting(): boolean {
    return Date.now() - (this.#cameAtMs ?? 0) >= REST_MS;
  }

  #ask(draft: Plan): void {
    const base = this.#tellBase();
    this.#question = { draft, gesture: this.#gesture, atMs: Date.now(), state: 'asked' };
    this.#isAsking = true;
    this.assistant.postMessage({ change: changeFrom(base, draft) });
    this.#pauseAfterAsking();
  }

  /** What is read when the finger rests is asked for then. */
  #askInFull({ state }: Question): void {
    if (state !== 'heard') return;
    if (this.#isResting()) {
      this.#isAsking = true;
      this.assistant.postMessage('tables');
    } else this.#pauseAfterAsking();
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
    this.#agenda.set('still', STILL_MS, () => {
      // a question that is still open is about the plan before
      if (this.desk.getState().draft === null && !this.#isAsking) this.#tellBase();
    });
  }

  #hear(told: Told): void {
    const question = this.#question;
    if (question === null) return;
    this.#isAsking = false;
    if ('tables' in told) this.#hearTables(question, told.tables);
    else this.#hearAnswer(question, told.packed);
    this.#askNewest();
  }

  #hearAnswer(question: Question, packed: Packed): void {
    const { draft, gesture } = question;
    question.state = 'heard';
    this.#tookMs = Date.now() - question.atMs;
    const answer = unpacked(packed, this.#last, () => assessNow(draft));
    this.#last = answer;
    keepAnswer(draft, answer);
    if (gesture === this.#gesture) this.#showSoon(draft);
  }

  #hearTables(question: Question, tables: Tables): void {
    question.state = 'in full';
    tellTables(answerOf(question.draft), tables);
    if (question.gesture === this.#gesture) this.desk.setState({ inFull: question.draft });
  }

  /** With the next draft, if one is on its way. */
  #showSoon(draft: Plan): void {
    [this.#waiting, this.#heardAtMs] = [draft, Date.now()];
    const waitMs = Math.max(TOGETHER.leastMs, Math.min(TOGETHER.mostMs, LONGER * this.#apartMs));
    this.#agenda.set('show', waitMs, () => this.#showWaiting());
  }

  #showWaiting(): void {
    const draft = this.#waiting;
    this.#waiting = null;
    if (draft !== null) this.#show(draft);
  }

  #show(draft: Plan): void {
    const { draft: shown, answered, isBehind } = this.desk.getState();
    // the finger has come back to where the answer is of: that of another place would be behind it
    if (shown === answered) return;
    // an answer that came late is behind still, until one comes in time or the finger rests
    const wasLate = !this.#agenda.has('patience');
    this.#wait(false);
    if (shown !== draft) this.#wait(true);
    this.desk.setState({ answered: draft, isBehind: isBehind && wasLate && shown !== draft });
  }

  /** Begins to wait for an answer, or ends it; a wait that is on already goes on. */
  #wait(isWaiting: boolean): void {
    if (!isWaiting) this.#agenda.callOff('patience');
    else if (!this.#agenda.has('patience'))
      this.#agenda.set('patience', BEHIND_MS, () => this.desk.setState({ isBehind: true }));
  }
}

/** Starts the worker once the page can answer by itself, on which it builds; drafts are answered there from then on. */
export async function answerDrafts(desk: Desk): Promise<Answering> {
  await loadAssess();
  return new Answering(desk, new Worker(new URL('./assess.worker.ts', import.meta.url), { type: 'module' }));
}
