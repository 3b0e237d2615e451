import { LINK_FAMILIES } from '../../calc/tables/links.ts';
import type { Finding, Severity } from '../answer.ts';
import type { Facts } from '../facts.ts';
import { madeFamilies, ownFamilies } from '../families.ts';
import { type Breaking, breakingOf } from '../short/breaking.ts';
import { finding, fittingPlace, ofOutput, type Rule } from './rule.ts';

/** A family for its seat that is stated to break enough at that rating or the next one up; null: none. */
function helpOf({ model }: Facts, { of, askedA, estimateA, verdict }: Breaking) {
  const device = model.circuit.links[of.link];
  if (device === undefined) return { helpFamily: null, helpRatingA: null };
  const enoughA = verdict === 'belowTable' ? (askedA ?? estimateA) : estimateA;
  const made = madeFamilies(model, { ...device, link: { ...device.link, family: 'auto' } });
  const offers = [...LINK_FAMILIES, ...ownFamilies(model)].flatMap((family) => {
    const ratingA = family.ratingsA.find((rating) => rating >= of.ratingA);
    const isEnough = made.includes(family.id) && family.breakingA !== null && family.breakingA >= enoughA;
    return isEnough && ratingA !== undefined && family.ratedV >= model.settings.systemV ? [{ family, ratingA }] : [];
  });
  const [best] = offers.toSorted((one, other) => one.ratingA - other.ratingA);
  return { helpFamily: best?.family.id ?? null, helpRatingA: best?.ratingA ?? null };
}

const paramsOf = ({ of, breakingA, askedA, estimateA, doubledA, totalCcaA, place, verdict }: Breaking) => ({
  verdict,
  place,
  family: of.family?.id ?? null,
  ratingA: of.ratingA,
  breakingA,
  askedA,
  ccaA: totalCcaA,
  estimateA,
  doubledA,
});

const SEVERITY = { belowTable: 'stop', belowDoubled: 'fix' } as const;

/** What is below the estimate, or not stated: one note for all such links, that of the greatest current first. */
function note(facts: Facts, found: readonly Breaking[], verdict: 'belowEstimate' | 'notStated'): Finding[] {
  const alike = found
    .filter((one) => one.verdict === verdict)
    .toSorted((one, other) => other.estimateA - one.estimateA);
  const fittings = [...new Set(alike.flatMap(({ of }) => facts.model.circuit.links[of.link]?.fitting ?? []))];
  const [first] = alike;
  const [place, ...others] = fittings.map(fittingPlace);
  if (first === undefined || place === undefined) return [];
  const one = finding('breaking-capacity', {
    severity: 'note',
    places: [place, ...others],
    params: { ...paramsOf(first), ...helpOf(facts, first), links: alike.length },
    source: verdict === 'notStated' ? 'abycTableVA' : 'feedrunRules',
  });
  return [{ ...one, id: `breaking-capacity:${verdict}` }];
}

/**
 * RULES 5: a link that cannot break what the batteries may drive through it goes on arcing. Stop below the ABYC table
 * for the batteries joined (the figure for mains at the first device from a source, the one for branches behind another);
 * fix below the estimate at its place even with twice the battery resistance; notes below the estimate, or not stated.
 */
export const breakingCapacity: Rule = {
  id: 'breaking-capacity',
  sensitive: true,
  check: (facts) => {
    const found = breakingOf(facts);
    const grave = found.flatMap((one): Finding[] => {
      const device = facts.model.circuit.links[one.of.link];
      const { verdict } = one;
      if (device === undefined || (verdict !== 'belowTable' && verdict !== 'belowDoubled')) return [];
      const severity: Severity = SEVERITY[verdict];
      return [
        ofOutput(
          device.terminal,
          finding('breaking-capacity', {
            severity,
            places: [fittingPlace(device.fitting)],
            params: { ...paramsOf(one), ...helpOf(facts, one), terminal: device.terminal },
            source: verdict === 'belowTable' ? 'abycTableVA' : 'feedrunRules',
          }),
        ),
      ];
    });
    return [...grave, ...note(facts, found, 'belowEstimate'), ...note(facts, found, 'notStated')];
  },
};
