/** Which families of links a device may be fitted from. */
import { LINK_FAMILY_IDS, type LinkFamily, type LinkFamilyId } from '../calc/tables/links.ts';
import type { OwnLink, Settings } from '../plan/schema.ts';
import type { CircuitLink } from './circuit.ts';
import type { Model } from './model.ts';

type WithSettings = Pick<Model, 'settings'>;

/** Families that the user tells, as the calc room knows families. */
export const ownFamilies = ({ settings }: { readonly settings: Pick<Settings, 'ownLinks'> }): readonly LinkFamily[] =>
  settings.ownLinks.map(({ family, ratingsA, breakingA, ratedV }) => ({
    id: family,
    ratingsA: [...ratingsA].sort((one, other) => one - other),
    ratingsSource: 'userTold',
    ratedV,
    breakingA,
    breakingSource: breakingA === null ? null : 'userTold',
    boltMm: null,
  }));

type Seat = OwnLink['seat'];

/** Families made for a seat of their own; every other fits a common holder. */
const SEATS: ReadonlyMap<LinkFamilyId, Seat> = new Map([
  ['post-link', 'post'],
  ['thermal-breaker', 'breaker'],
]);

type Device = Pick<CircuitLink, 'fitting' | 'link'>;

const seatOf = ({ fitting }: Device): Seat =>
  fitting.kind === 'battery' ? 'post' : fitting.kind === 'breaker' ? 'breaker' : 'holder';

const fits = ({ ownLinks }: Settings, family: LinkFamilyId, seat: Seat): boolean =>
  (ownLinks.find((own) => own.family === family)?.seat ?? SEATS.get(family) ?? 'holder') === seat;

/** Families of the user's own, and those held here, that fit the seat of a device, in stock or not. */
export const madeFamilies = ({ settings }: WithSettings, device: Device): readonly LinkFamilyId[] =>
  [...LINK_FAMILY_IDS, ...settings.ownLinks.map(({ family }) => family)].filter((family) =>
    fits(settings, family, seatOf(device)),
  );

/**
 * Families a device may be taken from: the one told, else those that the shop holds and its seat takes. On a battery's
 * post and in a breaker's place the one family that is made for it counts as held.
 */
export function heldFamilies({ settings }: WithSettings, device: Device): readonly LinkFamilyId[] {
  if (device.link.family !== 'auto') return [device.link.family];
  const seat = seatOf(device);
  const held = settings.linkFamilies.filter((family) => fits(settings, family, seat));
  return [...new Set([...[...SEATS.keys()].filter((family) => SEATS.get(family) === seat), ...held])];
}
