/** Which families of links a device may be fitted from. */
import { standardRatings } from '../calc/fuse/family.ts';
import { LINK_FAMILY_IDS, type LinkFamily, type LinkFamilyId } from '../calc/tables/links.ts';
import type { OwnLink, Settings } from '../plan/schema.ts';
import type { CircuitLink } from './circuit.ts';
import type { Model } from './model.ts';
import { per } from './perModel.ts';

type WithSettings = Pick<Model, 'settings'>;

const ownIn = per((ownLinks: Settings['ownLinks']): readonly LinkFamily[] =>
  ownLinks.map(({ family, ratingsA, breakingA, ratedV }) => ({
    id: family,
    ratingsA: [...ratingsA].sort((one, other) => one - other),
    ratingsSource: 'userTold',
    ratedV,
    breakingA,
    breakingSource: breakingA === null ? null : 'userTold',
    boltMm: null,
  })),
);

/** Families that the user tells, as the calc room knows families. */
export const ownFamilies = ({ settings }: { readonly settings: Pick<Settings, 'ownLinks'> }): readonly LinkFamily[] =>
  ownIn(settings.ownLinks);

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

/** What a shop holds for one kind of device. */
interface Held {
  readonly families: readonly LinkFamilyId[];
  /** A, ascending. */
  readonly ratingsA: readonly number[];
}

const heldBySettings = per((_: Settings) => new Map<string, Held>());

/** Worked once for each seat and family told: devices are many, their kinds few. */
function heldFor({ settings }: WithSettings, { fitting, link }: Device): Held {
  const seat = seatOf({ fitting, link });
  const table = heldBySettings(settings);
  const key = `${seat} ${link.family}`;
  const before = table.get(key);
  if (before !== undefined) return before;
  const ownSeat = [...SEATS.keys()].filter((family) => SEATS.get(family) === seat);
  const inStock = settings.linkFamilies.filter((family) => fits(settings, family, seat));
  const families = link.family === 'auto' ? [...new Set([...ownSeat, ...inStock])] : [link.family];
  const held = { families, ratingsA: standardRatings(families, ownFamilies({ settings })) };
  table.set(key, held);
  return held;
}

/**
 * Families a device may be taken from: the one told, else those that the shop holds and its seat takes. On a battery's
 * post and in a breaker's place the one family that is made for it counts as held.
 */
export const heldFamilies = (model: WithSettings, device: Device): readonly LinkFamilyId[] =>
  heldFor(model, device).families;

/** Ratings held for a device, A, ascending. */
export const heldRatingsA = (model: WithSettings, device: Device): readonly number[] => heldFor(model, device).ratingsA;
