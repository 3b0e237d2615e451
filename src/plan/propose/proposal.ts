/** What is proposed: fittings and runs that are no part of the plan until somebody accepts them. */
import { fittingById, runById } from '../byId.ts';
import { acceptFitting, acceptRun } from '../edits/accept.ts';
import { isIdUsed } from '../ids.ts';
import { type Fitting, MAX_ITEMS, type Plan, type Point, type Run } from '../schema.ts';

/** Why a part is proposed; worded where it is shown. */
export type WhyProposed =
  /** A fuse as near the source as a place allows. */
  | 'firstFuse'
  /** The way crosses the firewall. */
  | 'throughWall'
  /** More than one input is fed by one cable. */
  | 'divides'
  /** A smaller cable behind a larger fuse. */
  | 'branchFuse'
  /** The short way back of one consumer. */
  | 'groundBeside'
  /** A source whose negative post is joined to nothing. */
  | 'groundSource'
  /** Part of the way there. */
  | 'feeds'
  /** Somebody has moved or bent it since: where it lies now was never proposed. */
  | 'moved';

/** A part of a proposal; its id is that of the fitting or run it would become. Later ones may need earlier ones. */
export type Proposed =
  | { readonly kind: 'fitting'; readonly id: string; readonly fitting: Fitting; readonly why: WhyProposed }
  | { readonly kind: 'run'; readonly id: string; readonly run: Run; readonly why: WhyProposed };

export type Proposal = readonly Proposed[];

/** The plan as it would be with those parts of the proposal that fit it; the same plan when none does. */
export function withProposal(plan: Plan, proposal: Proposal): Plan {
  let whole = plan;
  for (const part of proposal) whole = withPart(whole, part);
  return whole;
}

function withPart(plan: Plan, part: Proposed): Plan {
  const list = part.kind === 'fitting' ? plan.fittings : plan.runs;
  if (list.length >= MAX_ITEMS || isIdUsed(plan, part.id)) return plan;
  if (part.kind === 'run') {
    const run = acceptRun(part.run, plan.fittings);
    return run === null ? plan : { ...plan, runs: [...plan.runs, run] };
  }
  const fitting = acceptFitting(part.fitting, plan.settings);
  const isOnSheet = plan.sheets.some(({ id }) => id === part.fitting.sheetId);
  return fitting === null || !isOnSheet ? plan : { ...plan, fittings: [...plan.fittings, fitting] };
}

/** What an edited whole leaves of the plan itself, and of what was proposed. */
export interface Parted {
  readonly plan: Plan;
  readonly proposal: Proposal;
}

/**
 * Takes a whole apart again after an edit of it: what was proposed stays proposed, as the edit left it; a new run that
 * ends at something proposed is proposed too, since it cannot stand without it; everything else is the plan. The plan as
 * it was before where nothing of it has changed.
 */
export function partWhole(before: Plan, whole: Plan, proposal: Proposal): Parted {
  // the edit's own object, of which the answer may be known
  if (proposal.length === 0) return { plan: isSame(before, whole) ? before : whole, proposal };
  const partOf = new Map(proposal.map((part) => [part.id, part]));
  const ghosts = new Set(whole.fittings.filter(({ id }) => partOf.has(id)).map(({ id }) => id));
  const isGhost = ({ id, from, to }: Run): boolean =>
    partOf.has(id) || ghosts.has(from.fittingId) || ghosts.has(to.fittingId);
  const parts: Proposal = [
    ...whole.fittings.flatMap((fitting): Proposed[] => {
      const { id } = fitting;
      return ghosts.has(id) ? [{ kind: 'fitting', id, fitting, why: whyFor(partOf.get(id), [fitting.at]) }] : [];
    }),
    ...whole.runs.flatMap((run): Proposed[] =>
      isGhost(run) ? [{ kind: 'run', id: run.id, run, why: whyFor(partOf.get(run.id), run.bends) }] : [],
    ),
  ];
  const plan = {
    ...whole,
    fittings: sameList(
      before.fittings,
      whole.fittings.filter(({ id }) => !ghosts.has(id)),
    ),
    runs: sameList(
      before.runs,
      whole.runs.filter((run) => !isGhost(run)),
    ),
  };
  return { plan: isSame(before, plan) ? before : plan, proposal: parts };
}

/** What the edits round to is no move, m. */
const LEAST_MOVE_M = 0.001;

/** Why a part is proposed that lies there now; its reason was one for where it lay. */
function whyFor(part: Proposed | undefined, now: readonly Point[]): WhyProposed {
  if (part === undefined) return 'feeds';
  const before = part.kind === 'fitting' ? [part.fitting.at] : part.run.bends;
  const isThere = ({ xM, yM }: Point, index: number): boolean => {
    const then = before[index];
    return then !== undefined && Math.hypot(then.xM - xM, then.yM - yM) < LEAST_MOVE_M;
  };
  return before.length === now.length && now.every(isThere) ? part.why : 'moved';
}

const isSame = (before: Plan, after: Plan): boolean =>
  sameList(before.fittings, after.fittings) === before.fittings &&
  sameList(before.runs, after.runs) === before.runs &&
  (Object.keys(before) as (keyof Plan)[]).every(
    (key) => key === 'fittings' || key === 'runs' || after[key] === before[key],
  );

const sameList = <T>(before: T[], after: T[]): T[] =>
  before.length === after.length && before.every((item, index) => item === after[index]) ? before : after;

/** That part with all that it needs to stand: a run needs the fittings at its ends. */
export function withNeeded(proposal: Proposal, id: string): Proposal {
  const part = proposal.find((one) => one.id === id);
  if (part === undefined) return [];
  const needed = new Set(part.kind === 'run' ? [id, part.run.from.fittingId, part.run.to.fittingId] : [id]);
  return proposal.filter((one) => needed.has(one.id));
}

/** What is left when that part is refused: runs that would end at it go with it. */
export function withoutPart(proposal: Proposal, id: string): Proposal {
  return proposal.filter(
    (part) =>
      part.id !== id && (part.kind === 'fitting' || (part.run.from.fittingId !== id && part.run.to.fittingId !== id)),
  );
}

/** What the plan does not hold yet of a proposal, and could hold: what an undo or a later edit has overtaken is left out. */
export function stillOpen(plan: Plan, proposal: Proposal): Proposal {
  const whole = withProposal(plan, proposal);
  const isOpen = ({ kind, id }: Proposed): boolean =>
    kind === 'fitting'
      ? fittingById(plan, id) === undefined && fittingById(whole, id) !== undefined
      : runById(plan, id) === undefined && runById(whole, id) !== undefined;
  return proposal.every(isOpen) ? proposal : proposal.filter(isOpen);
}
