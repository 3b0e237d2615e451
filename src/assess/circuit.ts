/** The plan as a circuit: terminals are nodes, fittings add elements between them, the body is a node. */
import type { Conductor, Fitting, FittingOf, Link, Plan, Run, TerminalRef } from '../plan/schema.ts';
import { terminalKey, terminalsOf } from '../plan/terminals.ts';
import type { LengthAnswer } from './answer.ts';
import { lengthOf } from './length.ts';
import { fittingZone, type MarkedZone, type Stretch, stretchesOf } from './surroundings.ts';

/** A power or ground run. The label says nothing: what it is joined to does. */
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

/** Groups of runs that pass-throughs join into one cable, by union of neighbours. */
function groupRuns(runs: readonly Run[], isPassThrough: (fittingId: string) => boolean): number[] {
  const groupOf = runs.map((_, index) => index);
  const rootOf = (index: number): number => {
    let root = index;
    while (groupOf[root] !== root) root = groupOf[root] ?? root;
    groupOf[index] = root;
    return root;
  };
  const firstAt = new Map<string, number>();
  for (const [index, run] of runs.entries()) {
    for (const { fittingId } of [run.from, run.to]) {
      if (!isPassThrough(fittingId)) continue;
      const first = firstAt.get(fittingId);
      if (first === undefined) firstAt.set(fittingId, index);
      else groupOf[rootOf(index)] = rootOf(first);
    }
  }
  const numbers = new Map<number, number>();
  return runs.map((_, index) => {
    const root = rootOf(index);
    const number = numbers.get(root) ?? numbers.size;
    numbers.set(root, number);
    return number;
  });
}

/**
 * Builds the circuit of a plan. Remote leads carry no power and are left out; a power run that ends at a remote terminal
 * ends there.
 */
export function buildCircuit(plan: Plan): Circuit {
  const fittings = new Map(plan.fittings.map((fitting) => [fitting.id, fitting]));
  const { places, nodeOf } = numberNodes(plan.fittings);
  const body = 0;

  const runs = plan.runs.filter(
    (run) => run.kind !== 'remote' && nodeOf(run.from) !== undefined && nodeOf(run.to) !== undefined,
  );
  const groupOf = groupRuns(runs, (id) => fittings.get(id)?.kind === 'passThrough');
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
      a: nodeOf(run.from) ?? body,
      b: nodeOf(run.to) ?? body,
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
      loads.push({ fitting, plus: node('supply'), minus: node('ground') });
    } else if (fitting.kind === 'ground') {
      bonds.push({ kind: 'body', fitting, a: node('body'), b: body });
    }
  }
  return { plan, nodes: places.length, body, cables, groups, links, bonds, sources, loads, places, nodeOf };
}
