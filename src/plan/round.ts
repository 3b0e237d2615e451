import type { Fitting, Input, Point, Run, Sheet } from './schema.ts';

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

export function roundSheet(sheet: Sheet): Sheet {
  const { outline } = sheet;
  const lengthM = roundM(outline.lengthM);
  const widthM = roundM(outline.widthM);
  if (outline.kind === 'bench') return { ...sheet, outline: { ...outline, lengthM, widthM } };
  const [bayM, cabM] = [roundM(outline.bayM), roundM(outline.cabM)];
  return { ...sheet, outline: { ...outline, lengthM, widthM, bayM, cabM } };
}
