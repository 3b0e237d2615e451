import type { Finding, Place } from '../answer.ts';
import { exceeds, hottestC } from '../conductor.ts';
import { carriesNothing, type Facts, fullOf, sizeOf } from '../facts.ts';
import { fuseOf } from '../fuseOf.ts';
import { insulationOf } from '../model.ts';
import { heatingShareAt } from '../states.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';

/** Equally hot but for rounding: then the name decides, so that the order of the file does not. */
const SAME_K = 1e-6;
/** Ranks what settles at no temperature. */
const HOTTEST_C = 1e6;

interface Hot {
  readonly cable: number;
  readonly currentA: number;
  /** null where it settles at no temperature. */
  readonly conductorC: number | null;
  readonly classC: number;
}

/** A cable that a current held takes above its class, at the real ambient. */
function hotAt(facts: Facts, cable: number, currentA: number): Hot[] {
  const size = sizeOf(facts, cable);
  const found = facts.model.circuit.cables[cable];
  if (size === null || found === undefined || carriesNothing(facts, cable)) return [];
  const classC = insulationOf(found);
  const conductorC = hottestC(facts.model, cable, size, currentA);
  return conductorC === null || exceeds(conductorC, classC) ? [{ cable, currentA, conductorC, classC }] : [];
}

function told(
  { currentA, conductorC, classC }: Hot,
  held: 'heatingCurrent' | 'fuseRating',
  places: [Place, ...Place[]],
) {
  return finding('heating', {
    severity: held === 'heatingCurrent' ? 'stop' : 'note',
    places,
    params: { conductorC, classC, currentA, held },
    source: 'lumpedHeating',
    why: `${held}:${places[0].id}`,
  });
}

/** The fuse's rating held, in cables that one fuse limits alike: one note, the hottest cable first. */
function ratingNotes(facts: Facts, cables: readonly number[]): Finding[] {
  const { model, limits, ratings } = facts;
  const byFuse = new Map<string, Hot[]>();
  for (const cable of cables) {
    const limitA = limits[cable] ?? 0;
    if (limitA === Infinity || limitA === 0) continue;
    const [hot] = hotAt(facts, cable, limitA);
    if (hot === undefined) continue;
    const key = `${fuseOf(model, cable, ratings)} ${limitA}`;
    byFuse.set(key, [...(byFuse.get(key) ?? []), hot]);
  }
  const heat = ({ conductorC }: Hot): number => conductorC ?? HOTTEST_C;
  const idOf = ({ cable }: Hot): string => runPlace(facts, cable).id;
  return [...byFuse.values()].flatMap((alike): Finding[] => {
    const [first, ...rest] = alike.toSorted((one, other) => {
      const warmer = heat(other) - heat(one);
      return Math.abs(warmer) > SAME_K ? warmer : idOf(one).localeCompare(idOf(other));
    });
    if (first === undefined) return [];
    const others = rest.map(({ cable }) => runPlace(facts, cable));
    const fuse = linkPlaces(facts, fuseOf(model, first.cable, ratings));
    return [told(first, 'fuseRating', [runPlace(facts, first.cable), ...others, ...fuse])];
  });
}

/** RULES 4, at the real ambient: heating current above the class temperature: stop; the fuse's rating held above it: note. */
export const heating: Rule = {
  id: 'heating',
  sensitive: true,
  check: (facts) => {
    const carrying = [...facts.model.circuit.cables.keys()].filter((cable) => (fullOf(facts, cable) ?? 0) > 0);
    const burning = carrying.flatMap((cable) =>
      hotAt(facts, cable, (fullOf(facts, cable) ?? 0) * heatingShareAt(facts.model, cable)),
    );
    const burns = new Set(burning.map(({ cable }) => cable));
    return [
      ...burning.map((hot) => told(hot, 'heatingCurrent', [runPlace(facts, hot.cable)])),
      ...ratingNotes(
        facts,
        carrying.filter((cable) => !burns.has(cable)),
      ),
    ];
  },
};
