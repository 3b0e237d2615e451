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
  /** Crimped and bolted joints at its ends, those left out whose resistance was measured. */
  readonly joints: number;
  /** Joints at its ends as measured, together, ohm. */
  readonly measuredOhm: number;
  /** Cables joined through pass-throughs are one cable; the index of that cable. */
  readonly group: number;
  /** What it is made of: its own, or where a run joined to it is fixed by hand, that run's. */
  readonly conductor: Conductor;
}

/**
 * A device that opens on too great a current: a fuse, a breaker, a fused output of a block, a link on a battery's post,
 * or the factory's own fuse before a take-off. `a` is its in, the bus, the post or the factory's side.
 */
export interface CircuitLink {
  readonly fitting: FittingOf<'fuse' | 'breaker' | 'block' | 'battery' | 'takeOff'>;
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

/**
 * What joins two nodes and is neither an added cable nor a device: a relay, a switch, a reducer, or a factory cable.
 * Sizing and protection take every contact as closed; one that is open in a state carries nothing there.
 */
export type Contact = { readonly a: number; readonly b: number } & (
  | { readonly kind: 'relay'; readonly fitting: FittingOf<'relay'> }
  | { readonly kind: 'switch'; readonly fitting: FittingOf<'switch'> }
  | { readonly kind: 'reducer'; readonly fitting: FittingOf<'reducer'> }
  | { readonly kind: 'factory'; readonly run: Run }
);

/** What holds a voltage: a battery, or a post or stud that stands for one elsewhere. */
export interface CircuitSource {
  readonly fitting: FittingOf<'battery' | 'jumpPost' | 'takeOff'>;
  readonly plus: number;
  readonly minus: number;
}

/** Where live cable begins that must soon meet a device. `plus` is the post or stud that the user's cable leaves. */
interface Start {
  readonly fitting: FittingOf<'battery' | 'jumpPost' | 'takeOff' | 'alternator' | 'capacitor'>;
  readonly plus: number;
}

interface CircuitCharger {
  readonly fitting: FittingOf<'charger'>;
  readonly input: number;
  readonly output: number;
  readonly ground: number;
}

interface CircuitAlternator {
  readonly fitting: FittingOf<'alternator'>;
  readonly plus: number;
  readonly minus: number;
}

interface CircuitCapacitor {
  readonly fitting: FittingOf<'capacitor'>;
  readonly plus: number;
  readonly minus: number;
}

export interface CircuitLoad {
  readonly fitting: FittingOf<'amplifier' | 'load'>;
  readonly plus: number;
  readonly minus: number;
  /** Where a remote lead ends: it may be live, and draws nothing to speak of; null where there is no such terminal. */
  readonly remote: number | null;
}

export interface Circuit {
  readonly plan: Plan;
  readonly nodes: number;
  readonly body: number;
  readonly cables: readonly Cable[];
  readonly groups: readonly (readonly number[])[];
  readonly links: readonly CircuitLink[];
  readonly bonds: readonly Bond[];
  readonly contacts: readonly Contact[];
  readonly sources: readonly CircuitSource[];
  /** The sources, in their order, then every other fitting at which live cable begins. */
  readonly starts: readonly Start[];
  readonly loads: readonly CircuitLoad[];
  readonly chargers: readonly CircuitCharger[];
  readonly alternators: readonly CircuitAlternator[];
  readonly capacitors: readonly CircuitCapacitor[];
  /** By node: the fitting and terminal it is; null for the body. */
  readonly places: readonly (TerminalRef | null)[];
  /** Node of a terminal; undefined for one that the plan does not hold. */
  nodeOf(ref: TerminalRef): number | undefined;
}

/** The amplifier a load is; null for any other load. */
export const amplifierOf = ({ fitting }: CircuitLoad): FittingOf<'amplifier'> | null =>
  fitting.kind === 'amplifier' ? fitting : null;

/** Joints where a lug or a clamped end meets a terminal: crimp and bolt, or the clamp alone; a pass-through cuts nothing. */
const JOINTS: Readonly<Record<Fitting['kind'], number>> = {
  battery: 2,
  fuse: 2,
  ground: 2,
  block: 1,
  amplifier: 1,
  passThrough: 0,
  breaker: 2,
  bus: 2,
  reducer: 1,
  load: 1,
  alternator: 2,
  jumpPost: 2,
  takeOff: 2,
  charger: 1,
  relay: 2,
  switch: 2,
  capacitor: 2,
};

/** The terminal that another one of a fitting is joined to inside, and so shares its node. */
function joinedInside(fitting: Fitting, terminal: string): string | null {
  if (fitting.kind === 'block')
    return fitting.outputs.some((output) => output.terminal === terminal && output.link === null) ? 'bus' : null;
  if (fitting.kind !== 'amplifier') return null;
  return terminal === 'supply2' ? 'supply' : terminal === 'ground2' ? 'ground' : null;
}

/** Numbers the terminals; an unfused output of a block is its bus, a second input of an amplifier its first. */
function numberNodes(fittings: readonly Fitting[]) {
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

/** The vehicle's own cables, as far as the plan draws them. */
const factoryCables = ({ runs }: Plan, endsOf: readonly (Ends | undefined)[]): Contact[] =>
  runs.flatMap((run, index): Contact[] => {
    const ends = endsOf[index];
    return run.kind === 'factory' && ends !== undefined ? [{ kind: 'factory', run, a: ends[0], b: ends[1] }] : [];
  });

/** What the fittings themselves put between their terminals; `innerNode` makes a node that no terminal has. */
function elementsOf(plan: Plan, nodeOf: Circuit['nodeOf'], body: number, innerNode: (ref: TerminalRef) => number) {
  const links: CircuitLink[] = [];
  const bonds: Bond[] = [];
  const contacts: Contact[] = [];
  const sources: CircuitSource[] = [];
  const others: Start[] = [];
  const loads: CircuitLoad[] = [];
  const chargers: CircuitCharger[] = [];
  const alternators: CircuitAlternator[] = [];
  const capacitors: CircuitCapacitor[] = [];
  const fedByFactory = new Set(
    plan.runs.flatMap(({ kind, from, to }) => (kind === 'factory' ? [from.fittingId, to.fittingId] : [])),
  );
  for (const fitting of plan.fittings) {
    const node = (terminal: string): number => nodeOf({ fittingId: fitting.id, terminal }) ?? body;
    const zone = fittingZone(plan, fitting);
    switch (fitting.kind) {
      case 'fuse':
      case 'breaker':
        links.push({ fitting, terminal: null, link: fitting.link, a: node('in'), b: node('out'), zone });
        break;
      case 'block':
        for (const { terminal, link } of fitting.outputs) {
          if (link !== null) links.push({ fitting, terminal, link, a: node('bus'), b: node(terminal), zone });
        }
        break;
      case 'battery': {
        const terminal = node('positive');
        const post = fitting.postLink === null ? terminal : innerNode({ fittingId: fitting.id, terminal: 'positive' });
        if (fitting.postLink !== null)
          links.push({ fitting, terminal: null, link: fitting.postLink, a: post, b: terminal, zone });
        sources.push({ fitting, plus: post, minus: node('negative') });
        if (fitting.strap !== null) bonds.push({ kind: 'strap', fitting, a: node('negative'), b: body });
        break;
      }
      case 'jumpPost':
        // one that the plan joins to a battery by the factory's cable is a place on the way, not a source of its own
        if (fedByFactory.has(fitting.id)) others.push({ fitting, plus: node('stud') });
        else sources.push({ fitting, plus: node('stud'), minus: body });
        break;
      case 'takeOff': {
        const stud = node('stud');
        if (fedByFactory.has(fitting.id)) {
          others.push({ fitting, plus: stud });
          break;
        }
        const { fuseA } = fitting;
        const inner = fuseA === null ? stud : innerNode({ fittingId: fitting.id, terminal: 'stud' });
        if (fuseA !== null)
          links.push({ fitting, terminal: null, link: { ratingA: fuseA, family: 'auto' }, a: inner, b: stud, zone });
        sources.push({ fitting, plus: inner, minus: body });
        break;
      }
      case 'amplifier':
        loads.push({ fitting, plus: node('supply'), minus: node('ground'), remote: node('remote') });
        break;
      case 'load':
        loads.push({ fitting, plus: node('supply'), minus: node('ground'), remote: null });
        break;
      case 'ground':
        bonds.push({ kind: 'body', fitting, a: node('body'), b: body });
        break;
      case 'relay':
        contacts.push({ kind: 'relay', fitting, a: node('in'), b: node('out') });
        break;
      case 'switch':
        contacts.push({ kind: 'switch', fitting, a: node('in'), b: node('out') });
        break;
      case 'reducer':
        contacts.push({ kind: 'reducer', fitting, a: node('wide'), b: node('narrow') });
        break;
      case 'charger':
        chargers.push({ fitting, input: node('input'), output: node('output'), ground: node('ground') });
        break;
      case 'alternator':
        alternators.push({ fitting, plus: node('positive'), minus: body });
        others.push({ fitting, plus: node('positive') });
        break;
      case 'capacitor':
        capacitors.push({ fitting, plus: node('positive'), minus: node('negative') });
        others.push({ fitting, plus: node('positive') });
        break;
      case 'passThrough':
      case 'bus':
        break;
    }
  }
  const starts: Start[] = [...sources.map(({ fitting, plus }) => ({ fitting, plus })), ...others];
  return { links, bonds, contacts, sources, starts, loads, chargers, alternators, capacitors };
}

/**
 * Builds the circuit of a plan. A remote lead that no battery reaches carries nothing and is left out; one that a
 * battery reaches is a cable like any other, whatever it is called.
 */
export function buildCircuit(plan: Plan): Circuit {
  const { places, nodeOf } = numberNodes(plan.fittings);
  const fittings = new Map(plan.fittings.map((fitting) => [fitting.id, fitting]));
  const body = 0;

  const innerNode = (ref: TerminalRef): number => places.push(ref) - 1;
  const elements = elementsOf(plan, nodeOf, body, innerNode);
  const { links, bonds, sources } = elements;
  const endsOf = endsOfRuns(plan, places, nodeOf);
  const contacts = [...elements.contacts, ...factoryCables(plan, endsOf)];
  const posts = sources.flatMap(({ plus, minus }) => [plus, minus]);
  const pairs = [...links, ...bonds, ...contacts].map(({ a, b }): Ends => [a, b]);
  const reached = joinedTo(posts, [...pairs, ...endsOf.flatMap((ends) => (ends === undefined ? [] : [ends]))]);
  const drawn = plan.runs.flatMap((run, index) => {
    const ends = endsOf[index];
    if (ends === undefined || run.kind === 'factory') return [];
    return run.kind === 'remote' && !reached.has(ends[0]) ? [] : [{ run, ends }];
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
      joints: (run.fromJointOhm === null ? jointsAt(run.from) : 0) + (run.toJointOhm === null ? jointsAt(run.to) : 0),
      measuredOhm: (run.fromJointOhm ?? 0) + (run.toJointOhm ?? 0),
      group: groupOf[index] ?? index,
      conductor: run.conductor.size === 'auto' ? (joined ?? run.conductor) : run.conductor,
    };
  });
  const groups: number[][] = [];
  for (const [index, { group }] of cables.entries()) {
    groups[group] ??= [];
    groups[group].push(index);
  }
  return { plan, nodes: places.length, body, cables, groups, ...elements, contacts, places, nodeOf };
}
