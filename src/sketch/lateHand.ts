/**
 * The hand as the rest of the sketch knows it. Until the real one has been fetched it is at rest, and keeps whatever it
 * is told; the real one then hears all of it in order, each thing as if the desk and the panes still were as the finger
 * saw them. The sheet can be moved all the same: one finger on bare sheet pans at once, and two fingers and the wheel do
 * not pass through here.
 */
import { createStore } from 'zustand/vanilla';
import { type Desk, type DeskState, type Hand as HandOnDesk, type PaneId, shownPlan } from '../desk/desk.ts';
import type { Frames } from '../desk/frames.ts';
import { openSheet } from '../desk/openSheet.ts';
import type { FittingKind } from '../plan/schema.ts';
import type { Holding } from './holding.ts';
import type { Clock } from './input/clock.ts';
import type { ClientPoint } from './input/gestures.ts';
import type { Late, LateSource } from './loadLate.ts';
import type { Panes, PanesThen } from './panes.ts';
import { isBare } from './tools/bare.ts';
import type { Hand, HandView } from './tools/hand.ts';
import { panning } from './tools/Panning.ts';
import { AT_REST, isIn, restOf } from './tools/rest.ts';
import type { HandEvent, HandState } from './tools/state.ts';

/** What of the desk decides what a finger does. */
interface DeskThen {
  hand: HandOnDesk;
  sheetId: string;
}

interface Kept {
  tell: (hand: Hand) => void;
  desk: DeskThen;
  panes: PanesThen;
}

type Real = ReturnType<Late['takeUpHand']>;

const deskThen = (state: DeskState): DeskThen => ({ hand: state.hand, sheetId: openSheet(state).id });

export class LateHand {
  /** What is seen of the hand, the real one's too. */
  readonly store = createStore<HandView>()(() => AT_REST);
  /** What was fetched with the hand; null until then. */
  readonly late = createStore<Late | null>()(() => null);
  #real: Real | null = null;
  #kept: Kept[] = [];
  /** Nothing that is kept may have moved, placed or begun anything: what looks bare is. */
  #isAsSeen = true;
  #isFetching = false;

  constructor(
    readonly desk: Desk,
    readonly panes: Panes,
    private readonly clock: Clock,
    private readonly frames: Frames,
    private readonly source: LateSource,
  ) {
    if (source.here !== null) {
      this.#arrived(source.here);
    } else {
      // a sketch that has gone from the page meanwhile still does what was done on it
      void source.whenHere.then((late) => this.#arrived(late));
      void this.#fetch();
    }
  }

  get stateName(): HandState['name'] {
    return this.store.getState().state.name;
  }

  get holding(): Holding | null {
    return this.#real?.holding ?? null;
  }

  /** A gesture, or a button over the sketch. */
  tell(event: HandEvent): void {
    if (this.#real === null && this.#pans(event)) return;
    if (event.kind === 'dragStart' || this.stateName !== 'move.idle') this.#isAsSeen = false;
    this.#do((hand) => hand.tell(event));
    if (event.kind === 'press') this.#tryAgain();
  }

  /** Moves the sheet under a finger that came down on nothing; answers whether it did. */
  #pans(event: HandEvent): boolean {
    const { state } = this.store.getState();
    if (state.name === 'panning') {
      this.store.setState({ state: event.kind === 'cancel' ? state.back : panning(state, event, this) });
      return true;
    }
    if (event.kind !== 'dragStart' || state.name !== 'move.idle') return false;
    if (!this.#isAsSeen || !this.#isBare(event.surface, event.from)) return false;
    // of the press there is nothing more to come
    this.#do((hand) => hand.tell({ kind: 'cancel', surface: event.surface }));
    const begun = { name: 'panning', pane: event.surface, last: event.from, back: state } as const;
    this.store.setState({ state: panning(begun, { ...event, kind: 'dragMove' }, this) });
    return true;
  }

  #isBare(pane: PaneId, point: ClientPoint): boolean {
    const state = this.desk.getState();
    const aim = this.panes.toSheet(pane, point);
    return aim !== null && isBare(shownPlan(state), openSheet(state).id, aim);
  }

  /** A kind was dragged off the shelf. */
  carry(kind: FittingKind): void {
    this.#isAsSeen = false;
    this.#do((hand) => hand.carry(kind));
    this.#tryAgain();
  }

  /** Another way of the hand was chosen. */
  changeWay(way: HandOnDesk['way']): void {
    if (this.#real === null && !isIn(way, this.store.getState().state)) this.store.setState({ state: restOf(way) });
    this.#do((hand) => hand.changeWay(way));
  }

  /** Another sheet was opened. */
  changeSheet(sheetId: string): void {
    this.#do((hand) => hand.changeSheet(sheetId));
  }

  #do(tell: Kept['tell']): void {
    if (this.#real !== null) tell(this.#real.hand);
    else this.#kept.push({ tell, desk: deskThen(this.desk.getState()), panes: this.panes.asNow() });
  }

  #tryAgain(): void {
    if (this.#real === null && !this.#isFetching) void this.#fetch();
  }

  async #fetch(): Promise<void> {
    this.#isFetching = true;
    try {
      await this.source.load();
    } catch {
      this.desk.setState({ message: { id: 'handMissing', params: {}, undo: false } });
    }
    this.#isFetching = false;
  }

  #arrived(late: Late): void {
    const { desk, panes, clock, frames, store } = this;
    if (desk.getState().message?.id === 'handMissing') desk.setState({ message: null });
    this.#real = late.takeUpHand({ desk, panes, clock, frames, store });
    this.#playBack(this.#real.hand);
    this.late.setState(late, true);
  }

  #playBack(hand: Hand): void {
    const { desk, panes } = this;
    if (this.#kept.length === 0) return;
    const shown = this.store.getState();
    this.store.setState(AT_REST);
    const now = deskThen(desk.getState());
    let before = now;
    for (const kept of this.#kept) {
      // another plan was opened since: what was meant for the one before means nothing here
      if (!desk.getState().plan.sheets.some(({ id }) => id === kept.desk.sheetId)) continue;
      this.#turnTo(kept.desk, before);
      before = kept.desk;
      panes.asThen(kept.panes, () => kept.tell(hand));
    }
    this.#turnTo(now, before);
    this.#kept = [];
    // a finger that is moving the sheet goes on with it
    if (shown.state.name === 'panning') this.store.setState(shown);
  }

  /** Only what the user changed since: what the hand itself has made of it stays. */
  #turnTo({ hand, sheetId }: DeskThen, before: DeskThen): void {
    if (hand !== before.hand) this.desk.setState({ hand });
    if (sheetId !== before.sheetId) this.desk.setState({ sheetId });
  }
}
