import type { Fitting, Input, Outline, Point, Run, Sheet } from './schema.ts';

/** Coordinates and lengths are kept to 0.1 mm: what a tape shows, and equal plans are equal bytes. */
const STEPS_PER_M = 10_000;

/** To 0.1 mm; never -0, which a file cannot tell from 0. 1.23456 is 1.2346. */
export const roundM = (lengthM: number): number => Math.round(lengthM * STEPS_PER_M) / STEPS_PER_M + 0;

export const roundPoint = ({ xM, yM }: { readonly xM: number; readonly yM: number }): Point => ({
  xM: roundM(xM),
  yM: roundM(yM),
});

export function roundFitting(fitting: Fitting): Fitting {
  const at = roundPoint(fitting.at);
  switch (fitting.kind) {
    case 'battery':
      return fitting.strap === null ? { ...fitting, at } : { ...fitting, at, strap: roundCable(fitting.strap) };
    case 'jumpPost':
    case 'takeOff':
      return { ...fitting, at, cable: roundCable(fitting.cable) };
    case 'continuation':
      return { ...fitting, at, other: { ...fitting.other, at: roundPoint(fitting.other.at) } };
    case 'reducer':
      return { ...roundCable(fitting), at };
    default:
      return { ...fitting, at };
  }
}

const roundCable = <C extends { lengthM: Input<number> }>(cable: C): C => ({
  ...cable,
  lengthM: { ...cable.lengthM, value: roundM(cable.lengthM.value) },
});

export const roundRun = (run: Run): Run => ({
  ...run,
  bends: run.bends.map(roundPoint),
  riseM: roundM(run.riseM),
  tapedM: run.tapedM === null ? null : roundM(run.tapedM),
});

export const roundSheet = (sheet: Sheet): Sheet => ({ ...sheet, outline: roundOutline(sheet.outline) });

function roundOutline(outline: Outline): Outline {
  const size = { lengthM: roundM(outline.lengthM), widthM: roundM(outline.widthM) };
  switch (outline.kind) {
    case 'bench':
      return { ...outline, ...size };
    case 'own': {
      const { bayM, cabM } = outline;
      return {
        ...outline,
        ...size,
        heightM: roundM(outline.heightM),
        edge: outline.edge.map(roundPoint),
        bayM: bayM === null ? null : roundM(bayM),
        cabM: cabM === null ? null : roundM(cabM),
      };
    }
    case 'vehicle':
      return {
        ...outline,
        ...size,
        heightM: roundM(outline.heightM),
        frontAxleM: roundM(outline.frontAxleM),
        wheelbaseM: roundM(outline.wheelbaseM),
        bayM: roundM(outline.bayM),
        cabM: roundM(outline.cabM),
        sillM: roundM(outline.sillM),
      };
  }
}
