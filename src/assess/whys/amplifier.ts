import { type Why, whyBuilder } from '../../calc/why.ts';
import type { CircuitLoad } from '../circuit.ts';
import type { Demand } from '../demand.ts';
import { cableDropV, type WayDrop } from '../drop.ts';
import type { Facts } from '../facts.ts';
import type { StatePoint } from '../operate.ts';
import { aboutInput } from './about.ts';

/** Why of an amplifier's full current in a state; the result is 'Ifull'. */
export function currentWhy({ fitting }: CircuitLoad, demand: Demand, point: StatePoint, load: number): Why {
  const builder = whyBuilder();
  const fullA = point.loadAmps[load] ?? 0;
  if (fitting.kind === 'load') {
    builder.input('Ifull', 'A', fitting.currentA.value, aboutInput(fitting.currentA, `${fitting.id}.currentA`));
    return builder.done('Ifull');
  }
  const { ratedW, efficiency, onboardFusesA } = fitting;
  if (demand.law === 'constant' || ratedW === null) {
    builder.list('fuses', 'A', onboardFusesA ?? [], { origin: 'told' });
    builder.step('Ifull', 'A', 'sum(fuses)', fullA, { source: 'feedrunRules' });
    return builder.done('Ifull');
  }
  builder.input('P', 'W', ratedW.value, aboutInput(ratedW, `${fitting.id}.ratedW`));
  builder.input('eta', '1', efficiency.value, aboutInput(efficiency, `${fitting.id}.efficiency`));
  builder.input('V', 'V', point.loadVolts[load] ?? 0, { label: `terminalAt.${point.state}` });
  if (demand.law === 'power') {
    builder.step('Ifull', 'A', 'P / (eta * V)', fullA, { source: 'feedrunRules' });
  } else {
    builder.input('Vrated', 'V', demand.atVolts, { origin: 'published', source: 'cta2006' });
    builder.step('Ifull', 'A', 'P / (eta * Vrated) * V / Vrated', fullA, { source: 'feedrunRules' });
  }
  return builder.done('Ifull');
}

/** Why of an amplifier's drop: cable by cable along its way, and the whole beside it; the result is 'Ucables'. */
export function amplifierDropWhy({ model }: Facts, { feed, back, wholeV, feedV, backV, point }: WayDrop): Why {
  const builder = whyBuilder();
  const terms = [...feed, ...back].map((cable, place) => {
    const suffix = `_${place + 1}`;
    const run = model.circuit.cables[cable]?.run;
    builder.input(`I${suffix}`, 'A', Math.abs(point.amps[cable] ?? 0), { label: 'Ifull' });
    builder.input(`R${suffix}`, 'ohm', point.cableOhm[cable] ?? 0, run === undefined ? {} : { label: 'R' });
    builder.step(`U${suffix}`, 'V', `I${suffix} * R${suffix}`, cableDropV(point, cable), { label: 'U' });
    return `U${suffix}`;
  });
  builder.input('E', 'V', point.volts, { label: `postsAt.${point.state}` });
  builder.input('V', 'V', point.volts - wholeV, { label: `terminalAt.${point.state}` });
  builder.step('Uwhole', 'V', 'E - V', wholeV);
  builder.step('Ucables', 'V', terms.length === 0 ? '0' : terms.join(' + '), feedV + backV, { source: 'abycE11' });
  return builder.done('Ucables');
}
