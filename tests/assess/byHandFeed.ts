/**
 * A feed, a block and its amplifiers judged apart from src: currents, temperatures, fuses and the rules of sections 3 to 5
 * written out again, over the published tables in the fixtures. Repeated substitution in place of a solver.
 */
import holder from '../fixtures/published/holderTemperature.json' with { type: 'json' };
import links from '../fixtures/published/iso8820Links.json' with { type: 'json' };
import sae from '../fixtures/published/saeJ1127.json' with { type: 'json' };
import { amps30, ohmPerM, strapOhm } from './byHand.ts';

export interface HandAmp {
  readonly ratedW: number;
  readonly branchM: number;
  readonly groundM: number;
  /** Its output of the block has a fuse. */
  readonly fused: boolean;
}

interface Cable {
  readonly size: string;
  readonly lengthM: number;
  readonly airC: number;
}

const REST_V = 12.6;
const EFFICIENCY = 0.8;
const SHARE = Math.sqrt(1 / 3);
const LIMIT_V = 0.36;
const CLASS_C = 105;
const BAY_C = 80;
const CABIN_C = 50;
const JOINT_OHM = 1e-4;
const BODY_OHM = 1e-3;
const LINK_V = 0.075;
/** Run to the main fuse, m. */
export const FIRST_M = 0.2;

/** Ratings of blade types C and E and of bolt-in SF30 and SF51, each once. */
const RATINGS = [
  ...new Set(links.rows.filter(({ family }) => !family.endsWith('-F')).flatMap((row) => row.ratingsA)),
].sort((one, other) => one - other);

/** Share of its rating that a link holds, between the points told of one of 40 A. */
function holds(airC: number): number {
  const above = holder.rows.findIndex(({ ambientC }) => ambientC >= airC);
  const [low, high] = [holder.rows[above - 1], holder.rows[above]];
  if (low === undefined || high === undefined) throw new Error(`no points about ${airC} degC`);
  const usableA = low.usableA + ((high.usableA - low.usableA) * (airC - low.ambientC)) / (high.ambientC - low.ambientC);
  return usableA / 40;
}

const need = (amps: number, airC: number): number => Math.max(amps, (amps * SHARE) / Math.min(0.8, holds(airC)));
const nextRating = (atLeast: number): number => RATINGS.find((rating) => rating >= atLeast) ?? Infinity;

const areaOf = (size: string): number => sae.rows.find((row) => row.sae === size)?.circularMils ?? Number.NaN;

const carries = ({ size, airC }: Cable): number =>
  amps30(size) * (airC === BAY_C ? 0.85 : Math.sqrt((CLASS_C - airC) / (CLASS_C - 30)));

/** Temperature under a current held, by repeated substitution into I^2 = I30^2 (Tx-Ta)/75 (234.5+105)/(234.5+Tx). */
function heldC({ size, airC }: Cable, amps: number): number {
  const ratio = (amps / amps30(size)) ** 2 * (75 / (234.5 + CLASS_C));
  let hot = airC;
  for (let count = 0; count < 60; count += 1) hot = airC + ratio * (234.5 + hot);
  return hot;
}

/** The same for music of that full current. */
const settledC = (cable: Cable, amps: number): number => heldC(cable, amps * SHARE);

const dropV = (cable: Cable, amps: number): number => amps * cable.lengthM * ohmPerM(cable.size, settledC(cable, amps));

interface Judged {
  readonly holds: boolean;
  readonly mainA: number;
  readonly fullA: number;
  /** Over the cables on the way of each amplifier, V. */
  readonly cablesV: readonly number[];
}

/** Judges one set of sizes: the feed's, `bayM` of it in the bay, and one for each amplifier's branch and ground. */
export function judgeByHand(
  feedM: number,
  amps: readonly HandAmp[],
  feedSize: string,
  sizes: readonly string[],
  bayM = FIRST_M,
): Judged {
  const feed: Cable[] = [
    { size: feedSize, lengthM: bayM, airC: BAY_C },
    { size: feedSize, lengthM: feedM, airC: CABIN_C },
  ];
  const branches = amps.map(({ branchM, groundM }, index): Cable[] =>
    [branchM, groundM].map((lengthM) => ({ size: sizes[index] ?? '', lengthM, airC: CABIN_C })),
  );
  let drawn = amps.map(({ ratedW }) => ratedW / EFFICIENCY / REST_V);
  const sum = (list: readonly number[]): number => list.reduce((total, one) => total + one, 0);
  let mainA = nextRating(need(sum(drawn), BAY_C));
  let branchA = amps.map(({ fused }, index) => (fused ? nextRating(need(drawn[index] ?? 0, CABIN_C)) : Infinity));
  for (;;) {
    for (let count = 0; count < 40; count += 1) {
      const total = sum(drawn);
      // joints: 2 + 2 at the first run, 2 + 1 at the feed; 1 + 1 and 1 + 2 at each branch and ground
      const sharedV =
        sum(feed.map((cable) => dropV(cable, total))) + total * (7 * JOINT_OHM + strapOhm(0.4) + LINK_V / mainA);
      drawn = amps.map(({ ratedW }, index) => {
        const own = drawn[index] ?? 0;
        const ownV =
          sum((branches[index] ?? []).map((cable) => dropV(cable, own))) +
          own * (5 * JOINT_OHM + BODY_OHM + LINK_V / (branchA[index] ?? Infinity));
        // a set that loses half of it is out in any case
        return ratedW / EFFICIENCY / Math.max(REST_V / 2, REST_V - sharedV - ownV);
      });
    }
    const before = [mainA, ...branchA].join();
    if (mainA < need(sum(drawn), BAY_C)) mainA = nextRating(mainA + 1e-6);
    branchA = branchA.map((rating, index) =>
      rating < need(drawn[index] ?? 0, CABIN_C) ? nextRating(rating + 1e-6) : rating,
    );
    if (before === [mainA, ...branchA].join()) break;
  }
  const total = sum(drawn);
  const feedV = sum(feed.map((cable) => dropV(cable, total)));
  const cablesV = branches.map((own, index) => feedV + sum(own.map((cable) => dropV(cable, drawn[index] ?? 0))));
  const isSound = (cable: Cable, fuseA: number, fullA: number): boolean =>
    fuseA <= carries(cable) &&
    fullA * SHARE <= carries(cable) &&
    settledC(cable, fullA) <= CLASS_C &&
    // in the bay: what no fuse need end in six hours
    (cable.airC !== BAY_C || heldC(cable, 1.35 * fuseA) <= CLASS_C + 50);
  return {
    holds:
      cablesV.every((volts) => volts <= LIMIT_V) &&
      feed.every((cable) => isSound(cable, mainA, total)) &&
      branches.every((own, index) =>
        own.every((cable) => isSound(cable, Math.min(mainA, branchA[index] ?? Infinity), drawn[index] ?? 0)),
      ),
    mainA,
    fullA: total,
    cablesV,
  };
}

export interface Least {
  readonly feed: string;
  readonly branches: readonly string[];
  /** m x circular mils. */
  readonly metal: number;
}

/** Of every set of sizes, the one of least metal that holds; null when none does. */
export function leastByHand(
  feedM: number,
  amps: readonly HandAmp[],
  stock: readonly string[],
  bayM = FIRST_M,
): Least | null {
  let best: Least | null = null;
  const rest = (picked: readonly string[], feed: string, metal: number): void => {
    if (best !== null && metal >= best.metal) return;
    const next = amps[picked.length];
    if (next === undefined) {
      if (judgeByHand(feedM, amps, feed, picked, bayM).holds) best = { feed, branches: picked, metal };
      return;
    }
    for (const size of stock) rest([...picked, size], feed, metal + (next.branchM + next.groundM) * areaOf(size));
  };
  for (const feed of stock) rest([], feed, (bayM + feedM) * areaOf(feed));
  return best;
}
