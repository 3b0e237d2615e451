import type { SourceId } from '../sources.ts';
import type { AwgSize } from './awg.ts';
import type { Material } from './materials.ts';

/** Largest outside diameter by nominal area, mm. */
type Diameters = ReadonlyMap<number, number>;

/** Thin wall. Source: ISO 6722 dimensions as declared on a cable data page; trust: published. [mm2, mm] */
export const THIN_WALL_OUTSIDE_MM: Diameters = new Map([
  [0.5, 1.6],
  [0.75, 1.9],
  [1, 2.1],
  [1.5, 2.4],
  [2.5, 3.0],
  [4, 3.7],
  [6, 4.3],
]);

/**
 * Thick wall, as feeds are made. Source: ISO 6722; trust: memory, little confidence. [mm2, mm]
 * (Of 16 mm2 the thin wall, 7.2 mm, was read; the thicker cable is the safe one for a hole.)
 */
export const THICK_WALL_OUTSIDE_MM: Diameters = new Map([
  [16, 8.3],
  [25, 10.4],
  [35, 11.6],
  [50, 13.5],
  [70, 15.5],
  [95, 18.0],
  [120, 19.7],
]);

/**
 * Nominal wall of battery and primary cable by gauge, mm. Source: SAE J1127 (SGT) from 8 up, J1128 (GPT) below;
 * trust: memory, little confidence. No published outside diameter of these was found.
 */
export const SAE_WALL_MM: Readonly<Record<AwgSize, number>> = {
  '20': 0.58,
  '18': 0.58,
  '16': 0.58,
  '14': 0.58,
  '12': 0.66,
  '10': 0.79,
  '8': 1.4,
  '6': 1.52,
  '4': 1.52,
  '3': 1.52,
  '2': 1.65,
  '1': 1.65,
  '1/0': 1.65,
  '2/0': 1.65,
  '3/0': 1.98,
  '4/0': 1.98,
};

/** Share of its circle that a bunch of fine strands fills. Common practice: 0.6 to 0.7; the lower gives the thicker cable. */
export const BUNCH_FILL = 0.6;

/** Density, kg/m3. Sources: NBS Handbook 100 (copper); data sheet after ASTM B566, 0.120 and 0.131 lb/in3 (clad). */
export const DENSITY_KG_PER_M3: Readonly<Record<Material, number>> = {
  copper: 8890,
  cca10: 3320,
  cca15: 3630,
  aluminium: 2703,
};

/** Where the densities come from. */
export const DENSITY_SOURCE: Readonly<Record<Material, SourceId>> = {
  copper: 'nbsHandbook100Density',
  cca10: 'astmB566Density',
  cca15: 'astmB566Density',
  aluminium: 'densityMemory',
};

/** PVC of cables, kg/m3; thermosets weigh less. From memory. */
export const SHEATH_KG_PER_M3 = 1400;

/**
 * Least radius of a bend over the outside diameter. nec: NEC 551.47(H), published; from memory: faa: FAA, bundles;
 * faaTerminal: FAA, one cable held at a terminal, the tightest that any rule allows.
 */
export const BEND_TIMES = { nec: 5, faa: 10, faaTerminal: 3 } as const;
