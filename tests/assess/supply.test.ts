import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { FittingOf, Settings } from '../../src/plan/schema.ts';
import { PlanOf } from './planOf.ts';

const told = <T>(value: T) => ({ value, origin: 'told' as const });

/** A warm lead-acid battery of 600 CCA: 0.45 x (12.6 - 7.2) / 600. */
const WARM_OHM = 0.00405;

/** Two amplifiers of which only the fuses are told, and so draw that current at any voltage, class D, 1 A when silent. */
const pair = (fusesA: number, settings: Partial<Settings> = {}, battery: Partial<FittingOf<'battery'>> = {}) =>
  new PlanOf(settings)
    .battery('battery', battery)
    .fuse('main', 200, { zone: 'bay' })
    .block('block', [null, null])
    .amplifier('one', { ratedW: null, onboardFusesA: [fusesA] })
    .amplifier('two', { ratedW: null, onboardFusesA: [fusesA] })
    .fitting('ground', 'g1')
    .fitting('ground', 'g2')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:2/0' })
    .run('main.out', 'block.bus', 4, { size: 'sae:2/0' })
    .run('block.out1', 'one.supply', 0.4, { size: 'sae:1/0' })
    .run('block.out2', 'two.supply', 0.4, { size: 'sae:1/0' })
    .run('one.ground', 'g1.body', 0.4, { size: 'sae:1/0' })
    .run('two.ground', 'g2.body', 0.4, { size: 'sae:1/0' });

const found = ({ findings }: Assessment, rule: RuleId) => findings.filter((one) => one.rule === rule);

const alternator = { ratedA: told(90), vehicleA: told(35) };

describe('the alternator (RULES 8): 90 A, hot 72 A on the road and 32.4 A at idle, 35 A for the vehicle', () => {
  it('keeps up on the road with two amplifiers of 30 A, and says that it does not at idle', () => {
    const answer = assess(pair(30).fitting('alternator', 'alternator', alternator).done());
    // 30 A x 1/3 + 1 A each
    expect(answer.supply.meanRunningA).toBeCloseTo(22, 6);
    expect(answer.supply.amplifiers[0]?.meanOffA).toBeCloseTo(11, 6);
    expect(answer.supply.deficitCruiseA).toBe(0);
    expect(answer.supply.deficitIdleA).toBeCloseTo(22 + 35 - 32.4, 5);
    expect(found(answer, 'charging-deficit')).toMatchObject([{ severity: 'note', places: [{ id: 'alternator' }] }]);
    expect(answer.rulesNotChecked).toEqual([]);
  });

  it('falls short on the road with two of 60 A: 42 A and 35 A against 72 A', () => {
    const answer = assess(pair(60).fitting('alternator', 'alternator', alternator).done());
    expect(answer.supply.deficitCruiseA).toBeCloseTo(77 - 72, 5);
    const [finding] = found(answer, 'charging-deficit');
    expect(finding).toMatchObject({ severity: 'fix', params: { speed: 'cruise' } });
    expect(finding?.params.demandA).toBeCloseTo(77, 5);
  });

  it('of which the output is assumed decides by an assumption, unless twice as much would not keep up either', () => {
    const assumed = { ...alternator, ratedA: { value: 90, origin: 'assumed' as const } };
    const decided = (fusesA: number, fitted: typeof alternator | typeof assumed) =>
      found(assess(pair(fusesA).fitting('alternator', 'alternator', fitted).done()), 'charging-deficit').map(
        ({ severity, decidedBy }) => [severity, ...decidedBy],
      );
    expect(decided(60, alternator)).toEqual([['fix']]);
    // 77 A against 144 A
    expect(decided(60, assumed)).toEqual([['fix', 'alternator.ratedA']]);
    // 2 x (190 / 3 + 1) + 35 = 164 A against 144 A
    expect(decided(190, assumed)).toEqual([['fix']]);
  });

  it('is saturated at full output: the battery carries the rest and its posts fall', () => {
    const { supply } = assess(pair(60).fitting('alternator', 'alternator', alternator).done());
    expect(supply.alternators).toMatchObject([{ saturatedIdle: true, saturatedCruise: true }]);
    expect(supply.alternators[0]?.cruiseOutA).toBeCloseTo(72, 6);
    expect(supply.postsV.off).toBeCloseTo(12.6 - 120 * WARM_OHM, 6);
    expect(supply.postsV.idle).toBeCloseTo(12.6 - (120 + 35 - 32.4) * WARM_OHM, 5);
    expect(supply.postsV.cruise).toBeCloseTo(12.6 - (120 + 35 - 72) * WARM_OHM, 5);
  });

  it('holds its voltage while it can: 10 A each and the vehicle are 55 A of 72 A', () => {
    const { supply } = assess(pair(10).fitting('alternator', 'alternator', alternator).done());
    expect(supply.alternators).toMatchObject([{ saturatedIdle: true, saturatedCruise: false }]);
    expect(supply.alternators[0]?.cruiseOutA).toBeCloseTo(55, 5);
    expect(supply.postsV.cruise).toBeCloseTo(14.4, 4);
  });

  it('is told nothing of where none is drawn, and says so', () => {
    const answer = assess(pair(60).done());
    expect(answer.supply).toMatchObject({ alternators: [], deficitIdleA: null, deficitCruiseA: null });
    expect(answer.supply.postsV).toMatchObject({ idle: null, cruise: null });
    expect(answer.rulesNotChecked).toEqual([{ rule: 'charging', why: 'noAlternator' }]);
    expect(found(answer, 'charging-deficit')).toEqual([]);
  });
});

describe('batteries (RULES 8)', () => {
  it('play 60 Ah, half of it usable, at 22 A for 55 minutes', () => {
    const { groups } = assess(pair(30).done()).supply;
    const hours = 0.5 * 20 * (60 / (22 * 20)) ** 1.2;
    expect(60 * hours).toBeCloseTo(54.9, 1);
    expect(groups).toMatchObject([{ fittingIds: ['battery'] }]);
    expect(groups[0]?.minutesOff).toBeCloseTo(60 * hours, 5);
  });

  it('go by their own resistance where it is told', () => {
    const { postsV } = assess(pair(60, {}, { internalOhm: told(0.01) }).done()).supply;
    expect(postsV.off).toBeCloseTo(12.6 - 120 * 0.01, 6);
  });

  it('reckon the resistance by the standard of the label: 600 A by EN fall to 7.5 V', () => {
    const { postsV } = assess(pair(60, {}, { ccaStandard: 'en' }).done()).supply;
    expect(postsV.off).toBeCloseTo(12.6 - (120 * 0.45 * (12.6 - 7.5)) / 600, 6);
  });

  it('leave an amplifier less by just what they lose', () => {
    const weak = assess(pair(60, {}, { internalOhm: told(0.02) }).done());
    const stiff = assess(pair(60, {}, { internalOhm: told(0.0001) }).done());
    const [low, high] = [weak, stiff].map(({ amplifiers }) => amplifiers[0]?.terminalV ?? 0);
    expect((high ?? 0) - (low ?? 0)).toBeCloseTo(120 * (0.02 - 0.0001), 5);
    expect(weak.amplifiers[0]?.dropWholeV).toBeCloseTo(stiff.amplifiers[0]?.dropWholeV ?? 0, 9);
    expect(found(weak, 'below-cut-out').length).toBe(2);
    expect(found(stiff, 'below-cut-out')).toEqual([]);
  });

  it('that stand elsewhere lose over the factory cable too: 3 m of 50 mm2 at 80 degC', () => {
    const plan = pair(30).done();
    const post = new PlanOf().fitting('jumpPost', 'battery', { ccaA: told(600) }).done().fittings[0];
    if (post === undefined) throw new Error('no post');
    const runs = plan.runs.map((run) =>
      run.from.fittingId === 'battery' ? { ...run, from: { fittingId: 'battery', terminal: 'stud' } } : run,
    );
    const fittings = plan.fittings.map((fitting) => (fitting.id === 'battery' ? post : fitting));
    const { amplifiers, supply } = assess({ ...plan, fittings, runs });
    // IEC 60228 class 5: 0.780 ohm per km for 25 mm2 at 20 degC
    const cableOhm = (3 * 0.00078 * 25 * (234.5 + 80)) / (50 * (234.5 + 20));
    expect(supply.postsV.off).toBeCloseTo(12.6 - 60 * (WARM_OHM + cableOhm), 6);
    expect(amplifiers[0]?.terminalV).toBeLessThan(supply.postsV.off ?? 0);
  });
});

describe('a capacitor (RULES 8)', () => {
  const withCapacitor = (farads: number, esrOhm: number, precharged = true) =>
    pair(30)
      .fitting('capacitor', 'capacitor', { capacitanceF: told(farads), esrOhm: told(esrOhm), precharged })
      .fitting('ground', 'g3')
      .run('capacitor.positive', 'one.supply', 5, { size: 'awg:8', id: 'capacitorRun' })
      .run('capacitor.negative', 'g3.body', 0.3, { size: 'awg:8' })
      .done();

  it('of 1 F behind 5 m of 8 AWG is no source: at most 51,840 A2s against some 500,000', () => {
    // C V2 / (2 R), R no less than the 2 mohm of the capacitor itself; k S with k above 80 from 105 to 160 degC
    expect(14.4 ** 2 / (2 * 0.002)).toBeLessThan((80 * 8.367) ** 2);
    const answer = assess(withCapacitor(1, 0.002));
    expect(found(answer, 'capacitor-unfused')).toEqual([]);
    expect(found(answer, 'no-device')).toEqual([]);
    expect(found(answer, 'unprotected-length').filter(({ places }) => places[0]?.id === 'capacitor')).toEqual([]);
    expect(answer.sources.map(({ fittingId }) => fittingId)).toEqual(['battery']);
  });

  it('bank of 500 F is one: 500 times as much through the same cable, and nothing opens', () => {
    const answer = assess(withCapacitor(500, 0.002));
    const [stop] = found(answer, 'capacitor-unfused');
    expect(stop?.severity).toBe('stop');
    // the unfused block leads it to the other amplifier as well
    expect(stop?.places.map(({ id }) => id)).toEqual(['capacitor', 'capacitorRun', 'block-one', 'block-two']);
    expect(answer.sources.map(({ fittingId }) => fittingId)).toEqual(['battery', 'capacitor']);
  });

  it('without a pre-charge told is a note: 14.4 V over 7 W are 29.6 ohm, 89 s for 1 F', () => {
    expect(found(assess(withCapacitor(1, 0.002)), 'capacitor-precharge')).toEqual([]);
    const [note] = found(assess(withCapacitor(1, 0.002, false)), 'capacitor-precharge');
    expect(note?.severity).toBe('note');
    expect(note?.params.prechargeOhm).toBeCloseTo(14.4 ** 2 / 7, 9);
    expect(note?.params.seconds).toBeCloseTo((14.4 ** 2 / 7) * Math.log(20), 9);
  });
});
