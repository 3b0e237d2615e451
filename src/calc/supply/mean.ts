import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

export interface MeanCase {
  /** Output stage: B (and AB) or D. */
  readonly stage: 'B' | 'D';
  /** Current with everything at full sine, A. */
  readonly fullA: number;
  /** Current while on and silent, A; counts for class D. */
  readonly idleA: number;
  /** Mean over peak power of the music, 0 to 1. */
  readonly duty: number;
}

type Given = Abouts<'fullA' | 'idleA' | 'duty'>;

function compute({ stage, fullA, idleA, duty }: MeanCase, rec: Recorder, about: Given = {}): number {
  const full = rec.input('Ifull', 'A', fullA, about.fullA);
  const share = rec.input('duty', '1', duty, about.duty);
  if (stage === 'B') {
    return rec.step('Imean', 'A', 'Ifull * sqrt(duty)', full * Math.sqrt(share), cited('classBCurrent'));
  }
  const idle = rec.input('Iidle', 'A', idleA, about.idleA);
  return rec.step('Imean', 'A', 'Ifull * duty + Iidle', full * share + idle, cited('classDCurrent'));
}

/**
 * Mean current of an amplifier that plays music, A: what empties the battery and what the alternator must bring.
 * Class B draws in proportion to its output voltage: full x sqrt(duty). Class D in proportion to its output power:
 * full x duty + idle. Sources: the ideal class B stage (published); class D derived; both our rules, section 2.
 * 102 A full, 1 A idle, duty 1/3: class B 58.9 A, class D 35.0 A.
 */
export function meanCurrentA(of: MeanCase): number {
  return compute(of, NO_WHY);
}

/** Why of `meanCurrentA`; the result is 'Imean'. */
export function meanCurrentWhy(of: MeanCase, about: Given = {}): Why {
  const builder = whyBuilder();
  compute(of, builder, about);
  return builder.done('Imean');
}
