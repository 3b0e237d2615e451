/** The metric grid: which step is drawn, and which one is snapped to. */

/** Steps a ruler has, m. */
const STEPS_M = [0.001, 0.005, 0.01, 0.05, 0.1, 0.5, 1, 5, 10] as const;
/** Closer lines are a grey wash. */
const FINE_MIN_PX = 9;
/** A finger that aims through a loupe tells places apart that are nearer than that. */
const SNAP_MIN_PX = 8;
const BAR_MIN_PX = 56;

const stepOfAtLeast = (px: number, pxPerM: number): number => STEPS_M.find((step) => step * pxPerM >= px) ?? 10;

/** The step of the fine lines: at 200 px/m 5 cm, at 100 px/m 10 cm. */
export const gridStepM = (pxPerM: number): number => stepOfAtLeast(FINE_MIN_PX, pxPerM);

/** The step that is snapped to: that of the lines, or half of it where they are about to part. */
export const snapStepM = (pxPerM: number): number => stepOfAtLeast(SNAP_MIN_PX, pxPerM);

/** Every tenth or twentieth line stands out: the next larger step of a whole decade. */
export function coarseStepM(fineM: number): number {
  const decade = 10 ** (Math.floor(Math.log10(fineM) + 1e-9) + 1);
  return decade / fineM < 3 ? decade * 10 : decade;
}

/** Length of the scale bar: a ruler's step of a legible size, or half of it where that will do, so as to hide little. */
export function barStepM(pxPerM: number): number {
  const stepM = stepOfAtLeast(BAR_MIN_PX, pxPerM);
  return stepM * pxPerM < 2 * BAR_MIN_PX ? stepM : stepM / 2;
}

/** Coordinates of grid lines between two values, inclusive. */
export function linesBetween(fromM: number, toM: number, stepM: number): number[] {
  const first = Math.ceil(fromM / stepM - 1e-9);
  const last = Math.floor(toM / stepM + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * stepM);
}
