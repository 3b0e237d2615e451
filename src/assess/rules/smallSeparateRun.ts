import { gauge } from '../../calc/conductor/gauge.ts';
import { awgAreaMm2 } from '../../calc/tables/awg.ts';
import type { Finding } from '../answer.ts';
import { sizeOf } from '../facts.ts';
import { finding, type Rule, runPlace } from './rule.ts';

/** 33 CFR 183.425 (d), (e): a conductor on its own is no smaller than 16 AWG. */
export const smallSeparateRun: Rule = {
  id: 'small-separate-run',
  sensitive: false,
  check: (facts) =>
    facts.model.circuit.cables.flatMap((_, index): Finding[] => {
      const size = sizeOf(facts, index);
      if (size === null) return [];
      const { awgSize, areaMm2 } = gauge(size);
      const isSmall = awgSize === null ? areaMm2 < awgAreaMm2('16') : awgAreaMm2(awgSize) < awgAreaMm2('16');
      if (!isSmall) return [];
      return [
        finding('small-separate-run', {
          severity: 'note',
          places: [runPlace(facts, index)],
          params: { gauge: size },
          source: 'cfr183425Table5',
        }),
      ];
    }),
};
