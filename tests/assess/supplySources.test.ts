/** Sources side by side: a charger between two batteries, two alternators, a stud that the factory feeds; by hand. */
import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { FittingOf, Plan, Settings } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

const told = <T>(value: T) => ({ value, origin: 'told' as const });
const found = ({ findings }: Assessment, rule: RuleId) => findings.filter((one) => one.rule === rule);

/** A warm lead-acid battery of 600 CCA: 0.45 x (12.6 - 7.2) / 600. */
const WARM_OHM = 0.00405;

/** Nothing but the sources has a resistance to speak of: joints, body and links none, cables 1 mm long and thick. */
const BARE: Partial<Settings> = { jointOhm: told(0), bodyOhm: told(0), linkDropV: told(0) };
const STRAP = { lengthM: told(0.01), areaMm2: told(500) };
const NEAR = 0.001;
const THICK = { size: 'sae:4/0' } as const;

/** Where f falls through 0 between the two, by halving. */
function zero(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let count = 0; count < 100; count += 1) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

describe('a DC-DC charger of 30 A and 0.9 that fills a second battery (RULES 8)', () => {
  /** An amplifier of so much at any voltage on the rear battery; alternator of 90 A, 72 A hot and 32.4 A at idle; 35 A vehicle. */
  const charged = (ampA: number): Plan =>
    new PlanOf(BARE)
      .battery('front', { strap: STRAP })
      .fitting('alternator', 'alternator', { ratedA: told(90), vehicleA: told(35) })
      .fuse('frontFuse', 60, { zone: 'bay' })
      .fitting('charger', 'charger', { outputV: told(14.4), outputMaxA: told(30), efficiency: told(0.9) })
      .fuse('chargerFuse', 60)
      .battery('rear', { zone: 'cargo', strap: null })
      .fuse('rearFuse', 150)
      .amplifier('amp', { ratedW: null, onboardFusesA: [ampA] })
      .fitting('ground', 'g1')
      .fitting('ground', 'g2')
      .fitting('ground', 'g3')
      .run('alternator.positive', 'front.positive', NEAR, { kind: 'factory', size: 'mm2:120' })
      .run('front.positive', 'frontFuse.in', NEAR, { zone: 'bay', ...THICK })
      .run('frontFuse.out', 'charger.input', NEAR, THICK)
      .run('charger.output', 'chargerFuse.in', NEAR, THICK)
      .run('chargerFuse.out', 'rear.positive', NEAR, THICK)
      .run('charger.ground', 'g1.body', NEAR, THICK)
      .run('rear.positive', 'rearFuse.in', NEAR, THICK)
      .run('rearFuse.out', 'amp.supply', NEAR, THICK)
      .run('rear.negative', 'g2.body', NEAR, THICK)
      .run('amp.ground', 'g3.body', NEAR, THICK)
      .done();

  it('gives its 30 A of 60 A, the rear battery the rest; what it draws in front is 416 W', () => {
    const { supply, amplifiers } = assess(charged(60));
    const rearV = 12.6 - (60 - 30) * WARM_OHM;
    const inputW = (30 * rearV) / 0.9;
    expect(inputW).toBeCloseTo(415.95, 2);
    // on the road the alternator holds 14.4 V: 35 A and 28.9 A of its 72 A
    expect(supply.alternators).toMatchObject([{ saturatedIdle: true, saturatedCruise: false }]);
    expect(supply.alternators[0]?.cruiseOutA).toBeCloseTo(35 + inputW / 14.4, 2);
    expect(supply.postsV.cruise).toBeCloseTo(rearV, 4);
    // at idle it brings 32.4 A, the front battery the rest of the vehicle's and the charger's
    const frontV = zero((volts) => 12.6 - WARM_OHM * (35 - 32.4 + inputW / volts) - volts, 11, 12.6);
    expect(frontV).toBeCloseTo(12.454, 3);
    expect(supply.postsV.idle).toBeCloseTo(frontV, 4);
    // with the engine off the charger rests, and the rear battery carries all of it
    expect(supply.postsV.off).toBeCloseTo(12.6 - 60 * WARM_OHM, 4);
    expect(amplifiers[0]?.terminalV).toBeCloseTo(12.6 - 60 * WARM_OHM, 3);
  });

  it('carries the mean of 21 A alone: 336 W in front, and the front battery empties at idle', () => {
    const { supply } = assess(charged(60));
    // 60 A x 1/3 + 1 A, at 14.4 V over 0.9
    const inputW = (21 * 14.4) / 0.9;
    const frontV = zero((volts) => 12.6 - WARM_OHM * (35 - 32.4 + inputW / volts) - volts, 11, 12.6);
    expect(supply.deficitCruiseA).toBe(0);
    expect(supply.deficitIdleA).toBeCloseTo(35 - 32.4 + inputW / frontV, 2);
    expect(supply.deficitIdleA).toBeCloseTo(29.5, 1);
  });

  it('parts the batteries: with the engine off the rear one alone gives 21 A, for 58 minutes', () => {
    const { groups } = assess(charged(60)).supply;
    expect(groups.map(({ fittingIds }) => fittingIds)).toEqual([['front'], ['rear']]);
    expect(groups[0]).toMatchObject({ minutesOff: null });
    expect(groups[1]?.meanA).toBeCloseTo(21, 4);
    const hours = 0.5 * 20 * (60 / (21 * 20)) ** 1.2;
    expect(60 * hours).toBeCloseTo(58.1, 1);
    expect(groups[1]?.minutesOff).toBeCloseTo(60 * hours, 2);
  });

  it('holds its 14.4 V while it can: 20 A are its own', () => {
    const { supply } = assess(charged(20));
    expect(supply.postsV.cruise).toBeCloseTo(14.4, 3);
    expect(supply.alternators[0]?.cruiseOutA).toBeCloseTo(35 + 20 / 0.9, 2);
  });
});

describe('two alternators (RULES 8): 72 A and 40 A hot on the road, 32.4 A and 18 A at idle', () => {
  const two = (eachA: number, vehicleA = 35): Plan =>
    new PlanOf(BARE)
      .battery('battery', { strap: STRAP })
      .fitting('alternator', 'first', { ratedA: told(90), vehicleA: told(vehicleA) })
      .fitting('alternator', 'second', { ratedA: told(50), vehicleA: told(vehicleA / 2) })
      .fuse('main', 200, { zone: 'bay' })
      .block('block', [null, null])
      .amplifier('one', { ratedW: null, onboardFusesA: [eachA] })
      .amplifier('two', { ratedW: null, onboardFusesA: [eachA] })
      .fitting('ground', 'g')
      .run('first.positive', 'battery.positive', NEAR, { kind: 'factory', size: 'mm2:120' })
      .run('second.positive', 'battery.positive', NEAR, { kind: 'factory', size: 'mm2:120' })
      .run('battery.positive', 'main.in', NEAR, { zone: 'bay', ...THICK })
      .run('main.out', 'block.bus', NEAR, THICK)
      .run('block.out1', 'one.supply', NEAR, THICK)
      .run('block.out2', 'two.supply', NEAR, THICK)
      .run('one.ground', 'g.body', NEAR, THICK)
      .run('two.ground', 'g.body', NEAR, THICK)
      .done();

  it('both at their limit under 120 A and the vehicle, drawn once: 155 A against 112 A', () => {
    const { supply } = assess(two(60));
    expect(supply.alternators).toMatchObject([
      { fittingId: 'first', saturatedIdle: true, saturatedCruise: true },
      { fittingId: 'second', saturatedIdle: true, saturatedCruise: true },
    ]);
    expect(supply.alternators.map(({ cruiseOutA }) => cruiseOutA ?? 0).map(Math.round)).toEqual([72, 40]);
    expect(supply.postsV.cruise).toBeCloseTo(12.6 - (155 - 112) * WARM_OHM, 4);
    expect(supply.postsV.idle).toBeCloseTo(12.6 - (155 - 50.4) * WARM_OHM, 4);
  });

  it('alike in their ways they share alike: 70 A by halves; of 90 A the smaller gives its 40 A, the larger 50 A', () => {
    const outA = (eachA: number) => assess(two(eachA, 0)).supply.alternators.map(({ cruiseOutA }) => cruiseOutA ?? 0);
    for (const half of outA(35)) expect(half).toBeCloseTo(35, 3);
    const [larger = 0, smaller = 0] = outA(45);
    expect(smaller).toBeCloseTo(40, 4);
    expect(larger).toBeCloseTo(50, 3);
    const { supply } = assess(two(45, 0));
    expect(supply.alternators).toMatchObject([{ saturatedCruise: false }, { saturatedCruise: true }]);
    expect(supply.postsV.cruise).toBeCloseTo(14.4, 3);
  });

  it('add up in the balance: 42 A and 35 A in the mean against 112 A and 50.4 A', () => {
    const answer = assess(two(60));
    expect(answer.supply.deficitCruiseA).toBe(0);
    expect(answer.supply.deficitIdleA).toBeCloseTo(77 - 50.4, 3);
    expect(found(answer, 'charging-deficit')).toMatchObject([{ severity: 'note' }]);
  });
});

describe('a stud that the factory feeds', () => {
  type Stud = Partial<FittingOf<'takeOff'>>;

  /** 60 A at any voltage from a stud; with the battery it hangs on drawn, or with the stud standing for it. */
  const stud = (patch: Stud, drawn: boolean, firstM = 0.15, settings: Partial<Settings> = BARE): Plan => {
    const draft = new PlanOf(settings)
      .fitting('takeOff', 'stud', { zone: 'bay', ccaA: told(600), ...patch })
      .fuse('main', 80, { zone: 'bay' })
      .amplifier('amp', { ratedW: null, onboardFusesA: [60] })
      .fitting('ground', 'g')
      .run('stud.stud', 'main.in', firstM, { zone: 'bay', ...THICK })
      .run('main.out', 'amp.supply', NEAR, THICK)
      .run('amp.ground', 'g.body', NEAR, THICK);
    if (drawn)
      draft
        .battery('battery', { strap: STRAP })
        .run('battery.positive', 'stud.stud', 3, { kind: 'factory', size: 'mm2:50', id: 'factory' });
    return draft.done();
  };

  /** IEC 60228 class 5: 50 mm2 0.386 ohm per km at 20 degC; 3 m. */
  const factoryOhm = (hotC: number): number => (3 * 0.000386 * (234.5 + hotC)) / (234.5 + 20);

  it('drawn from a battery loses over the factory cable at 50 degC: 60 A over 1.29 mohm', () => {
    const { amplifiers, supply } = assess(stud({}, true, NEAR));
    expect(factoryOhm(50)).toBeCloseTo(0.00129, 5);
    expect(supply.postsV.off).toBeCloseTo(12.6 - 60 * WARM_OHM, 4);
    expect(amplifiers[0]?.terminalV).toBeCloseTo(12.6 - 60 * (WARM_OHM + factoryOhm(50)), 3);
  });

  it('standing for a battery elsewhere loses over its link too: 75 mV at 100 A', () => {
    const { amplifiers, supply } = assess(stud({ fuseA: 100 }, false, NEAR, { ...BARE, linkDropV: told(0.075) }));
    // of nominal area and hot from the bay, 80 degC: 25 mm2 has 0.780 ohm per km
    const cableOhm = (3 * 0.00078 * 25 * (234.5 + 80)) / (50 * (234.5 + 20));
    expect(supply.postsV.off).toBeCloseTo(12.6 - 60 * (WARM_OHM + cableOhm), 4);
    expect(amplifiers[0]?.terminalV).toBeCloseTo(12.6 - 60 * (WARM_OHM + cableOhm + 0.075 / 100 + 0.075 / 80), 3);
  });

  it('is protected from the stud on by the factory fuse where its rating is told, else by nothing', () => {
    const length = (patch: Stud, drawn: boolean) =>
      found(assess(stud(patch, drawn, 0.6)), 'unprotected-length').map(({ severity }) => severity);
    expect(length({ fuseA: 100 }, false)).toEqual([]);
    expect(length({ fuseA: null }, false)).toEqual(['stop']);
    const run = assess(stud({ fuseA: 100 }, false, 0.6)).runs.find(({ runId }) => runId === 'stud-main');
    expect(run).toMatchObject({ limitA: 100, unprotectedM: 0 });
  });

  it('asks of the factory fuse what it feeds already and ours together, the battery drawn or not', () => {
    for (const drawn of [false, true]) {
      expect(found(assess(stud({ fuseA: 100, usedA: told(30) }, drawn)), 'takeoff-overloaded')).toEqual([]);
      const [over] = found(assess(stud({ fuseA: 100, usedA: told(50) }, drawn)), 'takeoff-overloaded');
      expect(over).toMatchObject({ severity: 'fix', places: [{ id: 'stud' }] });
      expect(over?.params.fullA).toBeCloseTo(110, 4);
    }
  });
});
