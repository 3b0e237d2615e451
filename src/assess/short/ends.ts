/** By which ends a live cable is fed, and which devices lie there. What follows hangs on the circuit alone, not on sizes. */
import type { Model } from '../model.ts';
import { perModel } from '../perModel.ts';
import { linkEdge } from '../ratings.ts';
import { type Edge, reach } from '../sides.ts';

/** One end of a cable from which current comes to a short on it. */
export interface FedEnd {
  readonly near: number;
  /** The other end: a short there takes the whole length of the conductor. */
  readonly far: number;
  /** Devices of which each alone cuts this end off from every source, the one next to the cable first. */
  readonly series: readonly number[];
  /** Devices by which current comes in side by side: all of them must open. Empty where one in series does it. */
  readonly parallel: readonly number[];
  /** Sources that reach this end without any device. */
  readonly bare: readonly number[];
}

const isConductor = ({ kind }: Edge): boolean => kind === 'cable' || kind === 'contact';

/** In a tree: the devices on the way from a node back to its post. */
const seriesBack = perModel(({ circuit, ways }) => {
  const firstLink = circuit.cables.length;
  const known = new Map<number, readonly number[]>();
  const back = (node: number): readonly number[] => {
    const before = known.get(node);
    if (before !== undefined) return before;
    const trail: number[] = [];
    const links: number[] = [];
    let rest: readonly number[] = [];
    for (let step = ways.stepTo(node); step !== undefined; step = ways.stepTo(step.from)) {
      const link = step.edge - firstLink;
      if (circuit.links[link] !== undefined) links.push(link);
      const further = known.get(step.from);
      trail.push(step.from);
      if (further === undefined) continue;
      rest = further;
      break;
    }
    const all = [...links, ...rest];
    known.set(node, all);
    return all;
  };
  return back;
});

/** Whether every live node has one way to the one source: what feeds a cable can then be read off the tree. */
export const isTree = ({ circuit, ways }: Model): boolean => ways.radial && circuit.sources.length === 1;

function treeEnds(model: Model, cable: number): FedEnd[] {
  const { circuit, ways } = model;
  const { a = -1, b = -1 } = circuit.cables[cable] ?? {};
  const step = [ways.stepTo(b), ways.stepTo(a)].find((found) => found?.edge === cable);
  if (step === undefined) return [];
  const series = seriesBack(model)(step.from);
  return [{ near: step.from, far: step.to, series, parallel: [], bare: series.length === 0 ? [0] : [] }];
}

/** In any circuit: what reaches an end without the cable itself. */
function endByReach(model: Model, cable: number, near: number, far: number): FedEnd[] {
  const { circuit, sides } = model;
  const passes = (edge: Edge): boolean => edge.kind !== 'bond' && !(edge.kind === 'cable' && edge.index === cable);
  const within = reach([near], sides, (edge) => passes(edge) && isConductor(edge));
  const bare = circuit.sources.flatMap(({ plus }, source) => (within[plus] === true ? [source] : []));
  // current comes in by a device whose far side a source reaches without passing through this part
  const outside = reach(
    circuit.sources.flatMap(({ plus }) => (within[plus] === true ? [] : [plus])),
    sides,
    (edge) => passes(edge) && within[edge.a] !== true && within[edge.b] !== true,
  );
  const feeding = circuit.links.flatMap((link, index) => {
    const isBorder = (within[link.a] === true) !== (within[link.b] === true);
    const other = within[link.a] === true ? link.b : link.a;
    return isBorder && outside[other] === true ? [index] : [];
  });
  if (bare.length === 0 && feeding.length === 0) return [];
  const posts = circuit.sources.map(({ plus }) => plus);
  const cutsOff = (link: number): boolean => {
    const left = linkEdge(model, link);
    return reach(posts, sides, (edge) => passes(edge) && sides.edges[left] !== edge)[near] !== true;
  };
  const others = circuit.links.map((_, link) => link).filter((link) => !feeding.includes(link));
  const series = bare.length > 0 ? [] : [...feeding, ...others].filter(cutsOff);
  return [{ near, far, series, parallel: series.length > 0 ? [] : feeding, bare }];
}

function endsOfCable(model: Model, cable: number): FedEnd[] {
  const { circuit, sides } = model;
  const { a = -1, b = -1 } = circuit.cables[cable] ?? {};
  // a cable from a terminal back to itself carries nothing; no short on a run that is not live
  if (sides.live[a] !== true || a === b) return [];
  if (isTree(model)) return treeEnds(model, cable);
  return [...endByReach(model, cable, a, b), ...endByReach(model, cable, b, a)];
}

/** By cable: the ends that are fed; none for one that is not live. */
export const fedEnds = perModel((model): readonly (readonly FedEnd[])[] =>
  model.circuit.cables.map((_, cable) => endsOfCable(model, cable)),
);
