/**
 * A likely first feed for what is placed: a fuse near each source, a pass-through where the way crosses the firewall, a
 * block where one cable feeds several inputs, grounds, and runs along the sills. Remote leads are left to whoever knows
 * where the radio is.
 */
import { distance, type Point } from '../../geom/point.ts';
import { fittingById } from '../byId.ts';
import { autoLink } from '../newFitting.ts';
import type { Fitting, FittingOf, Plan, TerminalRef } from '../schema.ts';
import { Builder, type ProposedNames } from './builder.ts';
import { feedsOf, type Inlet, inletsOn } from './loads.ts';
import type { Proposal } from './proposal.ts';
import { isJoined, isLoose, postOf, type Tip, tipsFrom } from './wired.ts';

/**
 * From a source to its fuse, m, as drawn: with what a drawn length may be off it stays under the 0.45 m beyond which the
 * vehicle rule set stops; the plates do not yet hide each other.
 */
const FIRST_FUSE_M = [0.22, 0.26, 0.3];
const REUSE_FUSE_M = 0.32;
const BLOCK_M = [0.45, 0.55, 0.35, 0.7];
const BRANCH_FUSE_M = [0.25, 0.32];
const GROUND_M = [0.32, 0.42, 0.26];
const REUSE_GROUND_M = 0.9;
const REUSE_BLOCK_M = 100;

/**
 * What would feed all that is placed on a sheet and lacks a feed, in the order in which each part can stand. Empty where
 * nothing lacks a feed, where no source is placed, or where the sheet is not seen from above.
 */
export function proposeFeed(plan: Plan, sheetId: string, names: ProposedNames, newId: () => string): Proposal {
  const sheet = plan.sheets.find(({ id }) => id === sheetId);
  if (sheet === undefined || sheet.view !== 'above') return [];
  const sources = plan.fittings.filter((fitting) => fitting.sheetId === sheetId && postOf(fitting) !== null);
  const inlets = inletsOn(plan, sheetId).filter(({ supply }) => !isJoined(plan, supply));
  if (sources.length === 0 || inlets.length === 0) return [];
  const builder = new Builder(plan, sheet, names, newId);
  const primary = sources.find(isVehiclesOwn) ?? sources[0];
  if (primary === undefined) return [];
  const idle = sources.filter((source) => source !== primary && isIdle(plan, source));
  const hub = hubOf(builder, primary);
  const hubs = hub === null ? layFeeds(builder, primary, inlets, idle.length) : [hub];
  if (hub !== null) for (const inlet of inlets) branch(builder, hub, inlet);
  const [firstHub] = hubs;
  if (firstHub !== undefined) for (const source of idle) joinSource(builder, source, firstHub);
  for (const source of sources) groundSource(builder, source);
  for (const inlet of inletsOn(plan, sheetId)) groundInlet(builder, inlet);
  return builder.proposal;
}

const isVehiclesOwn = (fitting: Fitting): boolean => fitting.kind === 'battery' && fitting.strap !== null;

function isIdle(plan: Plan, source: Fitting): boolean {
  const post = postOf(source);
  return post !== null && !isJoined(plan, post);
}

/** A block or a bar that the source feeds already. */
function hubOf(builder: Builder, source: Fitting): TerminalRef | null {
  const post = postOf(source);
  const tips = post === null ? [] : tipsFrom(builder.plan, post);
  return tips.find(({ kind, fused }) => kind !== 'open' && fused)?.ref ?? null;
}

/** New feeds from a source; answers the blocks they lead to. */
function layFeeds(builder: Builder, source: Fitting, inlets: readonly Inlet[], others: number): TerminalRef[] {
  const hubs: TerminalRef[] = [];
  for (const [index, feed] of feedsOf(inlets).entries()) {
    const [only, ...more] = feed;
    if (only === undefined) continue;
    const joins = index === 0 ? others : 0;
    if (more.length === 0 && joins === 0) {
      const start = feedStart(builder, source, builder.at(only.supply));
      if (start !== null) builder.lead(start, only.supply, 'power', 'feeds');
      continue;
    }
    const hub = { fittingId: blockFor(builder, source, feed), terminal: 'bus' };
    const start = feedStart(builder, source, builder.at(hub));
    if (start === null) continue;
    builder.lead(start, hub, 'power', 'feeds');
    for (const inlet of feed) branch(builder, hub, inlet);
    hubs.push(hub);
  }
  return hubs;
}

/** Where a feed begins: an open end behind a fuse that is there already, else behind a fuse near the source's post. */
function feedStart(builder: Builder, source: Fitting, towards: Point): TerminalRef | null {
  const post = postOf(source);
  if (post === null) return null;
  const open = tipsFrom(builder.plan, post).find(({ kind }) => kind === 'open');
  if (open?.fused === true) return open.ref;
  return firstFuse(builder, open ?? { ref: post, kind: 'open', fused: false }, towards);
}

/** A fuse behind what is not protected yet; answers its far side. */
function firstFuse(builder: Builder, { ref }: Tip, towards: Point): TerminalRef {
  const from = builder.at(ref);
  const [standing] = builder
    .loose('fuse', from, REUSE_FUSE_M)
    .filter(({ at }) => builder.ground.side(at) === builder.ground.side(from));
  const fuseId =
    standing?.id ??
    builder.place('fuse', builder.spot({ from, radiiM: FIRST_FUSE_M, towards, sameZone: true }), { why: 'firstFuse' });
  builder.lead(ref, { fittingId: fuseId, terminal: 'in' }, 'power', 'firstFuse');
  return { fittingId: fuseId, terminal: 'out' };
}

/** The block of a feed: one that stands unused, else a new one on the near side of what it feeds. */
function blockFor(builder: Builder, source: Fitting, feed: readonly Inlet[]): string {
  const behind = feed.filter(({ supply }) => builder.ground.side(builder.at(supply)) === 1);
  const served = (behind.length * 2 >= feed.length ? behind : feed).map(({ supply }) => builder.at(supply));
  const middle = middleOf(served);
  const [standing] = builder.loose('block', middle, REUSE_BLOCK_M);
  if (standing !== undefined) return standing.id;
  const nearest = served.reduce(
    (best, at) => (distance(at, source.at) < distance(best, source.at) ? at : best),
    middle,
  );
  const towards = { xM: (nearest.xM + source.at.xM) / 2, yM: middle.yM };
  const from = served.length === 1 ? nearest : middle;
  const outputs = feed.map((_, index) => ({ terminal: `out${index + 1}`, link: autoLink() })).slice(0, 24);
  const at = builder.spot({ from, radiiM: BLOCK_M, towards, sameZone: true });
  return builder.place('block', at, { why: 'divides' }, (block) =>
    block.kind === 'block' ? { ...block, outputs } : block,
  );
}

const middleOf = (points: readonly Point[]): Point => ({
  xM: points.reduce((sum, { xM }) => sum + xM, 0) / points.length,
  yM: points.reduce((sum, { yM }) => sum + yM, 0) / points.length,
});

/** From a block to an input: by an output that is free, else by a fuse of its own on the bus. */
function branch(builder: Builder, hub: TerminalRef, { consumer, supply }: Inlet): void {
  const block = fittingById(builder.plan, hub.fittingId);
  const free = block?.kind === 'block' ? freeOutput(builder.plan, block) : undefined;
  if (free !== undefined) {
    builder.lead({ fittingId: hub.fittingId, terminal: free }, supply, 'power', 'feeds');
    return;
  }
  const [from, towards] = [builder.at(hub), builder.at(supply)];
  const at = builder.spot({ from, radiiM: BRANCH_FUSE_M, towards, sameZone: true });
  const fuseId = builder.place('fuse', at, { why: 'branchFuse', consumerId: consumer.id });
  builder.lead(hub, { fittingId: fuseId, terminal: 'in' }, 'power', 'branchFuse');
  builder.lead({ fittingId: fuseId, terminal: 'out' }, supply, 'power', 'feeds');
}

/** An output with a link that nothing is joined to. */
const freeOutput = (plan: Plan, { id, outputs }: FittingOf<'block'>): string | undefined =>
  outputs.find(({ terminal, link }) => link !== null && !isJoined(plan, { fittingId: id, terminal }))?.terminal;

/** Another source on the same block, with a fuse of its own. */
export function joinSource(builder: Builder, source: Fitting, hub: TerminalRef): void {
  const post = postOf(source);
  if (post === null) return;
  const start = firstFuse(builder, { ref: post, kind: 'open', fused: false }, builder.at(hub));
  builder.lead(start, hub, 'power', 'feeds');
}

/** A battery whose negative post is joined to nothing gets the way back beside it. */
export function groundSource(builder: Builder, source: Fitting): void {
  if (source.kind !== 'battery' || source.strap !== null) return;
  addGround(builder, { fittingId: source.id, terminal: 'negative' }, 'groundSource');
}

function groundInlet(builder: Builder, { ground }: Inlet): void {
  addGround(builder, ground, 'groundBeside');
}

function addGround(builder: Builder, from: TerminalRef, why: 'groundSource' | 'groundBeside'): void {
  const { plan } = builder;
  const isWired = plan.runs.some((run) =>
    [run.from, run.to].some(({ fittingId, terminal }) => fittingId === from.fittingId && terminal === from.terminal),
  );
  if (isWired) return;
  const at = builder.at(from);
  const [standing] = builder
    .loose('ground', at, REUSE_GROUND_M)
    .filter((fitting) => isLoose(plan, fitting) && builder.ground.side(fitting.at) === builder.ground.side(at));
  // away from the feed, towards the edge of the vehicle
  const { box } = builder.ground;
  const isNear = at.yM - box.minYM < box.maxYM - at.yM;
  const towards = { xM: at.xM + 0.3, yM: isNear ? box.minYM : box.maxYM };
  const id =
    standing?.id ??
    builder.place('ground', builder.spot({ from: at, radiiM: GROUND_M, towards, sameZone: true }), { why });
  builder.lead(from, { fittingId: id, terminal: 'body' }, 'ground', why);
}
