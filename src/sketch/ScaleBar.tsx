import type { Units } from '../words/index.ts';
import { barStepM } from './grid.ts';

const MM_PER_INCH = 25.4;
/** Rulers of the other system, m: 1/2, 1, 2, 4 and 6 in, then 1, 2, 4 and 6 ft. */
const FEET_STEPS_M = [0.5, 1, 2, 4, 6, 12, 24, 48, 72].map((inches) => (inches * MM_PER_INCH) / 1000);
const BAR_MIN_PX = 56;

/** How long a piece of the sheet is in reality. */
export function ScaleBar(props: { pxPerM: number; scale: number; isFeet: boolean; units: Units }) {
  const { pxPerM, scale, isFeet, units } = props;
  const perTrueM = pxPerM / scale;
  const lengthM = isFeet ? (FEET_STEPS_M.find((step) => step * perTrueM >= BAR_MIN_PX) ?? 2) : barStepM(perTrueM);
  return (
    <div className="sketch-scale" aria-hidden="true">
      <span className="sketch-scale-bar" style={{ width: lengthM * perTrueM }} />
      {units.length(lengthM)}
    </div>
  );
}
