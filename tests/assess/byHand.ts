/**
 * Figures worked out apart from src: the published tables read from their fixtures, the formulas of the rules written
 * out again, equations solved by halving an interval rather than in closed form.
 */
import table5 from '../fixtures/published/cfr183425Table5.json' with { type: 'json' };
import sae from '../fixtures/published/saeJ1127.json' with { type: 'json' };

const M2_PER_CIRCULAR_MIL = (Math.PI / 4) * 25.4e-6 ** 2;

/** Zero of a function that falls from `low` to `high`. */
function falling(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let count = 0; count < 200; count += 1) {
    const middle = (a + b) / 2;
    if (f(middle) > 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** SAE J1127 minimum circular mils of a size, as m2. '4': 37360 circular mils, 18.93e-6 m2. */
function saeM2(size: string): number {
  const row = sae.rows.find((candidate) => candidate.sae === size);
  if (row === undefined) throw new Error(`no SAE size ${size}`);
  return row.circularMils * M2_PER_CIRCULAR_MIL;
}

/** AWG area, ASTM B258: d = 0.005 in x 92^((36-n)/39). */
function awgM2(size: string): number {
  const number = size.endsWith('/0') ? 1 - Number(size[0]) : Number(size);
  return (Math.PI / 4) * (0.005 * 0.0254 * 92 ** ((36 - number) / 39)) ** 2;
}

/** Copper: 1.7241e-8 ohm m at 20 degC, 2 % for the lay of the strands, zero at -234.5 degC. */
export const ohmPerM = (size: string, conductorC: number): number =>
  ((1.02 * 1.7241e-8) / saeM2(size)) * ((234.5 + conductorC) / (234.5 + 20));

/** 33 CFR 183.425 Table 5 at 105 degC, carried to the SAE area by the square root. */
export function amps30(size: string, insulationC = 105): number {
  const row = table5.rows.find(({ awg }) => awg === size);
  const column = table5.classesC.indexOf(insulationC);
  const amps = row?.amps[column];
  if (amps === undefined) throw new Error(`no row of ${size}`);
  return amps * Math.sqrt(saeM2(size) / awgM2(size));
}

/** Ampacity at 105 degC: 0.85 in the bay (note 1), sqrt((Tr-Ta)/(Tr-30)) at 50 degC elsewhere. */
export const ampacity = (size: string, zone: 'bay' | 'cabin'): number =>
  amps30(size) * (zone === 'bay' ? 0.85 : Math.sqrt((105 - 50) / (105 - 30)));

/** Where I^2 = I30^2 (Tx-Ta)/(Tr-30) (234.5+Tr)/(234.5+Tx) holds, degC. */
const settled = (amps: number, size: string, ambientC: number): number =>
  falling(
    (hot) => amps ** 2 - ((amps30(size) ** 2 * (hot - ambientC)) / 75) * ((234.5 + 105) / (234.5 + hot)),
    ambientC,
    1000,
  );

/** A cable of the way: its size, length, and the air round it. */
interface Piece {
  readonly size: string;
  readonly lengthM: number;
  readonly ambientC: number;
}

/** Ohms of a piece that carries `fullA` of music at duty 1/3: its temperature is that of full x sqrt(1/3). */
const pieceOhm = ({ size, lengthM, ambientC }: Piece, fullA: number): number =>
  lengthM * ohmPerM(size, settled(fullA * Math.sqrt(1 / 3), size, ambientC));

interface ByHand {
  readonly fullA: number;
  readonly terminalV: number;
  readonly cablesV: number;
}

/** One amplifier of constant power behind a row of pieces and other ohms; halving on its own voltage. */
export function oneAmplifier(watts: number, volts: number, pieces: readonly Piece[], otherOhm: number): ByHand {
  const cables = (amps: number): number => pieces.reduce((sum, piece) => sum + amps * pieceOhm(piece, amps), 0);
  const terminalV = falling((v) => volts - cables(watts / v) - (watts / v) * otherOhm - v, volts * 0.6, volts);
  const fullA = watts / terminalV;
  return { fullA, terminalV, cablesV: cables(fullA) };
}

/** Copper strap of 25 mm2, IEC 60228 class 5 (0.780 ohm per km at 20 degC), at 50 degC. */
export const strapOhm = (lengthM: number): number => 0.00078 * lengthM * ((234.5 + 50) / (234.5 + 20));

/**
 * Temperature of a conductor of copper under a constant current, by small steps in time: heat of 3.45e6 J/(m3 K) in the
 * metal and its 2 % of lay, and what the table's current makes at 105 degC shed over the 75 K that it takes there.
 */
export function heated(amps: number, seconds: number, size: string, startC: number, airC: number): number {
  const capacity = 3.45e6 * 1.02 * saeM2(size);
  const shedPerK = (amps30(size) ** 2 * ohmPerM(size, 105)) / 75;
  const steps = 20_000;
  let hotC = startC;
  for (let step = 0; step < steps; step += 1) {
    const rise = (at: number): number => (amps ** 2 * ohmPerM(size, at) - shedPerK * (at - airC)) / capacity;
    const half = hotC + (rise(hotC) * seconds) / steps / 2;
    hotC += (rise(half) * seconds) / steps;
  }
  return hotC;
}
