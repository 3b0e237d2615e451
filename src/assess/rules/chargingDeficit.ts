import type { Finding } from '../answer.ts';
import { vehicleA } from '../supply/point.ts';
import { supplyOf } from '../supply/supply.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** RULES 8: in the mean the loads and the vehicle draw more than the alternators bring hot: at cruise fix, at idle alone a note. */
export const chargingDeficit: Rule = {
  id: 'charging-deficit',
  sensitive: true,
  check: (facts) => {
    const { alternators } = facts.model.circuit;
    const balance = supplyOf(facts)?.balance;
    if (balance == null) return [];
    const speed = balance.cruise.deficitA > 0 ? 'cruise' : 'idle';
    const { deficitA, meansA, outputA } = balance[speed];
    const [first, ...rest] = alternators.map(({ fitting }) => fittingPlace(fitting));
    if (deficitA === 0 || first === undefined) return [];
    const demandA = vehicleA(facts) + meansA.reduce((sum, amps) => sum + amps, 0);
    return [
      finding('charging-deficit', {
        severity: speed === 'cruise' ? 'fix' : 'note',
        places: [first, ...rest],
        params: { deficitA, demandA, outputA, speed },
        source: 'chargeBalance',
        why: `deficit:${speed}`,
      }),
    ] satisfies Finding[];
  },
};
