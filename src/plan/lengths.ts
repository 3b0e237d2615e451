import { roundM } from './round.ts';

/** No taped length is shorter: the schema's bound. */
const LEAST_TAPED_M = 0.001;

/** The share of a whole that the first of two drawn lengths makes; half when neither has a length. */
export const shareOf = (firstM: number, secondM: number): number =>
  firstM + secondM > 0 ? firstM / (firstM + secondM) : 0.5;

/** A length in two parts, to 0.1 mm, that add up to it again. 3.9 m at a share of 1/3: 1.3 and 2.6. */
export function splitLength(lengthM: number, share: number): [firstM: number, secondM: number] {
  const firstM = roundM(lengthM * share);
  return [firstM, roundM(lengthM - firstM)];
}

/** The same for a taped length, neither part of which may vanish. */
export function splitTaped(tapedM: number, share: number): [firstM: number, secondM: number] {
  const most = Math.max(LEAST_TAPED_M, roundM(tapedM - LEAST_TAPED_M));
  const firstM = Math.min(most, Math.max(LEAST_TAPED_M, roundM(tapedM * share)));
  return [firstM, Math.max(LEAST_TAPED_M, roundM(tapedM - firstM))];
}
