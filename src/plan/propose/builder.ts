/** A proposal as it grows: each part is held against the plan with the parts before it. */
import type { Point } from '../../geom/point.ts';
import { fittingById } from '../byId.ts';
import { newRun } from '../create.ts';
import { newFittingIn } from '../newFitting.ts';
import {
  type Fitting,
  type FittingKind,
  MAX_NAME,
  type Plan,
  type RunKind,
  type Sheet,
  type TerminalRef,
} from '../schema.ts';
import { type Ground, groundOf } from './ground.ts';
import { type Proposal, type Proposed, type WhyProposed, withProposal } from './proposal.ts';
import { freeSpot, type Wanted } from './spot.ts';
import { bendsBetween, costOf, type Land } from './way.ts';
import { isLoose } from './wired.ts';

/** What a proposal knows of a new fitting that its name may tell. */
export interface Purpose {
  readonly why: WhyProposed;
  /** The only consumer behind it. */
  readonly consumerId?: string;
}

/** What new fittings are called; words come from outside. */
export interface ProposedNames {
  fitting(kind: FittingKind, plan: Plan, purpose?: Purpose): string;
}

/** How far a pass-through that stands already is gone round for, m. */
const REUSE_WALL_M = 1.2;

export class Builder {
  readonly ground: Ground;
  #whole: Plan;
  #proposal: Proposed[] = [];

  constructor(
    plan: Plan,
    private readonly sheet: Sheet,
    private readonly names: ProposedNames,
    private readonly newId: () => string,
  ) {
    this.#whole = plan;
    this.ground = groundOf(sheet);
  }

  /** The plan with all that is proposed so far. */
  get plan(): Plan {
    return this.#whole;
  }

  get proposal(): Proposal {
    return this.#proposal;
  }

  get here(): Fitting[] {
    return this.#whole.fittings.filter(({ sheetId }) => sheetId === this.sheet.id);
  }

  /** Fittings of a kind on the sheet that no cable ends at, the nearest first. */
  loose(kind: FittingKind, at: Point, withinM: number): Fitting[] {
    const far = ({ at: p }: Fitting): number => Math.hypot(p.xM - at.xM, p.yM - at.yM);
    return this.here
      .filter((fitting) => fitting.kind === kind && isLoose(this.#whole, fitting) && far(fitting) <= withinM)
      .sort((one, other) => far(one) - far(other));
  }

  get #land(): Land {
    return { ground: this.ground, taken: this.here.map(({ at }) => at) };
  }

  spot(wanted: Wanted): Point {
    const taken = this.here.map(({ at }) => at);
    return freeSpot(wanted, taken, this.ground);
  }

  at({ fittingId }: TerminalRef): Point {
    return fittingById(this.#whole, fittingId)?.at ?? { xM: 0, yM: 0 };
  }

  /** Proposes a fitting; answers its id. `change` makes of the new one what is wanted. */
  place(kind: FittingKind, at: Point, purpose: Purpose, change = (fitting: Fitting): Fitting => fitting): string {
    const id = this.newId();
    const telling = this.names.fitting(kind, this.#whole, purpose);
    // made from another name it may be longer than the plan takes
    const name = telling.length <= MAX_NAME ? telling : this.names.fitting(kind, this.#whole);
    const { why } = purpose;
    const fitting = change(newFittingIn(this.#whole, kind, { id, name, sheetId: this.sheet.id, at }));
    this.#add({ kind: 'fitting', id, fitting, why });
    return id;
  }

  /** A way from terminal to terminal: one run, or two with a pass-through between where it crosses the firewall. */
  lead(from: TerminalRef, to: TerminalRef, kind: RunKind, why: WhyProposed): void {
    const [start, end] = [this.at(from), this.at(to)];
    const { ground } = this;
    if (ground.wallXM === null || ground.side(start) === ground.side(end)) {
      this.#run(from, to, kind, why);
      return;
    }
    const through = { fittingId: this.#passThrough(start, end), terminal: 'through' };
    this.#run(from, through, kind, why);
    this.#run(through, to, kind, why);
  }

  /** The pass-through for a way: one that stands unused, else a new one where that way is cheapest. */
  #passThrough(start: Point, end: Point): string {
    const { ground, sheet } = this;
    const wallXM = ground.wallXM ?? 0;
    const onWall = { xM: wallXM, yM: (start.yM + end.yM) / 2 };
    const [standing] = this.loose('passThrough', onWall, sheet.outline.widthM + REUSE_WALL_M).filter(
      ({ at }) => Math.abs(at.xM - wallXM) < 0.05,
    );
    if (standing !== undefined) return standing.id;
    const taken = this.here.filter(({ at }) => Math.abs(at.xM - wallXM) < 0.1).map(({ at }) => at.yM);
    let best = { cost: Infinity, yM: onWall.yM };
    for (let yM = ground.box.minYM + 0.12; yM <= ground.box.maxYM - 0.12; yM += 0.06) {
      const at = { xM: wallXM, yM };
      const crowded = taken.some((other) => Math.abs(other - yM) < 0.15) ? 5 : 0;
      const inColumn = ground.column !== null && yM >= ground.column.minYM && yM <= ground.column.maxYM ? 5 : 0;
      const cost =
        this.#lengthOf(start, at) + this.#lengthOf(at, end) + crowded + inColumn + (ground.holds(at) ? 0 : 50);
      if (cost < best.cost - 1e-6) best = { cost, yM };
    }
    return this.place('passThrough', { xM: wallXM, yM: best.yM }, { why: 'throughWall' });
  }

  #lengthOf(from: Point, to: Point): number {
    return costOf([from, ...bendsBetween(from, to, this.#land), to], this.#land);
  }

  #run(from: TerminalRef, to: TerminalRef, kind: RunKind, why: WhyProposed): void {
    const bends = bendsBetween(this.at(from), this.at(to), this.#land);
    const id = this.newId();
    const run = newRun({ id, name: '', kind, sheetId: this.sheet.id, from, to, bends });
    this.#add({ kind: 'run', id, run, why });
  }

  /** What the plan would refuse (out of its bounds, or full) is not proposed. */
  #add(part: Proposed): void {
    const whole = withProposal(this.#whole, [part]);
    if (whole === this.#whole) return;
    this.#whole = whole;
    this.#proposal.push(part);
  }
}
