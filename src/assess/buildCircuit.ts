import type { Conductor, Fitting, Plan, TerminalRef } from '../plan/schema.ts';
import { THROUGH_KINDS } from '../plan/terminals.ts';
import type { Cable, Circuit, Contact } from './circuit.ts';
import { elementsOf } from './elements.ts';
import { type Ends, endsOfRuns, groupRuns, joinedTo, numberNodes } from './joining.ts';
import { lengthOf } from './length.ts';
import { stretchesOf } from './surroundings.ts';

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
  continuation: 0,
};

/** The vehicle's own cables, as far as the plan draws them. */
const factoryCables = ({ runs }: Plan, endsOf: readonly (Ends | undefined)[]): Contact[] =>
  runs.flatMap((run, index): Contact[] => {
    const ends = endsOf[index];
    return run.kind === 'factory' && ends !== undefined ? [{ kind: 'factory', run, a: ends[0], b: ends[1] }] : [];
  });

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
  const groupOf = groupRuns(ends, (node) =>
    THROUGH_KINDS.has(fittings.get(places[node]?.fittingId ?? '')?.kind ?? 'fuse'),
  );
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
