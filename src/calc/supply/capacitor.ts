import type { Cable } from '../conductor/tableCurrent.ts';
import { damageI2tA2s, recordDamageI2t } from '../fault/adiabatic.ts';
import { type Abouts, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

export interface CapacitorLoop {
  readonly farads: number;
  /** Voltage it is charged to, V. */
  readonly volts: number;
  /** The whole loop of the short, its own resistance included, ohm; above 0. */
  readonly loopOhm: number;
  readonly conductors: readonly {
    readonly cable: Cable;
    /** Conductor temperature when the short begins, degC; below what its insulation bears for a moment. */
    readonly startC: number;
  }[];
}

type Given = Abouts<'farads' | 'volts' | 'loopOhm' | 'startC'>;

function compute({ farads, volts, loopOhm, conductors }: CapacitorLoop, rec: Recorder, about: Given = {}): number {
  const withstand = ({ cable, startC }: CapacitorLoop['conductors'][number]): number => damageI2tA2s(cable, startC);
  const [first, ...others] = conductors;
  if (first === undefined || !(loopOhm > 0)) throw new RangeError('capacitor: a loop without conductor or resistance');
  const weakest = others.reduce((least, one) => (withstand(one) < withstand(least) ? one : least), first);
  const capacitance = rec.input('C', 'F', farads, about.farads);
  const charged = rec.input('V', 'V', volts, about.volts);
  const loop = rec.input('Rloop', 'ohm', loopOhm, about.loopOhm);
  const through = rec.step('I2t', 'A2s', 'C * V ^ 2 / (2 * Rloop)', (capacitance * charged ** 2) / (2 * loop), {
    source: 'capacitorEnergy',
  });
  const held = recordDamageI2t(weakest.cable, weakest.startC, rec, about);
  return rec.step('qCapacitor', '1', 'I2t / I2tDamage', through / held, { source: 'capacitorEnergy' });
}

/**
 * What a shorted capacitor drives through its loop, I2t = C V2 / (2 R), over what the weakest conductor there bears,
 * k2 S2 (`damageI2tA2s`). From 1 up it must be fused as a source. All the energy C V2 / 2 ends in the loop, each ohm takes its share,
 * and so a conductor of Rc gets C V2 / 2 x Rc / R: inductance changes the time, not the sum. Source: derived.
 * 1 F at 14.4 V, 5 mohm: 20 736 A2s, against (114.9 x 2.20)2 = 64 080 for 'mm2:2.5' from 70 degC: 0.32, none needed.
 * RangeError without a conductor or a resistance.
 */
export function capacitorFuseRatio(loop: CapacitorLoop): number {
  return compute(loop, NO_WHY);
}

/** Why of `capacitorFuseRatio`; the result is 'qCapacitor'. */
export function capacitorFuseWhy(loop: CapacitorLoop, about: Given = {}): Why {
  const builder = whyBuilder();
  compute(loop, builder, about);
  return builder.done('qCapacitor');
}

export interface RcCase {
  readonly farads: number;
  readonly ohm: number;
  /** Voltage across the resistor at first: supply less capacitor when it fills, the capacitor's when it empties, V. */
  readonly fromV: number;
  /** Voltage across the resistor at the end, V; above 0. */
  readonly toV: number;
}

function computeRc({ farads, ohm, fromV, toV }: RcCase, rec: Recorder, about: Abouts<keyof RcCase> = {}): number {
  if (!(toV > 0)) throw new RangeError('capacitor: it never gets all the way');
  const resistance = rec.input('R', 'ohm', ohm, about.ohm);
  const capacitance = rec.input('C', 'F', farads, about.farads);
  const from = rec.input('Vfrom', 'V', fromV, about.fromV);
  const to = rec.input('Vto', 'V', toV, about.toV);
  const time = Math.max(0, resistance * capacitance * Math.log(from / to));
  return rec.step('tRc', 's', 'max(0, R * C * log(Vfrom / Vto))', time, { source: 'rcCircuit' });
}

/**
 * How long a capacitor takes to fill or empty through a resistor, s: R C ln(from / to), over the voltage left across the
 * resistor. Pre-charge: from the supply's voltage down to what may jump when the fuse goes in. Bleed: from charged to safe.
 * RangeError unless toV > 0. 1 F through 30 ohm, 14.4 V until 0.72 V (5 %) are left: 89.9 s; 0.48 A and 6.9 W at first.
 */
export function rcTimeS(of: RcCase): number {
  return computeRc(of, NO_WHY);
}

/** Why of `rcTimeS`; the result is 'tRc'. */
export function rcTimeWhy(of: RcCase, about: Abouts<keyof RcCase> = {}): Why {
  const builder = whyBuilder();
  computeRc(of, builder, about);
  return builder.done('tRc');
}

/**
 * Current at the instant a capacitor is joined, A: the voltage between it and the supply / all resistance of the loop.
 * Source: Ohm's law. 12.6 V on an empty one over 5 mohm: 2520 A; over 30 ohm: 0.42 A.
 */
export function inrushA(volts: number, loopOhm: number): number {
  if (!(loopOhm > 0)) throw new RangeError('capacitor: a loop without resistance');
  return volts / loopOhm;
}

/**
 * Resistor that at the first instant takes no more than `peakW`, ohm: V2 / P. Source: Ohm's law.
 * 14.4 V and 7 W: 29.6 ohm; over the whole filling it takes C V2 / 2, 104 J for 1 F.
 */
export function prechargeOhm(volts: number, peakW: number): number {
  if (!(peakW > 0)) throw new RangeError('capacitor: a resistor that may take no power');
  return volts ** 2 / peakW;
}
