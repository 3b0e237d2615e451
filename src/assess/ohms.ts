import { type GaugeId, isGaugeId } from '../calc/conductor/gauge.ts';
import { resistancePerMOhm } from '../calc/conductor/resistance.ts';
import type { FittingOf } from '../plan/schema.ts';
import type { Contact } from './circuit.ts';
import { lengthOf } from './length.ts';
import type { Model } from './model.ts';
import { heldRatings } from './ratings.ts';

/** Resistance that is no cable's, by edge: joints, links, body, straps; ohm. */
export function fixedOhms(model: Model, ratings: readonly (number | null)[]): number[] {
  const { settings, circuit } = model;
  return [
    ...circuit.cables.map(({ joints, measuredOhm }) => joints * settings.jointOhm.value + measuredOhm),
    ...circuit.links.map(
      (_, link) => settings.linkDropV.value / (ratings[link] ?? heldRatings(model, link).at(-1) ?? 1),
    ),
    ...circuit.bonds.map((bond) => (bond.kind === 'body' ? settings.bodyOhm.value : strapOhm(bond.fitting.strap))),
    ...circuit.contacts.map((contact) => contactOhm(model, contact)),
  ];
}

/** A factory cable of which no size is told: half the usual starter cable. Source: our choice. */
const FACTORY_GAUGE = 'mm2:25' as GaugeId;

/** Resistance of a closed contact, ohm; a reducer's is its thin end's at the joints it makes. */
function contactOhm({ plan, settings }: Model, contact: Contact): number {
  switch (contact.kind) {
    case 'relay':
    case 'switch':
      return contact.fitting.contactOhm.value;
    case 'reducer':
      return settings.jointOhm.value;
    case 'factory': {
      const { size } = contact.run.conductor;
      const gauge = size !== 'auto' && isGaugeId(size) ? size : FACTORY_GAUGE;
      return lengthOf(plan, contact.run).lengthM * resistancePerMOhm(gauge, 'copper', STRAP_C);
    }
  }
}

type Strap = NonNullable<FittingOf<'battery'>['strap']>;

/** The strap's copper, degC: warm from the bay; at 20 degC it would have a tenth less. */
const STRAP_C = 50;

/** Resistance of a factory strap of copper at 50 degC, ohm. 0.4 m of 25 mm2: 0.000349. */
function strapOhm(strap: Strap | null): number {
  if (strap === null) return 0;
  // the class 5 table holds nominal areas only; a strap may have any area
  const ohmPerM = (resistancePerMOhm('mm2:25' as GaugeId, 'copper', STRAP_C) * 25) / strap.areaMm2.value;
  return ohmPerM * strap.lengthM.value;
}
