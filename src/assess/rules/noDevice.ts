import type { Fitting } from '../../plan/schema.ts';
import type { Finding } from '../answer.ts';
import type { Model } from '../model.ts';
import { isWithoutDevice, type UnprotectedWay } from '../unprotected.ts';
import { rankOf } from '../unprotectedVerdict.ts';
import { finding, fittingPlace, type Rule, runPlace } from './rule.ts';

/** A stub up to this length, m, passes for one that is still being drawn. Source: our rules, section 6. */
const STUB_M = 0.178;

function farFitting({ circuit, plan }: Model, { end }: UnprotectedWay): Pick<Fitting, 'id' | 'kind'> | undefined {
  switch (end.kind) {
    case 'load':
      return circuit.loads[end.load]?.fitting;
    case 'source':
      return circuit.starts[end.source]?.fitting;
    case 'nothing': {
      const fittingId = circuit.places[end.node]?.fittingId;
      return plan.fittings.find(({ id }) => id === fittingId);
    }
    case 'device':
      return undefined;
  }
}

/** RULES 6: a live way from a source to a load, to another source or to nothing, without any device: stop; a short stub: note. */
export const noDevice: Rule = {
  id: 'no-device',
  sensitive: false,
  check: (facts) => {
    const { model } = facts;
    const found = new Map<string, Finding>();
    for (const { source, ways } of facts.unprotected) {
      for (const way of ways.filter(isWithoutDevice)) {
        const { stub, cables, lengthM, plusMinusM } = way;
        const far = farFitting(model, way);
        const battery = model.circuit.starts[source]?.fitting;
        const [first, ...rest] = cables.map((cable) => runPlace(facts, cable));
        if (far === undefined || battery === undefined || first === undefined) continue;
        // what a capacitor alone can burn is told with its energy
        if (battery.kind === 'capacitor') continue;
        // a charger takes current there: its cable is finished
        const isStub = stub && far.kind !== 'charger';
        const isNote = isStub && lengthM + plusMinusM <= STUB_M;
        const one = finding('no-device', {
          severity: isNote ? 'note' : 'stop',
          places: [first, ...rest, fittingPlace(battery), fittingPlace(far)],
          params: { lengthM, limitM: 0.45, endsAt: way.end.kind },
          source: 'cfr183455',
          provisional: isStub && !isNote && lengthM - plusMinusM <= STUB_M,
          why: `unprotected:${battery.id}`,
        });
        // the same cable seen from both its sources, or on the way to several amplifiers, is one finding: the worst
        const before = found.get(one.id);
        if (before === undefined || rankOf(one.severity) > rankOf(before.severity)) found.set(one.id, one);
      }
    }
    return [...found.values()];
  },
};
