import type { Finding } from '../answer.ts';
import type { Model } from '../model.ts';
import { isWithoutDevice, type UnprotectedWay } from '../unprotected.ts';
import { worstWay } from '../unprotectedVerdict.ts';
import { finding, fittingPlace, linkPlaces, type Rule, runPlace } from './rule.ts';

const endsInReturn = ({ circuit, sides }: Model, { end }: UnprotectedWay): boolean =>
  end.kind === 'nothing' &&
  (sides.back[end.node] === true || sides.backPart[end.node] === sides.backPart[circuit.body]);

/** RULES 6: how much cable from a source to its first device, or to an end without one; the worst way of each source. */
export const unprotectedLength: Rule = {
  id: 'unprotected-length',
  sensitive: false,
  check: (facts) =>
    facts.unprotected.flatMap(({ source, ways, totalM }): Finding[] => {
      const { model } = facts;
      const battery = model.circuit.starts[source]?.fitting;
      // a way without any device is the matter of no-device, one into the return that of whatever joins it there
      const judged = ways.filter((way) => !isWithoutDevice(way) && !endsInReturn(model, way));
      const worst = worstWay(model.settings.ruleSet, judged);
      if (battery === undefined || worst === undefined || worst.severity === null) return [];
      const { way, severity, limitM, provisional } = worst;
      return [
        finding('unprotected-length', {
          severity,
          places: [
            fittingPlace(battery),
            ...way.cables.map((cable) => runPlace(facts, cable)),
            ...linkPlaces(facts, way.end.kind === 'device' ? way.end.link : null),
          ],
          params: {
            unprotectedM: way.lengthM,
            plusMinusM: way.plusMinusM,
            limitM,
            totalM,
            sheathed: way.sheathed ? 'yes' : 'no',
            endsAt: way.end.kind,
          },
          source: worst.source,
          provisional,
          why: `unprotected:${battery.id}`,
        }),
      ];
    }),
};
