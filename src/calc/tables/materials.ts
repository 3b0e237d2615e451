import type { SourceId } from '../sources.ts';

/** What the strands are made of. cca10 and cca15: copper-clad aluminium with 10 and 15 % copper by volume. */
export const MATERIALS = ['copper', 'cca10', 'cca15', 'aluminium'] as const;
export type Material = (typeof MATERIALS)[number];

interface MaterialFigures {
  /** Conductivity as a share of annealed copper (IACS); the least the standard allows for clad wire. */
  readonly conductivity: number;
  readonly conductivitySource: SourceId;
  /** degC below zero at which resistance, drawn on as a straight line, would vanish. */
  readonly betaC: number;
  readonly betaSource: SourceId;
  /** Ampacity against copper of the same area, rounded down to three figures of sqrt(conductivity). */
  readonly ampacityFactor: number;
}

/** Resistivity of annealed copper at 20 degC, ohm m. Source: NBS Handbook 100 (100 % IACS), trust: published. */
export const COPPER_RHO20_OHM_M = 1.7241e-8;

/** Sources and trust: see each row's ids. Clad wire warms as aluminium does; the copper skin is thin. */
export const MATERIAL_FIGURES: Readonly<Record<Material, MaterialFigures>> = {
  copper: {
    conductivity: 1,
    conductivitySource: 'nbsHandbook100',
    betaC: 234.5,
    betaSource: 'copperTemperature',
    ampacityFactor: 1,
  },
  cca10: {
    conductivity: 0.629,
    conductivitySource: 'astmB566',
    betaC: 228,
    betaSource: 'iec60949',
    ampacityFactor: 0.793,
  },
  cca15: {
    conductivity: 0.644,
    conductivitySource: 'astmB566',
    betaC: 228,
    betaSource: 'iec60949',
    ampacityFactor: 0.802,
  },
  aluminium: {
    conductivity: 0.61,
    conductivitySource: 'aluminium1350',
    betaC: 228,
    betaSource: 'iec60949',
    ampacityFactor: 0.781,
  },
};
