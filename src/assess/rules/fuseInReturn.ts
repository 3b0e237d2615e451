import type { Finding } from '../answer.ts';
import { wiringOf } from '../wiring.ts';
import { finding, fittingPlace, ofOutput, type Rule } from './rule.ts';

/**
 * FCS 1362, 4.6.4: the negative line of a negative-earth vehicle is not fused: fix. Such a fuse sees no short of the feed
 * to the body, and when it opens the amplifier's current looks for another way back, over the shields of its signal leads.
 */
export const fuseInReturn: Rule = {
  id: 'fuse-in-return',
  sensitive: false,
  check: ({ model }) => {
    const { circuit, sides } = model;
    if (wiringOf(model).kind === 'positiveEarth') return [];
    return circuit.links.flatMap(({ fitting, terminal, a, b }): Finding[] => {
      const isLive = sides.live[a] === true || sides.live[b] === true;
      const isBack = sides.back[a] === true || sides.back[b] === true;
      if (isLive || !isBack) return [];
      const one = finding('fuse-in-return', {
        severity: 'fix',
        places: [fittingPlace(fitting)],
        params: { terminal },
        source: 'fcs1362',
      });
      return [ofOutput(terminal, one)];
    });
  },
};
