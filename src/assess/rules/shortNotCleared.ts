import type { Finding } from '../answer.ts';
import { carriesNothing, type Facts } from '../facts.ts';
import { conductorOverruns } from '../overrun.ts';
import { per } from '../perModel.ts';
import { stillFed } from '../short/judge.ts';
import { type CableShort, shortsOf } from '../short/shorts.ts';
import { finding, linkPlaces, type Rule, runPlace } from './rule.ts';

/**
 * Shorts that a rule on shorts may speak of: on cables behind a device whose rating suits them. What lies ahead of the
 * first device is the unprotected length's matter, and a fuse too large for its cable has a finding of its own.
 */
export const judgedShorts = per((facts: Facts): readonly CableShort[] => {
  const overrun = new Set(conductorOverruns(facts).map(({ cable }) => cable));
  return shortsOf(facts).filter(
    ({ cable, ends, worst }) =>
      worst.worst !== null &&
      !overrun.has(cable) &&
      !carriesNothing(facts, cable) &&
      !ends.some(({ end }) => end.bare.length > 0),
  );
});

/**
 * RULES 7: a dead short that damages the insulation before any fuse opens: stop. One that no fuse need open for: note,
 * since a rating that suits the cable lets it stand that current. One finding for each fuse, the worst cable first.
 */
export const shortNotCleared: Rule = {
  id: 'short-not-cleared',
  sensitive: false,
  check: (facts) => {
    const byFuse = new Map<string, CableShort[]>();
    for (const short of judgedShorts(facts)) {
      const { verdict, link, harm } = short.worst;
      if (verdict !== 'damagedFirst' && verdict !== 'nothingOpens') continue;
      // what is left over after other fuses opened has a finding of its own
      if (verdict === 'nothingOpens' && harm !== 'certain' && stillFed(short.ends).length > 0) continue;
      const key = `${link} ${verdict} ${harm === 'certain'}`;
      byFuse.set(key, [...(byFuse.get(key) ?? []), short]);
    }
    return [...byFuse.values()].flatMap((alike): Finding[] => {
      const [first, ...rest] = alike.toSorted(
        (one, other) => (other.worst.worst?.clearingC ?? 0) - (one.worst.worst?.clearingC ?? 0),
      );
      const point = first?.worst.worst;
      if (first === undefined || point == null) return [];
      const { link, harm, verdict } = first.worst;
      return [
        finding('short-not-cleared', {
          severity: harm === 'certain' ? 'stop' : 'note',
          places: [
            runPlace(facts, first.cable),
            ...rest.map(({ cable }) => runPlace(facts, cable)),
            ...linkPlaces(facts, link),
          ],
          params: {
            verdict,
            currentA: point.currentA,
            conductorC: point.melts ? null : point.clearingC,
            limitC: point.limitC,
            damageS: Number.isFinite(point.damageS) ? point.damageS : null,
            terminal: facts.model.circuit.links[link ?? -1]?.terminal ?? null,
          },
          source: 'feedrunRules',
          why: `short-lowest:${runPlace(facts, first.cable).id}`,
        }),
      ];
    });
  },
};
