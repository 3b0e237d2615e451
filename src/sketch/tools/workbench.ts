/** What the states of every tool work with: the desk, the panes, the draft, and what lies under a finger. */
import type { ConnectRefusal } from '../../desk/connect.ts';
import type { Desk, PaneId } from '../../desk/desk.ts';
import { shownPlan } from '../../desk/desk.ts';
import { openSheet } from '../../desk/openSheet.ts';
import { wholePlan } from '../../desk/whole.ts';
import { halfPlatePx } from '../../drawing/fittings.ts';
import { laneSizeAt, type SeenLine, seenLine } from '../../drawing/lanes.ts';
import { type Picked, pick, REACH_BIG_PX, REACH_PX, targetsOf } from '../../drawing/pick.ts';
import { placeOn } from '../../plan/runs.ts';
import type { Fitting, Plan, Point, Run } from '../../plan/schema.ts';
import type { ClientPoint } from '../input/gestures.ts';
import { heldInPane, nearestPane } from '../nearestPane.ts';
import type { Panes } from '../panes.ts';
import { remembered } from '../remembered.ts';
import { type Guide, snapPoint } from '../snap.ts';
import type { Drafts } from './drafts.ts';

/** The same list each time, so that nothing is drawn anew for it. */
const NO_GUIDES: readonly Guide[] = [];

const NO_GRIP: ClientPoint = { xPx: 0, yPx: 0 };

/** A place on the sheet with the zoom through which it was pointed at. */
export interface Aim {
  at: Point;
  pxPerM: number;
}

export class Workbench {
  /** Lines that pulled the last snapped point, for drawing. */
  guides: readonly Guide[] = NO_GUIDES;
  /** Why the last end of a run was not accepted; until the next event. */
  refusal: ConnectRefusal | null = null;

  readonly #others = remembered((fittings: readonly Fitting[], sheetId: string, except: string | null) =>
    fittings.filter(({ id }) => id !== except).flatMap((fitting) => placeOn(fitting, sheetId) ?? []),
  );

  constructor(
    readonly desk: Desk,
    readonly panes: Panes,
    readonly drafts: Drafts,
  ) {}

  /** The plan that is seen. */
  get plan(): Plan {
    return shownPlan(this.desk.getState());
  }

  get sheetId(): string {
    return openSheet(this.desk.getState()).id;
  }

  /** The line as which a run is seen at a zoom. */
  seenLine(run: Run, pxPerM: number): SeenLine {
    return seenLine(this.plan, run, laneSizeAt(pxPerM));
  }

  get reachPx(): number {
    return this.desk.getState().bigFingers ? REACH_BIG_PX : REACH_PX;
  }

  /** The place under a finger, seen through the pane on which it came down. */
  aim(pane: PaneId, at: ClientPoint): Aim | null {
    return this.panes.toSheet(pane, at);
  }

  /** The place under a finger that may cross from pane to pane: seen through the pane it is over now. */
  aimAcross(pane: PaneId, at: ClientPoint): Aim | null {
    return this.panes.toSheet(nearestPane(this.panes, at, pane), at);
  }

  /**
   * The same for what is left where the finger lifts, `gripPx` off the finger: under one that is over no pane it stops
   * where the nearest still shows it, since nobody would find it out there.
   */
  aimInSight(pane: PaneId, at: ClientPoint, gripPx: ClientPoint = NO_GRIP): Aim | null {
    const { panes } = this;
    const held = { xPx: at.xPx + gripPx.xPx, yPx: at.yPx + gripPx.yPx };
    const nearest = nearestPane(panes, at, pane);
    return panes.toSheet(nearest, panes.at(at) === null ? heldInPane(panes, nearest, held) : held);
  }

  pick({ at, pxPerM }: Aim, meansTerminals = false): Picked | null {
    return pick(targetsOf(this.plan, this.sheetId, meansTerminals, pxPerM), at, pxPerM, this.reachPx);
  }

  /**
   * Pulled to grid, axes and 45 degree lines, unless the switch or Alt says not to. `except` is the fitting that moves:
   * its own axes do not pull.
   */
  snap(aim: Aim, options: { alt: boolean; from?: Point | null; except?: string | null }): Point {
    this.guides = NO_GUIDES;
    if (options.alt || !this.desk.getState().snap) return aim.at;
    // none but the one that moves stands elsewhere in a draft
    const others = this.#others(wholePlan(this.desk.getState()).fittings, this.sheetId, options.except ?? null);
    const snapped = snapPoint({ point: aim.at, pxPerM: aim.pxPerM, others, from: options.from ?? null });
    this.guides = snapped.guides;
    return snapped.point;
  }

  /** How near a run has to be for a fuse to go into it, m: a plate that touches the cable is meant to. */
  runReachM(pxPerM: number): number {
    return Math.max(this.reachPx, halfPlatePx(pxPerM)) / pxPerM;
  }

  /** Says why two terminals were not joined. */
  refuse(reason: ConnectRefusal): void {
    this.refusal = reason;
  }

  /** Free of guides: nothing is held any more. */
  rest(): void {
    this.guides = NO_GUIDES;
  }
}
