import type { Finding } from '../answer.ts';
import { isGrounded, isReversed } from '../model.ts';
import { wiringOf } from '../wiring.ts';
import { finding, fittingPlace, type Rule } from './rule.ts';

/** No way back: an amplifier whose ground reaches no battery, or a battery whose negative post is joined to nothing. */
export const groundMissing: Rule = {
  id: 'ground-missing',
  sensitive: false,
  check: (facts) => {
    const { circuit, sides } = facts.model;
    // with sources stacked or shorted, which of them feeds is not the question
    const isPlain = wiringOf(facts.model).kind === 'plain';
    const reachesPost = (node: number): boolean =>
      circuit.sources.some(({ minus }) => sides.backPart[minus] === sides.backPart[node]);
    const missing = (fitting: { id: string }): Finding =>
      finding('ground-missing', { severity: 'fix', places: [fittingPlace(fitting)], source: 'feedrunRules' });
    return [
      ...circuit.sources.flatMap(({ fitting, minus }) => (sides.at[minus]?.length === 0 ? [missing(fitting)] : [])),
      ...circuit.loads.flatMap(({ fitting, minus }, load) =>
        // one that is wired the wrong way round has its way back at the other terminal
        (isPlain ? isGrounded(facts.model, load) || isReversed(facts.model, load) : reachesPost(minus))
          ? []
          : [missing(fitting)],
      ),
    ];
  },
};
