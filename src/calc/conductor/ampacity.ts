import { NOTE1_FACTOR, note1Source, TABLE5_AMBIENT_C } from '../tables/ampacity.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { type Cable, tableCurrentA } from './tableCurrent.ts';

/** bay: the engine bay; other: cabin, cargo space and under the body. */
type Zone = 'bay' | 'other';

export interface AmpacityCase extends Cable {
  readonly zone: Zone;
  /** Real temperature of the air round the cable, degC. In the bay it only decides whether any ampacity is left. */
  readonly ambientC: number;
  readonly loom: boolean;
  readonly carpet: boolean;
}

type Given = Abouts<'insulationC' | 'ambientC'>;

function zoneFactor({ insulationC, zone, ambientC }: AmpacityCase, rec: Recorder, about: Given): number {
  if (zone === 'bay' && ambientC < insulationC) {
    return rec.input('kAmbient', '1', NOTE1_FACTOR[insulationC], cited(note1Source(insulationC)));
  }
  const rating = rec.input('Tr', 'degC', insulationC, about.insulationC);
  const ambient = rec.input('Ta', 'degC', ambientC, about.ambientC);
  const base = rec.input('T0', 'degC', TABLE5_AMBIENT_C, cited('cfr183425Ambient'));
  const factor = Math.min(1, Math.sqrt(Math.max(0, rating - ambient) / (rating - base)));
  return rec.step('kAmbient', '1', 'min(1, sqrt(max(0, Tr - Ta) / (Tr - T0)))', factor, {
    source: 'ambientCorrection',
  });
}

function compute(of: AmpacityCase, rec: Recorder, about: Given = {}): number {
  const at30 = tableCurrentA(of, rec);
  const factor = zoneFactor(of, rec, about);
  return rec.step('Iz', 'A', 'I30 * kAmbient', at30 * factor);
}

/**
 * Current the cable may carry for long, A; 0 where the air is as hot as the class or hotter.
 * Engine bay: the factor of note 1, which stands for the rule's own 50 degC; elsewhere min(1, sqrt((Tr-Ta)/(Tr-30))).
 * Good for the listed classes and any ambient. Source: 33 CFR 183.425 Table 5 and note 1; see `tableCurrentA`.
 * 'awg:4', copper, 105 degC, bay at 80 degC gives 160 x 0.85 = 136 A.
 */
export function ampacityA(of: AmpacityCase): number {
  return compute(of, NO_WHY);
}

/** Why of `ampacityA`; the result is 'Iz'. */
export function ampacityWhy(of: AmpacityCase, about: Given = {}): Why {
  const builder = whyBuilder();
  compute(of, builder, about);
  return builder.done('Iz');
}
