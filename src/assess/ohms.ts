import type { GaugeId } from '../calc/conductor/gauge.ts';
import { resistancePerMOhm } from '../calc/conductor/resistance.ts';
import type { Model } from './model.ts';
import { heldRatings } from './ratings.ts';

/** Resistance that is no cable's, by edge: joints, links, body, straps; ohm. */
export function fixedOhms(model: Model, ratings: readonly (number | null)[]): number[] {
  const { settings, circuit } = model;
  return [
    ...circuit.cables.map(({ joints }) => joints * settings.jointOhm.value),
    ...circuit.links.map(
      (_, link) => settings.linkDropV.value / (ratings[link] ?? heldRatings(model, link).at(-1) ?? 1),
    ),
    ...circuit.bonds.map((bond) => (bond.kind === 'body' ? settings.bodyOhm.value : strapOhm(bond.fitting.strap))),
  ];
}

type Strap = NonNullable<Model['circuit']['sources'][number]['fitting']['strap']>;

/** The strap's copper, degC: warm from the bay; at 20 degC it would have a tenth less. */
const STRAP_C = 50;

/** Resistance of a factory strap of copper at 50 degC, ohm. 0.4 m of 25 mm2: 0.000349. */
function strapOhm(strap: Strap | null): number {
  if (strap === null) return 0;
  // the class 5 table holds nominal areas only; a strap may have any area
  const ohmPerM = (resistancePerMOhm('mm2:25' as GaugeId, 'copper', STRAP_C) * 25) / strap.areaMm2.value;
  return ohmPerM * strap.lengthM.value;
}
