import type { Finding } from '../answer.ts';
import { stillFed } from '../short/judge.ts';
import { shortsOf } from '../short/shorts.ts';
import { rankOf, worstWay } from '../unprotectedVerdict.ts';
import { finding, fittingPlace, linkPlaces, type Rule, runPlace } from './rule.ts';

/**
 * RULES 7: its fuse has opened, and another battery still feeds the short, by a way that no device is in or whose device
 * need not open at that current. One note for all cables; the way without a device is a finding of its own.
 */
export const backFed: Rule = {
  id: 'back-fed',
  sensitive: false,
  check: (facts) => {
    const { circuit, settings } = facts.model;
    const { ruleSet } = settings;
    // a short way from a post to its own first fuse is nothing but that
    const isBeyond = facts.unprotected.map(
      ({ ways }) => rankOf(worstWay(ruleSet, ways)?.severity ?? null) > rankOf('note'),
    );
    const fed = shortsOf(facts).flatMap((short) => {
      const left = stillFed(short.ends).filter(
        ({ end }) => end.bare.length === 0 || end.bare.some((source) => isBeyond[source] === true),
      );
      if (left.length === 0) return [];
      return [{ short, left, residualA: Math.max(...left.map(({ residualA }) => residualA)) }];
    });
    const [first, ...rest] = fed.toSorted((one, other) => other.residualA - one.residualA);
    if (first === undefined) return [];
    const bare = [...new Set(fed.flatMap(({ left }) => left.flatMap(({ end }) => end.bare)))];
    const links = [
      ...new Set(fed.flatMap(({ left }) => left.flatMap(({ end, link }) => (end.bare.length > 0 ? [] : [link])))),
    ];
    return [
      finding('back-fed', {
        severity: 'note',
        places: [
          runPlace(facts, first.short.cable),
          ...rest.map(({ short }) => runPlace(facts, short.cable)),
          ...bare.flatMap((source) => circuit.sources[source]?.fitting ?? []).map(fittingPlace),
          ...links.flatMap((link) => linkPlaces(facts, link)),
        ],
        params: { residualA: first.residualA, by: bare.length > 0 ? 'source' : 'fuse' },
        source: 'feedrunRules',
        why: `short-lowest:${runPlace(facts, first.short.cable).id}`,
      }),
    ] satisfies Finding[];
  },
};
