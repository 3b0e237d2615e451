import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';

/** Output at idle as a share of the rated one where only that is told: the middle of 0.3 to 0.6. */
const IDLE_SHARE = 0.45;
/** Hot output as a share of the plate's, which is measured at 23 degC. */
const HOT_SHARE = 0.8;

export interface Alternator {
  /** IR of the plate: output at 6000 a minute of the alternator, cold, A. */
  readonly ratedA: number;
  /** IL of the plate: output at 1500 a minute, cold, A; null: not told. */
  readonly idleA: number | null;
  /** Hot output over cold, 0 to 1; 0.8 unless told. */
  readonly hotShare?: number;
}

export type EngineSpeed = 'idle' | 'cruise';

type Given = Abouts<'ratedA' | 'idleA' | 'hotShare'>;

function recordPlate({ ratedA, idleA }: Alternator, speed: EngineSpeed, rec: Recorder, about: Given): number {
  if (speed === 'idle' && idleA !== null) return rec.input('Iplate', 'A', idleA, about.idleA ?? cited('iso8854'));
  const rated = rec.input('IR', 'A', ratedA, about.ratedA ?? cited('iso8854'));
  if (speed === 'cruise') return rec.step('Iplate', 'A', 'IR', rated);
  const share = rec.input('kIdle', '1', IDLE_SHARE, cited('alternatorIdle'));
  return rec.step('Iplate', 'A', 'kIdle * IR', share * rated);
}

function compute(of: Alternator, speed: EngineSpeed, rec: Recorder, about: Given = {}): number {
  const plate = recordPlate(of, speed, rec, about);
  const hot = rec.input('kHot', '1', of.hotShare ?? HOT_SHARE, about.hotShare ?? cited('alternatorHot'));
  return rec.step('Ihot', 'A', 'kHot * Iplate', hot * plate);
}

/**
 * What an alternator brings hot at that speed, A: the plate's figure x hot share. Idle is IL of the plate, else
 * 0.45 x IR; cruise is IR. Source: form of the rating ISO 8854 (published; its speeds 1500 and 6000 a minute from memory);
 * idle share and hot share from memory. A 90 A plate: cruise 72 A, idle 0.8 x 40.5 = 32.4 A.
 */
export function alternatorHotA(of: Alternator, speed: EngineSpeed): number {
  return compute(of, speed, NO_WHY);
}

/** Why of `alternatorHotA`; the result is 'Ihot'. */
export function alternatorHotWhy(of: Alternator, speed: EngineSpeed, about: Given = {}): Why {
  const builder = whyBuilder();
  compute(of, speed, builder, about);
  return builder.done('Ihot');
}
