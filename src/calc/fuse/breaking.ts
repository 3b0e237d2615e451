import { type FusePlace, tableVaA } from '../tables/interrupting.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

export type { FusePlace } from '../tables/interrupting.ts';

export interface BreakingCase {
  /** What the link is stated to break, A d.c.; null: not stated. */
  readonly breakingA: number | null;
  readonly place: FusePlace;
  /** Cold cranking amperes of all lead-acid batteries joined, SAE; null: there is none, so the table does not speak. */
  readonly totalCcaA: number | null;
  /** Largest prospective current at the device, warm batteries, A. */
  readonly estimateA: number;
  /** The same with twice every battery's resistance, A. */
  readonly doubledA: number;
}

/**
 * belowTable: less than ABYC asks (stop). belowDoubled: less than the estimate even with twice the battery resistance
 * (fix). belowEstimate: less than the estimate (note). notStated: nothing to compare. enough: none of these.
 */
export type BreakingVerdict = 'enough' | 'belowEstimate' | 'belowDoubled' | 'belowTable' | 'notStated';

/**
 * Whether a link can break the current that a dead short behind it draws. Currents in A, d.c.
 * Sources: ABYC E-11 Table V-A as reprinted; the estimate by our rules, sections 5 and 8.
 * 2000 A, main, 600 A CCA (1500 asked), estimate 2900, doubled 1700: 'belowEstimate'.
 */
export function breakingVerdict({ breakingA, place, totalCcaA, estimateA, doubledA }: BreakingCase): BreakingVerdict {
  if (breakingA === null) return 'notStated';
  if (totalCcaA !== null && breakingA < tableVaA(totalCcaA, place)) return 'belowTable';
  if (breakingA < doubledA) return 'belowDoubled';
  return breakingA < estimateA ? 'belowEstimate' : 'enough';
}

type Given = Abouts<'totalCcaA'>;

function recordAsked(totalCcaA: number, place: FusePlace, rec: Recorder, about: Given): number {
  rec.input('CCA', 'A', totalCcaA, about.totalCcaA);
  const asked = rec.input('Irow', 'A', tableVaA(totalCcaA, place), cited('abycTableVA'));
  return rec.step('Iasked', 'A', 'Irow', asked);
}

/** Breaking capacity asked by ABYC E-11 Table V-A, A. (600, 'main') gives 1500. */
export function breakingAskedA(totalCcaA: number, place: FusePlace): number {
  return recordAsked(totalCcaA, place, NO_WHY, {});
}

/** Why of `breakingAskedA`; the result is 'Iasked'. */
export function breakingAskedWhy(totalCcaA: number, place: FusePlace, about: Given = {}): Why {
  const builder = whyBuilder();
  recordAsked(totalCcaA, place, builder, about);
  return builder.done('Iasked');
}
