import type { Finding } from '../answer.ts';
import { cableAmpacityA } from '../capacity.ts';
import { exceeds } from '../conductor.ts';
import { type Facts, fullOf, sizeOf } from '../facts.ts';
import { insulationOf, isUnmarked } from '../model.ts';
import { heatingShareAt } from '../states.ts';
import { ambientC } from '../surroundings.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** Cables of one class in air too hot for it are one cause: one stop, the runs of it together. */
function classTooLow(facts: Facts, indices: readonly number[]): Finding[] {
  const { circuit, settings } = facts.model;
  const alike = new Map<string, { readonly places: number[]; readonly params: Finding['params'] }>();
  for (const index of indices) {
    const cable = circuit.cables[index];
    if (cable === undefined) continue;
    const classC = insulationOf(cable);
    const airC = Math.max(...cable.stretches.map(({ zone }) => ambientC(settings, zone)));
    const params = { ampacityA: 0, classC, airC, unmarked: isUnmarked(cable) ? 'yes' : 'no' };
    const key = JSON.stringify(params);
    const one = alike.get(key) ?? { places: [] as number[], params };
    one.places.push(index);
    alike.set(key, one);
  }
  return [...alike.values()].flatMap(({ places, params }): Finding[] => {
    const [first, ...rest] = places.map((index) => runPlace(facts, index));
    if (first === undefined) return [];
    return [
      finding('ampacity', {
        severity: 'stop',
        places: [first, ...rest],
        params,
        source: 'cfr183425Table5',
        why: `ampacity:${first.id}`,
      }),
    ];
  });
}

/** RULES 4: air as hot as the class leaves no ampacity: stop; heating current above the ampacity: fix. */
export const ampacity: Rule = {
  id: 'ampacity',
  sensitive: true,
  check: (facts) => {
    const { model } = facts;
    const judged = model.circuit.cables.flatMap((cable, index) => {
      const size = sizeOf(facts, index);
      if (size === null) return [];
      const fullA = fullOf(facts, index);
      const currentA = fullA === null ? 0 : fullA * heatingShareAt(model, index);
      return [{ index, currentA, ampacityA: cableAmpacityA(model, cable, size) }];
    });
    const none = judged.filter(({ ampacityA }) => ampacityA === 0).map(({ index }) => index);
    const over = judged.filter(({ ampacityA, currentA }) => ampacityA > 0 && exceeds(currentA, ampacityA));
    return [
      ...classTooLow(facts, none),
      ...over.map(({ index, currentA, ampacityA }): Finding => {
        const place = runPlace(facts, index);
        return finding('ampacity', {
          severity: 'fix',
          places: [place],
          params: { currentA, ampacityA },
          source: 'cfr183425Table5',
          why: `ampacity:${place.id}`,
        });
      }),
    ];
  },
};
