import { ampacityWhy } from '../../calc/conductor/ampacity.ts';
import { type GaugeId, gauge } from '../../calc/conductor/gauge.ts';
import { steadyTemperatureC, steadyTemperatureWhy } from '../../calc/conductor/heating.ts';
import { resistancePerMOhm, resistanceWhy } from '../../calc/conductor/resistance.ts';
import { smallestAtLeast, type Why, whyBuilder } from '../../calc/why.ts';
import { ampacityCase, worstZone } from '../capacity.ts';
import { stockOf } from '../choose/choose.ts';
import type { LotChoice } from '../choose/describe.ts';
import { dropLimitV } from '../choose/trial.ts';
import type { Cable } from '../circuit.ts';
import { RUNAWAY_C } from '../conductor.ts';
import { type Facts, fullOf } from '../facts.ts';
import { cableOf, type Model } from '../model.ts';
import type { StatePoint } from '../operate.ts';
import { heatingShareAt } from '../states.ts';
import { ambientC, type MarkedZone } from '../surroundings.ts';
import { worstDrop } from '../worstDrop.ts';
import { aboutInsulation, aboutSetting } from './about.ts';

/** The state in which a cable carries most. */
export function worstPoint({ operating }: Facts, cable: number): StatePoint | null {
  const carried = ({ amps }: StatePoint): number => Math.abs(amps[cable] ?? 0);
  return (operating?.states ?? []).reduce<StatePoint | null>(
    (worst, point) => (worst === null || carried(point) > carried(worst) ? point : worst),
    null,
  );
}

/** Records 'Iheat' of 'Ifull': by the plan's own duty, or where its loads have others, by all of theirs. */
function recordHeating(model: Model, index: number, fullA: number, builder: ReturnType<typeof whyBuilder>): number {
  const { settings } = model;
  const share = heatingShareAt(model, index);
  if (share !== Math.sqrt(settings.duty.value)) return builder.input('Iheat', 'A', fullA * share);
  const duty = builder.input('duty', '1', settings.duty.value, aboutSetting(settings, 'duty'));
  return builder.step('Iheat', 'A', 'Ifull * sqrt(duty)', fullA * Math.sqrt(duty), { source: 'feedrunRules' });
}

/** Why of the drop along one cable at full current; the result is 'U'. */
export function cableDropWhy({ model }: Facts, cable: Cable, index: number, size: GaugeId, point: StatePoint): Why {
  const { settings } = model;
  const builder = whyBuilder();
  const fullA = builder.input('Ifull', 'A', Math.abs(point.amps[index] ?? 0), { label: `fullAt.${point.state}` });
  const heatingA = recordHeating(model, index, fullA, builder);
  const { material } = cable.conductor;
  let ohm = 0;
  const terms = cable.stretches.map(({ zone, lengthM }, place) => {
    const suffix = `_${place + 1}`;
    const at = { ...cableOf(cable, size), ambientC: ambientC(settings, zone) };
    const steady = steadyTemperatureC(heatingA, at);
    builder.include(
      steadyTemperatureWhy(heatingA, at, {
        currentA: { label: 'Iheat' },
        insulationC: aboutInsulation(cable),
        ambientC: aboutSetting(settings, `${zone}C`),
      }),
      suffix,
    );
    const conductorC = steady ?? RUNAWAY_C;
    const perM = builder.include(
      resistanceWhy(size, material.value, conductorC, { conductorC: { label: 'Tx' } }),
      suffix,
    );
    builder.input(`L${suffix}`, 'm', lengthM, {
      origin: cable.length.origin === 'taped' ? 'measured' : 'drawn',
      label: 'L',
    });
    const part = lengthM * resistancePerMOhm(size, material.value, conductorC);
    ohm += part;
    builder.step(`R${suffix}`, 'ohm', `L${suffix} * ${perM}`, part, { label: 'R' });
    return `R${suffix}`;
  });
  builder.step('R', 'ohm', terms.length === 0 ? '0' : terms.join(' + '), ohm);
  builder.step('U', 'V', 'Ifull * R', fullA * ohm);
  return builder.done('U');
}

/** Why of the temperature that a cable settles at under a current held, in its hottest air; the result is 'Tx', or 'q' where it settles at none. */
export function heatingWhy({ model }: Facts, index: number, size: GaugeId, currentA: number): Why {
  const { settings } = model;
  const cable = model.circuit.cables[index];
  if (cable === undefined) throw new RangeError(`heatingWhy: no cable ${index}`);
  const zone = cable.stretches.reduce<MarkedZone>(
    (hottest, { zone: here }) => (ambientC(settings, here) > ambientC(settings, hottest) ? here : hottest),
    cable.stretches[0]?.zone ?? 'cabin',
  );
  return steadyTemperatureWhy(
    currentA,
    { ...cableOf(cable, size), ambientC: ambientC(settings, zone) },
    { insulationC: aboutInsulation(cable), ambientC: aboutSetting(settings, `${zone}C`) },
  );
}

/** Why of a cable's ampacity, in its worst zone; the result is 'Iz'. */
export function cableAmpacityWhy(model: Model, cable: Cable, size: GaugeId): Why {
  const { zone } = worstZone(model, cable, size);
  return ampacityWhy(ampacityCase(model, cable, size, zone), {
    insulationC: aboutInsulation(cable),
    ambientC: aboutSetting(model.settings, `${zone}C`),
  });
}

/** Why of a size: what it has to meet, and the smallest in stock that does; the result is its area 'S'. */
export function sizeWhy(facts: Facts, cable: Cable, index: number, size: GaugeId, lot: LotChoice | undefined): Why {
  const { model, limits } = facts;
  const { settings } = model;
  const builder = whyBuilder();
  const fullA = fullOf(facts, index);
  if (fullA !== null) {
    builder.input('Iheat', 'A', fullA * heatingShareAt(model, index));
    const limitA = limits[index] ?? Infinity;
    if (limitA !== Infinity) builder.input('Ifuse', 'A', limitA);
  }
  builder.input('Iz', 'A', worstZone(model, cable, size).ampacityA);
  const drops = (model.ways.behind[index] ?? []).flatMap((load) => worstDrop(facts, load) ?? []);
  if (drops.length > 0) {
    const worstV = Math.max(...drops.map(({ feedV, backV }) => feedV + backV));
    builder.input('Ucables', 'V', worstV);
    builder.input('dropLimit', '1', settings.dropLimit.value, aboutSetting(settings, 'dropLimit'));
    builder.input('Usystem', 'V', settings.systemV, { origin: 'told' });
    builder.step('Ulimit', 'V', 'dropLimit * Usystem', dropLimitV(model), { source: 'abycE11' });
  }
  const { areaMm2, areaSource } = gauge(size);
  const stockMm2 = stockOf(model).map((held) => gauge(held).areaMm2);
  const leastMm2 = lot?.smallest == null ? areaMm2 : gauge(lot.smallest).areaMm2;
  if (lot === undefined || smallestAtLeast(stockMm2, leastMm2) !== areaMm2) {
    builder.input('S', 'mm2', areaMm2, { origin: lot === undefined ? 'told' : 'published', source: areaSource });
    return builder.done('S');
  }
  builder.list('Sstock', 'mm2', stockMm2, { origin: 'told', source: areaSource });
  builder.input('Sleast', 'mm2', leastMm2, { label: 'Sleast' });
  builder.step('S', 'mm2', 'smallestAtLeast(Sstock, Sleast)', areaMm2);
  return builder.done('S');
}
