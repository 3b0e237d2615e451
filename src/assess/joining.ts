/** Which terminals are one node, and which runs one cable. */
import { runsAt } from '../plan/byId.ts';
import type { Fitting, Plan, TerminalRef } from '../plan/schema.ts';
import { THROUGH_KINDS, terminalKey, terminalsOf } from '../plan/terminals.ts';

/** The terminal that another one of a fitting is joined to inside, and so shares its node. */
function joinedInside(fitting: Fitting, terminal: string): string | null {
  if (fitting.kind === 'block')
    return fitting.outputs.some((output) => output.terminal === terminal && output.link === null) ? 'bus' : null;
  if (fitting.kind !== 'amplifier') return null;
  return terminal === 'supply2' ? 'supply' : terminal === 'ground2' ? 'ground' : null;
}

/** Numbers the terminals; an unfused output of a block is its bus, a second input of an amplifier its first. */
export function numberNodes(fittings: readonly Fitting[]) {
  const places: (TerminalRef | null)[] = [null];
  const nodes = new Map<string, number>();
  for (const fitting of fittings) {
    for (const terminal of terminalsOf(fitting)) {
      const ref = { fittingId: fitting.id, terminal };
      const joined = joinedInside(fitting, terminal);
      const shared = joined === null ? undefined : nodes.get(terminalKey({ fittingId: fitting.id, terminal: joined }));
      nodes.set(terminalKey(ref), shared ?? places.length);
      if (shared === undefined) places.push(ref);
    }
  }
  return { places, nodeOf: (ref: TerminalRef): number | undefined => nodes.get(terminalKey(ref)) };
}

export type Ends = readonly [number, number];

function addAt(at: Map<number, number[]>, node: number, one: number): void {
  const here = at.get(node);
  if (here === undefined) at.set(node, [one]);
  else here.push(one);
}

/** Nodes joined to the starting ones by pairs of nodes. */
export function joinedTo(starts: readonly number[], pairs: readonly Ends[]): ReadonlySet<number> {
  const at = new Map<number, number[]>();
  for (const [a, b] of pairs) {
    addAt(at, a, b);
    addAt(at, b, a);
  }
  const joined = new Set(starts);
  for (const node of joined) for (const next of at.get(node) ?? []) joined.add(next);
  return joined;
}

/** Groups of runs that pass-throughs join into one cable: by run, the number of its group. */
export function groupRuns(ends: readonly Ends[], isPassThrough: (node: number) => boolean): number[] {
  const groupOf: (number | undefined)[] = ends.map(() => undefined);
  const runsAt = new Map<number, number[]>();
  for (const [run, nodes] of ends.entries()) {
    for (const node of nodes) if (isPassThrough(node)) addAt(runsAt, node, run);
  }
  let groups = 0;
  for (const start of ends.keys()) {
    if (groupOf[start] !== undefined) continue;
    const queue = new Set([start]);
    for (const run of queue) {
      groupOf[run] = groups;
      for (const node of ends[run] ?? []) for (const next of runsAt.get(node) ?? []) queue.add(next);
    }
    groups += 1;
  }
  return groupOf.map((group) => group ?? 0);
}

/**
 * Ends of every run of the plan, by run; undefined for one that the plan does not hold. Remote leads that go
 * on through a pass-through beside power runs are not joined to those: they get a node apart.
 */
export function endsOfRuns(
  plan: Plan,
  places: (TerminalRef | null)[],
  nodeOf: (ref: TerminalRef) => number | undefined,
) {
  const apart = new Map<string, number>();
  const { fittings, runs } = plan;
  for (const { id, kind } of fittings) {
    if (!THROUGH_KINDS.has(kind)) continue;
    const here = runsAt(plan, id);
    const remotes = here.filter((run) => run.kind === 'remote').length;
    // a single power run that comes in there goes on as one of the leads
    if (remotes < 2 || here.length - remotes < 2) continue;
    apart.set(id, places.length);
    places.push({ fittingId: id, terminal: 'through' });
  }
  return runs.map(({ kind, from, to }): Ends | undefined => {
    const at = (ref: TerminalRef) => (kind === 'remote' ? apart.get(ref.fittingId) : undefined) ?? nodeOf(ref);
    const [a, b] = [at(from), at(to)];
    return a === undefined || b === undefined ? undefined : [a, b];
  });
}
