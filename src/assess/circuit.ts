/** The plan as a circuit: terminals are nodes, fittings add elements between them, the body is a node. */
import type { Conductor, Fitting, FittingOf, Link, Plan, Run, TerminalRef } from '../plan/schema.ts';
import { terminalKey, terminalsOf } from '../plan/terminals.ts';
import type { LengthAnswer } from './answer.ts';
import { lengthOf } from './length.ts';
import { fittingZone, type MarkedZone, type Stretch, stretchesOf } from './surroundings.ts';

/** A run that carries power or may be live. The label says nothing: what it is joined to does. */
export interface Cable {
  readonly run: Run;
  readonly a: number;
  readonly b: number;
  readonly length: LengthAnswer;
  readonly stretches: readonly Stretch[];
  /** Crimped and bolted joints at both its ends. */
  readonly joints: number;
  /** Cables joined through pass-throughs are one cable; the index of that cable. */
  readonly group: number;
  /** What it is made of: its own, or where a run joined to it is fixed by hand, that run's. */
  readonly conductor: Conductor;
}

/** A fuse-link: a fuse, or a fused output of a block. `a` is its in or the bus. */
export interface CircuitLink {
  readonly fitting: FittingOf<'fuse'> | FittingOf<'block'>;
  /** The block output it stands in, else null. */
  readonly terminal: string | null;
  readonly link: Link;
  readonly a: number;
  readonly b: number;
  readonly zone: MarkedZone;
}

/** A fixed conductor that is no run: a ground point's contact with the body, or a battery's factory strap. */
type Bond = { readonly a: number; readonly b: number } & (
  | { readonly kind: 'body'; readonly fitting: FittingOf<'ground'> }
  | { readonly kind: 'strap'; readonly fitting: FittingOf<'battery'> }
);

interface CircuitSource {
  readonly fitting: FittingOf<'battery'>;
  readonly plus: number;
  readonly minus: number;
}

export interface CircuitLoad {
  readonly fitting: FittingOf<'amplifier'>;
  readonly plus: number;
  readonly minus: number;
  /** Where a remote lead ends: it may be live, and draws nothing to speak of. */
  readonly remote: number;
}

export interface Circuit {
  readonly plan: Plan;
  readonly nodes: number;
  readonly body: number;
  readonly cables: readonly Cable[];
  readonly groups: readonly (readonly number[])[];
  readonly links: readonly CircuitLink[];
  readonly bonds: readonly Bond[];
  readonly sources: readonly CircuitSource[];
  readonly loads: readonly CircuitLoad[];
  /** By node: the fitting and terminal it is; null for the body. */
  readonly places: readonly (TerminalRef | null)[];
  /** Node of a terminal; undefined for one that the plan does not hold. */
  nodeOf(ref: TerminalRef): number | undefined;
}

/** Joints where a lug or a clamped end meets a terminal: crimp and bolt, or the clamp alone; a pass-through cuts nothing. */
const JOINTS: Readonly<Record<Fitting['kind'], number>> = {
  battery: 2,
  fuse: 2,
  ground: 2,
  block: 1,
  amplifier: 1,
  passThrough: 0,
};

/** Numbers the terminals; an unfused output of a block is its bus. */
function numberNodes(fittings: readonly Fitting[]) {
  const places: (TerminalRef | null)[] = [null];
  const nodes = new Map<string, number>();
  for (const fitting of fittings) {
    for (const terminal of terminalsOf(fitting)) {
      const ref = { fittingId: fitting.id, terminal };
      const straight =
        fitting.kind === 'block' &&
        fitting.outputs.some((output) => output.terminal === terminal && output.link === null);
      const bus = straight ? nodes.get(terminalKey({ fittingId: fitting.id, terminal: 'bus' })) : undefined;
      nodes.set(terminalKey(ref), bus ?? places.length);
      if (bus === undefined) places.push(ref);
    }
  }
  return { places, nodeOf: (ref: TerminalRef): number | undefined => nodes.get(terminalKey(ref)) };
}

type Ends = readonly [number, number];

/** Nodes joined to the starting ones by pairs of nodes. */
function joinedTo(starts: readonly number[], pairs: readonly Ends[]): ReadonlySet<number> {
  const at = new Map<number, number[]>();
  for (const [a, b] of pairs) {
    at.set(a, [...(at.get(a) ?? []), b]);
    at.set(b, [...(at.get(b) ?? []), a]);
  }
  const joined = new Set(starts);
  for (const node of joined) for (const next of at.get(node) ?? []) joined.add(next);
  return joined;
}

/** Groups of runs that pass-throughs join into one cable: by run, the number of its group. */
function groupRuns(ends: readonly Ends[], isPassThrough: (node: number) => boolean): number[] {
  const groupOf: (number | undefined)[] = ends.map(() => undefined);
  const runsAt = new Map<number, number[]>();
  for (const [run, nodes] of ends.entries()) {
    for (const node of nodes) if (isPassThrough(node)) runsAt.set(node, [...(runsAt.get(node) ?? []), run]);
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
function endsOfRuns({ fittings, runs }: Plan, places: (TerminalRef | null)[], nodeOf: Circuit['nodeOf']) {
  const apart = new Map<string, number>();
  for (const { id, kind } of fittings) {
    if (kind !== 'passThrough') continue;
    const here = runs.filter(({ from, to }) => from.fittingId === id || to.fittingId === id);
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

/** What the fittings themselves put between their terminals. */
function elementsOf(plan: Plan, nodeOf: Circuit['nodeOf'], body: number) {
  const links: CircuitLink[] = [];
  const bonds: Bond[] = [];
  const sources: CircuitSource[] = [];
  const loads: CircuitLoad[] = [];
  for (const fitting of plan.fittings) {
    const node = (terminal: string): number => nodeOf({ fittingId: fitting.id, terminal }) ?? body;
    if (fitting.kind === 'fuse') {
      const zone = fittingZone(plan, fitting);
      links.push({ fitting, terminal: null, link: fitting.link, a: node('in'), b: node('out'), zone });
    } else if (fitting.kind === 'block') {
      const zone = fittingZone(plan, fitting);
      for (const { terminal, link } of fitting.outputs) {
        if (link !== null) links.push({ fitting, terminal, link, a: node('bus'), b: node(terminal), zone });
      }
    } else if (fitting.kind === 'battery') {
      sources.push({ fitting, plus: node('positive'), minus: node('negative') });
      if (fitting.strap !== null) bonds.push({ kind: 'strap', fitting, a: node('negative'), b: body });
    } else if (fitting.kind === 'amplifier') {
      loads.push({ fitting, plus: node('supply'), minus: node('ground'), remote: node('remote') });
    } else if (fitting.kind === 'ground') {
      bonds.push({ kind: 'body', fitting, a: node('body'), b: body });
    }
  }
  return { links, bonds, sources, loads };
}

/**
 * Builds the circuit of a plan. A remote lead that no battery reaches carries nothing and is left out; one that a
 * battery reaches is a cable like any other, whatever it is called.
 */
export function buildCircuit(plan: Plan): Circuit {
  const { places, nodeOf } = numberNodes(plan.fittings);
  const fittings = new Map(plan.fittings.map((fitting) => [fitting.id, fitting]));
  const body = 0;

  const { links, bonds, sources, loads } = elementsOf(plan, nodeOf, body);
  const endsOf = endsOfRuns(plan, places, nodeOf);
  const posts = sources.flatMap(({ plus, minus }) => [plus, minus]);
  const pairs = [...links, ...bonds].map(({ a, b }): Ends => [a, b]);
  const reached = joinedTo(posts, [...pairs, ...endsOf.flatMap((ends) => (ends === undefined ? [] : [ends]))]);
  const drawn = plan.runs.flatMap((run, index) => {
    const ends = endsOf[index];
    return ends === undefined || (run.kind === 'remote' && !reached.has(ends[0])) ? [] : [{ run, ends }];
  });
  const runs = drawn.map(({ run }) => run);
  const ends = drawn.map((one) => one.ends);
  const groupOf = groupRuns(ends, (node) => fittings.get(places[node]?.fittingId ?? '')?.kind === 'passThrough');
  const jointsAt = ({ fittingId }: TerminalRef): number => JOINTS[fittings.get(fittingId)?.kind ?? 'passThrough'];
  const fixedOf = new Map<number, Conductor>();
  for (const [index, { conductor }] of runs.entries()) {
    const group = groupOf[index] ?? index;
    if (conductor.size !== 'auto' && !fixedOf.has(group)) fixedOf.set(group, conductor);
  }
  const cables = runs.map((run, index): Cable => {
    const length = lengthOf(plan, run);
    const joined = fixedOf.get(groupOf[index] ?? index);
    return {
      run,
      a: ends[index]?.[0] ?? body,
      b: ends[index]?.[1] ?? body,
      length,
      stretches: stretchesOf(plan, run, length.lengthM),
      joints: jointsAt(run.from) + jointsAt(run.to),
      group: groupOf[index] ?? index,
      conductor: run.conductor.size === 'auto' ? (joined ?? run.conductor) : run.conductor,
    };
  });
  const groups: number[][] = [];
  for (const [index, { group }] of cables.entries()) {
    groups[group] ??= [];
    groups[group].push(index);
  }
  return { plan, nodes: places.length, body, cables, groups, links, bonds, sources, loads, places, nodeOf };
}
