/**
 * The plan that the touch test draws and the keyboard test types: where everything stands, what joins what, and the
 * lengths that follow by Pythagoras. Metres from the nose and from the vehicle's right side, all on the grid.
 */
import type { Piece, Route } from './byHand.ts';

export interface At {
  readonly xM: number;
  readonly yM: number;
}

/** The panel van as the page offers it. */
export const FIREWALL_X_M = 1;
const PARTITION_X_M = 2.5;

/** Kinds as the page's shelf and list call them. */
export type Kind = 'Battery' | 'Fuse' | 'Pass-through' | 'Distribution block' | 'Amplifier' | 'Ground point';

export interface Placed {
  readonly kind: Kind;
  /** The name that the page gives it. */
  readonly name: string;
  readonly at: At;
}

/** In the order of placing, which is the order of the list and of the saved plan. */
export const FITTINGS = [
  { kind: 'Battery', name: 'Battery', at: { xM: 0.4, yM: 1.4 } },
  { kind: 'Fuse', name: 'Main fuse', at: { xM: 0.55, yM: 1.2 } },
  { kind: 'Pass-through', name: 'Pass-through', at: { xM: FIREWALL_X_M, yM: 0.6 } },
  { kind: 'Distribution block', name: 'Distribution block', at: { xM: 2.7, yM: 0.2 } },
  { kind: 'Amplifier', name: 'Amplifier', at: { xM: 3.5, yM: 0.8 } },
  { kind: 'Amplifier', name: 'Amplifier 2', at: { xM: 3.2, yM: 1.4 } },
  { kind: 'Ground point', name: 'Ground point', at: { xM: 3.8, yM: 0.4 } },
  { kind: 'Ground point', name: 'Ground point 2', at: { xM: 2.8, yM: 1.7 } },
] as const satisfies readonly Placed[];

export type FittingName = (typeof FITTINGS)[number]['name'];

/** An end of a run; the terminal as the page calls it, where the fitting has several to choose from. */
export interface End {
  readonly fitting: FittingName;
  readonly terminal: string;
}

export interface Joined {
  readonly from: End;
  readonly to: End;
  readonly bends: readonly At[];
}

const end = (fitting: FittingName, terminal: string): End => ({ fitting, terminal });

/** In the order of drawing. */
export const RUNS = [
  { from: end('Battery', 'positive'), to: end('Main fuse', 'in'), bends: [] },
  { from: end('Main fuse', 'out'), to: end('Pass-through', 'through'), bends: [] },
  {
    from: end('Pass-through', 'through'),
    to: end('Distribution block', 'bus'),
    bends: [{ xM: 1.3, yM: 0.2 }],
  },
  { from: end('Distribution block', 'output 1'), to: end('Amplifier', 'supply'), bends: [] },
  { from: end('Distribution block', 'output 2'), to: end('Amplifier 2', 'supply'), bends: [] },
  { from: end('Amplifier', 'ground'), to: end('Ground point', 'body'), bends: [] },
  { from: end('Amplifier 2', 'ground'), to: end('Ground point 2', 'body'), bends: [] },
] as const satisfies readonly Joined[];

/** What is told about the amplifiers. */
export const AMPLIFIERS = [
  { name: 'Amplifier', ratedW: 1000, ampClass: 'D' },
  { name: 'Amplifier 2', ratedW: 240, ampClass: 'AB' },
] as const;

export const placeOf = (name: FittingName): At => {
  const found = FITTINGS.find((fitting) => fitting.name === name);
  if (found === undefined) throw new Error(`The route has no ${name}.`);
  return found.at;
};

const straightM = (a: At, b: At): number => Math.hypot(b.xM - a.xM, b.yM - a.yM);

export function lengthM({ from, to, bends }: Joined): number {
  const line = [placeOf(from.fitting), ...bends, placeOf(to.fitting)];
  return line.slice(1).reduce((sum, point, index) => sum + straightM(line[index] ?? point, point), 0);
}

/** A straight piece of a run cut at the firewall and at the partition. */
function pieces(a: At, b: At): Piece[] {
  const airs = [
    { air: 'bay', fromXM: -Infinity, toXM: FIREWALL_X_M },
    { air: 'cabin', fromXM: FIREWALL_X_M, toXM: PARTITION_X_M },
    { air: 'cargo', fromXM: PARTITION_X_M, toXM: Infinity },
  ] as const;
  const [left, right] = [Math.min(a.xM, b.xM), Math.max(a.xM, b.xM)];
  return airs.flatMap(({ air, fromXM, toXM }) => {
    const overlapM = Math.min(right, toXM) - Math.max(left, fromXM);
    const share = right === left ? Number(left > fromXM && left <= toXM) : overlapM / (right - left);
    return share > 0 ? [{ air, lengthM: share * straightM(a, b) }] : [];
  });
}

function piecesOf({ from, to, bends }: Joined): Piece[] {
  const line = [placeOf(from.fitting), ...bends, placeOf(to.fitting)];
  return line.slice(1).flatMap((point, index) => pieces(line[index] ?? point, point));
}

const [BATTERY_FUSE, FUSE_PASS, PASS_BLOCK, BRANCH_1, BRANCH_2, GROUND_1, GROUND_2] = RUNS;

/** The same, as the arithmetic wants it. */
export const ROUTE: Route = {
  trunk: [...piecesOf(BATTERY_FUSE), ...piecesOf(FUSE_PASS), ...piecesOf(PASS_BLOCK)],
  branches: [
    { ratedW: AMPLIFIERS[0].ratedW, ampClass: 'D', feed: piecesOf(BRANCH_1), ground: piecesOf(GROUND_1) },
    { ratedW: AMPLIFIERS[1].ratedW, ampClass: 'AB', feed: piecesOf(BRANCH_2), ground: piecesOf(GROUND_2) },
  ],
};

/** From the battery's post to the first fuse: what nothing protects. 3, 4, 5: 15 cm, 20 cm, 25 cm. */
export const UNPROTECTED_M = lengthM(BATTERY_FUSE);
