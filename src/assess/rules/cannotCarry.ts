import type { Finding } from '../answer.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** RULES 1: loads of constant power that the conductors cannot carry at any voltage: the system will not work. */
export const cannotCarry: Rule = {
  id: 'cannot-carry',
  sensitive: true,
  check: (facts) => {
    const { cannotCarry: refused, model } = facts;
    if (refused === null || facts.choice.failing.length > 0) return [];
    const drawing = model.demands.flatMap((demand, load) => {
      const fitting = model.circuit.loads[load]?.fitting;
      return demand === null || fitting === undefined
        ? []
        : [{ fitting, watts: demand.law === 'power' ? demand.watts : 0 }];
    });
    const [first, ...rest] = drawing.sort((one, other) => other.watts - one.watts);
    if (first === undefined) return [];
    const powerW = drawing.reduce((sum, { watts }) => sum + watts, 0);
    const found: Finding = finding('cannot-carry', {
      severity: 'fix',
      places: [fittingPlace(first.fitting), ...rest.map(({ fitting }) => fittingPlace(fitting))],
      params: { powerW, carriedPercent: 100 * refused.largestShare },
      source: 'feedrunRules',
    });
    return [found];
  },
};
