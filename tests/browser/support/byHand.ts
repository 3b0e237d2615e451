/**
 * The answer to the plan of `route.ts`, worked out from its lengths and the published tables by the definitions of our
 * rules (sections 2 to 6): a battery, one feed to a block, two fused branches, each amplifier grounded by itself.
 * Written apart from the page, by its own ways: temperatures by halving, currents by repetition, sizes by trying all.
 */
import {
  areaMm2,
  CLASS5_25MM2_OHM_PER_M,
  COPPER_BETA_C,
  ENGINE_SPACE_FACTOR,
  ISO8820_RATINGS_A,
  LINK_40A_USABLE,
  LINK_DROP_V,
  ohmPerM,
  type Size,
  STOCK,
  TABLE5_AIR_C,
  table5A,
} from './publishedTables.ts';

/** Defaults of our rules, sections 1 to 4. */
const CLASS_C = 105;
const AIR_C = { bay: 80, cabin: 50, cargo: 50 } as const;
const REST_V = 12.6;
const SYSTEM_V = 12;
const DROP_LIMIT = 0.03;
const DUTY = 1 / 3;
const EFFICIENCY = { D: 0.8, AB: 0.55 } as const;
const BODY_OHM = 0.001;
const JOINT_OHM = 0.0001;
const CONTINUOUS = 0.8;
/** The factory strap: 0.4 m of 25 mm2, warm. */
const STRAP_OHM = (0.4 * CLASS5_25MM2_OHM_PER_M * (COPPER_BETA_C + 50)) / (COPPER_BETA_C + 20);

type Air = keyof typeof AIR_C;

/** A piece of cable in one kind of surroundings. */
export interface Piece {
  readonly air: Air;
  readonly lengthM: number;
}

interface Branch {
  readonly ratedW: number;
  readonly ampClass: keyof typeof EFFICIENCY;
  readonly feed: readonly Piece[];
  readonly ground: readonly Piece[];
}

export interface Route {
  /** From the battery through the main fuse and the pass-through to the block. */
  readonly trunk: readonly Piece[];
  readonly branches: readonly Branch[];
}

export interface Answer {
  readonly trunk: { readonly size: Size; readonly fullA: number; readonly fuseA: number; readonly dropV: number };
  readonly branches: readonly {
    readonly size: Size;
    readonly fullA: number;
    readonly fuseA: number;
    /** Cables there and back, from the posts to this amplifier. */
    readonly cablesV: number;
    /** With the battery's own resistance. */
    readonly terminalV: number;
  }[];
}

/** Currents that have not settled by then never do: the cables are far too thin. */
const MOST_ROUNDS = 200;

/** Lugs are crimped and bolted, two joints an end; a clamp on bare strands is one (common practice). */
const LUG = 2;
const CLAMP = 1;
/** Battery and fuse, fuse and block: three lugged ends and a clamp; the pass-through cuts nothing. */
const TRUNK_JOINTS_OHM = (3 * LUG + CLAMP) * JOINT_OHM;
const BRANCH_JOINTS_OHM = 2 * CLAMP * JOINT_OHM;
const GROUND_JOINTS_OHM = (CLAMP + LUG) * JOINT_OHM;

/** Our rules, section 4: I^2 = Itable^2 (Tx - Ta)/(Tr - 30) x (234.5 + Tr)/(234.5 + Tx), solved for Tx by halving. */
function conductorC(size: Size, heatingA: number, airC: number): number {
  const carries = (atC: number): number =>
    table5A(size) ** 2 *
    ((atC - airC) / (CLASS_C - TABLE5_AIR_C)) *
    ((COPPER_BETA_C + CLASS_C) / (COPPER_BETA_C + atC));
  let [low, high] = [airC, 1_000];
  for (let count = 0; count < 60; count += 1) {
    const middle = (low + high) / 2;
    if (carries(middle) < heatingA ** 2) low = middle;
    else high = middle;
  }
  return low;
}

/** Our rules, section 4: table 5 x the engine space factor in the bay, elsewhere x min(1, sqrt((Tr - Ta)/(Tr - 30))). */
function ampacityA(size: Size, pieces: readonly Piece[]): number {
  const factors = pieces.map(({ air }) =>
    air === 'bay' ? ENGINE_SPACE_FACTOR : Math.min(1, Math.sqrt((CLASS_C - AIR_C[air]) / (CLASS_C - TABLE5_AIR_C))),
  );
  return table5A(size) * Math.min(...factors);
}

function cableOhm(size: Size, fullA: number, pieces: readonly Piece[]): number {
  return pieces.reduce(
    (ohm, { air, lengthM }) => ohm + lengthM * ohmPerM(size, conductorC(size, fullA * Math.sqrt(DUTY), AIR_C[air])),
    0,
  );
}

/** Our rules, section 5: the smallest rating that is no smaller than full current and heating current / min(0.8, f). */
function fuseA(fullA: number, holder: Air): number | null {
  const holderC = AIR_C[holder];
  const next = LINK_40A_USABLE.findIndex(([atC]) => atC >= holderC);
  const [lowC, lowA] = LINK_40A_USABLE[next - 1] ?? LINK_40A_USABLE[0];
  const [highC, highA] = LINK_40A_USABLE[next] ?? LINK_40A_USABLE[0];
  const factor = (lowA + ((highA - lowA) * (holderC - lowC)) / (highC - lowC)) / 40;
  const least = Math.max(fullA, (fullA * Math.sqrt(DUTY)) / Math.min(CONTINUOUS, factor));
  return ISO8820_RATINGS_A.find((held) => held >= least) ?? null;
}

/** Our rules, section 8: a warm lead-acid battery, (12.6 - 7.2) V over its cranking amperes (SAE J537), 0.45 of that. */
const BATTERY_OHM = (0.45 * (12.6 - 7.2)) / 600;

/** Volts that each branch is left with, by rounds of current and volts, behind the battery's own resistance as well. */
function behindBattery(watts: readonly number[], sharedOhm: number, ownOhms: readonly number[]): number[] {
  let volts = watts.map(() => REST_V);
  for (let count = 0; count < MOST_ROUNDS; count += 1) {
    const amps = watts.map((power, index) => power / (volts[index] ?? 1));
    const sharedV = amps.reduce((sum, branchA) => sum + branchA, 0) * (BATTERY_OHM + sharedOhm);
    volts = amps.map((branchA, index) => REST_V - sharedV - branchA * (ownOhms[index] ?? 0));
  }
  return volts;
}

/**
 * Currents, drops and fuses with these sizes, at rest: the worse state for amplifiers that draw constant power. Null
 * when the cables cannot carry that power, or no link is large enough.
 */
function operatingPoint({ trunk, branches }: Route, trunkSize: Size, branchSizes: readonly Size[]): Answer | null {
  let terminalV = branches.map(() => REST_V);
  for (let count = 0; ; count += 1) {
    const amps = branches.map(({ ratedW, ampClass }, index) => ratedW / EFFICIENCY[ampClass] / (terminalV[index] ?? 1));
    const trunkA = amps.reduce((sum, branchA) => sum + branchA, 0);
    const trunkFuseA = fuseA(trunkA, 'bay');
    const branchFuses = amps.flatMap((branchA) => fuseA(branchA, 'cargo') ?? []);
    const isCarried = terminalV.every((volts) => volts > REST_V / 2);
    if (trunkFuseA === null || branchFuses.length < branches.length || !isCarried) return null;
    const trunkCableV = trunkA * cableOhm(trunkSize, trunkA, trunk);
    const sharedV = trunkCableV + trunkA * (TRUNK_JOINTS_OHM + LINK_DROP_V / trunkFuseA + STRAP_OHM);
    const told = branches.map(({ feed, ground }, index) => {
      const size = branchSizes[index] ?? '4/0';
      const branchA = amps[index] ?? 0;
      const branchFuseA = branchFuses[index] ?? 0;
      const ownCablesV = branchA * (cableOhm(size, branchA, feed) + cableOhm(size, branchA, ground));
      const ownV =
        ownCablesV + branchA * (BRANCH_JOINTS_OHM + GROUND_JOINTS_OHM + BODY_OHM + LINK_DROP_V / branchFuseA);
      return {
        size,
        fullA: branchA,
        fuseA: branchFuseA,
        cablesV: trunkCableV + ownCablesV,
        terminalV: REST_V - sharedV - ownV,
        ownOhm: ownV / branchA,
      };
    });
    const moved = Math.max(...told.map((branch, index) => Math.abs(branch.terminalV - (terminalV[index] ?? 0))));
    terminalV = told.map((branch) => branch.terminalV);
    if (moved < 1e-9) {
      const watts = branches.map(({ ratedW, ampClass }) => ratedW / EFFICIENCY[ampClass]);
      const ownOhms = told.map(({ ownOhm }) => ownOhm);
      const real = behindBattery(watts, sharedV / trunkA, ownOhms);
      return {
        trunk: { size: trunkSize, fullA: trunkA, fuseA: trunkFuseA, dropV: trunkCableV },
        branches: told.map((branch, index) => ({ ...branch, terminalV: real[index] ?? 0 })),
      };
    }
    if (count > MOST_ROUNDS) return null;
  }
}

/** Our rules, sections 3 to 5: drop within 3 % of 12 V, every fuse within what its conductors carry, none too hot. */
function keepsTheRules(route: Route, answer: Answer): boolean {
  const isSound = (size: Size, fullA: number, fuse: number, pieces: readonly Piece[]): boolean => {
    const heatingA = fullA * Math.sqrt(DUTY);
    return (
      fuse <= ampacityA(size, pieces) &&
      heatingA <= ampacityA(size, pieces) &&
      pieces.every(({ air }) => conductorC(size, heatingA, AIR_C[air]) <= CLASS_C)
    );
  };
  const { trunk } = answer;
  return (
    isSound(trunk.size, trunk.fullA, trunk.fuseA, route.trunk) &&
    answer.branches.every(({ size, fullA, fuseA: fuse, cablesV }, index) => {
      const pieces = [...(route.branches[index]?.feed ?? []), ...(route.branches[index]?.ground ?? [])];
      return cablesV <= DROP_LIMIT * SYSTEM_V && isSound(size, fullA, fuse, pieces);
    })
  );
}

const lengthOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, { lengthM }) => sum + lengthM, 0);

/** Copper of a set of sizes, m x mm2. */
const copperOf = (route: Route, { trunk, branches }: Answer): number =>
  lengthOf(route.trunk) * areaMm2(trunk.size) +
  route.branches.reduce(
    (sum, { feed, ground }, index) =>
      sum + (lengthOf(feed) + lengthOf(ground)) * areaMm2(branches[index]?.size ?? '4/0'),
    0,
  );

/** Every set of stocked sizes that keeps the rules, least copper first; an amplifier's ground is as thick as its feed. */
function soundAnswers(route: Route): Answer[] {
  const [, second] = route.branches;
  const others = second === undefined ? [[]] : STOCK.map((size) => [size]);
  const all = STOCK.flatMap((trunk) =>
    STOCK.flatMap((first) => others.flatMap((rest) => operatingPoint(route, trunk, [first, ...rest]) ?? [])),
  );
  return all
    .filter((answer) => keepsTheRules(route, answer))
    .sort((one, other) => copperOf(route, one) - copperOf(route, other));
}

/** The answer: of all sets that keep the rules, the one with the least copper. */
export function answerByHand(route: Route): Answer {
  const [least] = soundAnswers(route);
  if (least === undefined) throw new Error('No set of stocked sizes keeps the rules.');
  return least;
}
