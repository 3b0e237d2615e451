import { temperatureAfterWhy } from '../../calc/conductor/shortHeating.ts';
import { slowestWhy } from '../../calc/fuse/timeCurrent.ts';
import { batteryOhmWhy } from '../../calc/supply/battery.ts';
import { type Why, whyBuilder, whyValue } from '../../calc/why.ts';
import type { Facts } from '../facts.ts';
import { cableOf } from '../model.ts';
import { batteryCase, CONDITION, type Extreme } from '../short/battery.ts';
import { isTree } from '../short/ends.ts';
import { familyNameOf, ratedLinks } from '../short/links.ts';
import { type BothFaults, faultNetwork } from '../short/net.ts';
import type { CableShort } from '../short/shorts.ts';
import { aboutInput, aboutInsulation, aboutSetting } from './about.ts';

/** Of one source and one way to the place: battery, then piece by piece; the result is 'Ik'. */
function alongWhy(facts: Facts, { lowest, returnOhm }: BothFaults, short: CableShort, extreme: Extreme): Why {
  const { model } = facts;
  const { circuit, ways, settings } = model;
  const builder = whyBuilder();
  const isLowest = extreme === 'lowest';
  const { a = 0, b = 0 } = circuit.cables[short.cable] ?? {};
  const place = isLowest ? (short.lowestShare === 0 ? a : b) : short.highestNode;
  const net = faultNetwork(facts, { extreme });
  builder.input('E', 'V', settings.restV.value, aboutSetting(settings, 'restV'));
  const [source] = circuit.sources;
  const [held] = net.sources;
  if (source === undefined || held === undefined) throw new Error('why: a short without a source');
  const own = batteryOhmWhy(batteryCase(model, source), CONDITION[extreme], {
    ccaA: aboutInput(source.fitting.ccaA, `${source.fitting.id}.ccaA`),
    ...(source.fitting.kind === 'battery' && source.fitting.internalOhm !== null
      ? { ownOhm: aboutInput(source.fitting.internalOhm, `${source.fitting.id}.internalOhm`) }
      : {}),
  });
  const terms = [builder.include(own)];
  const factoryOhm = held.ohm - whyValue(own);
  if (source.fitting.kind !== 'battery') {
    builder.input('Rfactory', 'ohm', factoryOhm);
    terms.push('Rfactory');
  }
  let ahead = 0;
  let count = 0;
  for (let step = ways.stepTo(place); step !== undefined; step = ways.stepTo(step.from)) {
    const ohm = net.resistors[step.edge]?.ohm ?? 0;
    count += 1;
    const symbol = `Rpart_${count}`;
    const kind = model.sides.edges[step.edge]?.kind;
    builder.input(symbol, 'ohm', ohm, { label: kind === 'link' ? 'Rlink' : kind === 'cable' ? 'Rcable' : 'Rcontact' });
    terms.push(symbol);
    ahead += ohm;
  }
  const current = isLowest ? short.lowestA : short.highestA;
  const bodyOhm = isLowest ? returnOhm : 0;
  if (isLowest && returnOhm > 0) {
    builder.input('Rbody', 'ohm', returnOhm, aboutSetting(settings, 'bodyOhm'));
    terms.push('Rbody');
  }
  // what is left is the way back: strap, grounds, and the body where they share it
  const whole = current > 0 ? settings.restV.value / current : (lowest.ohm[place] ?? 0);
  builder.input('Rback', 'ohm', Math.max(0, whole - ahead - held.ohm - bodyOhm));
  terms.push('Rback');
  builder.step('Ik', 'A', `E / (${terms.join(' + ')})`, current, { source: 'feedrunRules' });
  return builder.done('Ik');
}

/** Why of the prospective current of a dead short on a cable; the result is 'Ik'. */
export function prospectiveWhy(facts: Facts, both: BothFaults, short: CableShort, extreme: Extreme): Why {
  const isLowest = extreme === 'lowest';
  const current = isLowest ? short.lowestA : short.highestA;
  if (isTree(facts.model) && facts.model.circuit.alternators.length === 0 && current > 0)
    return alongWhy(facts, both, short, extreme);
  const builder = whyBuilder();
  if (!(current > 0)) {
    builder.input('Ik', 'A', 0);
    return builder.done('Ik');
  }
  const { a = 0, b = 0 } = facts.model.circuit.cables[short.cable] ?? {};
  const node = isLowest ? (short.lowestShare < 0.5 ? a : b) : short.highestNode;
  const openV = both[extreme].openVolts[node] ?? 0;
  const bodyOhm = isLowest ? both.returnOhm : 0;
  builder.input('E', 'V', openV);
  builder.input('Rahead', 'ohm', openV / current - bodyOhm);
  if (bodyOhm > 0) builder.input('Rbody', 'ohm', bodyOhm, aboutSetting(facts.model.settings, 'bodyOhm'));
  builder.step('Ik', 'A', bodyOhm > 0 ? 'E / (Rahead + Rbody)' : 'E / Rahead', current, { source: 'feedrunRules' });
  return builder.done('Ik');
}

/** The fuse that ends the worst short of a cable, and the time it takes at most; the time alone where no line tells it. */
function timeOf(facts: Facts, { worst }: CableShort): Why | null {
  const rated = ratedLinks(facts)[worst.link ?? -1];
  if (rated == null) return null;
  const family = familyNameOf(rated);
  return slowestWhy({ family, ratingA: rated.ratingA }, worst.linkA, {
    currentA: { label: 'Ik' },
    ratingA: { label: 'In' },
  });
}

/** Why of the longest time a fuse takes to clear the worst short of a cable; the result is 'tSlowest'. */
export function clearingWhy(facts: Facts, short: CableShort): Why {
  const told = timeOf(facts, short);
  if (told !== null) return told;
  const builder = whyBuilder();
  builder.input('tSlowest', 's', short.worst.worst?.slowestS ?? 0);
  return builder.done('tSlowest');
}

/** Why of the temperature a conductor has reached by then; the result is 'Tend'. */
export function conductorWhy(facts: Facts, short: CableShort): Why {
  const { model } = facts;
  const { worst, conductor, size } = short;
  const cable = model.circuit.cables[short.cable];
  if (cable === undefined || worst.worst === null) throw new Error('why: a short without a cable');
  const { gauge, material, insulationC } = cableOf(cable, size);
  return temperatureAfterWhy(
    { gauge, material, insulationC },
    worst.worst.currentA,
    timeOf(facts, short) ?? worst.worst.slowestS,
    conductor,
    { currentA: { label: 'Ik' }, insulationC: aboutInsulation(cable) },
  );
}
