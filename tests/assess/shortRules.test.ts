import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { FittingOf, LinkFamily, Plan } from '../../src/plan/schema.ts';
import { amps30, heated, ohmPerM, strapOhm } from './byHand.ts';
import { PlanOf } from './planOf.ts';

const told = <T>(value: T) => ({ value, origin: 'told' as const });
const MOHM = 1e-3;
const ofRule = ({ findings }: Assessment, rule: string) => findings.filter((one) => one.rule === rule);

/** Battery of `ccaA`, 0.15 m of 1/0 to a main fuse, 3 m to a block of two fused outputs. */
const branched = (
  ccaA: number,
  main: Partial<FittingOf<'fuse'>['link']> = {},
  battery: Partial<FittingOf<'battery'>> = {},
  first: number | 'auto' = 80,
): Plan =>
  new PlanOf()
    .battery('battery', { ccaA: told(ccaA), ...battery })
    .fuse('main', 150, { zone: 'bay', link: { ratingA: 150, family: 'auto', ...main } })
    .block('block', [first, 60])
    .amplifier('bass', { ratedW: 500 })
    .amplifier('top', { ratedW: 400 })
    .fitting('ground', 'g1')
    .fitting('ground', 'g2')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
    .run('main.out', 'block.bus', 3, { size: 'sae:1/0' })
    .run('block.out1', 'bass.supply', 0.6, { size: 'sae:4' })
    .run('block.out2', 'top.supply', 0.6, { size: 'sae:4' })
    .run('bass.ground', 'g1.body', 0.5, { size: 'sae:4' })
    .run('top.ground', 'g2.body', 0.5, { size: 'sae:4' })
    .done();

describe('breaking capacity (RULES 5; ABYC E-11 Table V-A: up to 650 A 1500 / 750, up to 1100 A 3000 / 1500)', () => {
  /** Right behind the main fuse: post 2 and fuse 2 joints, the link, 0.15 m of 1/0, strap. */
  const behindMain = (ccaA: number, scale: number) =>
    12.6 / ((scale * 0.45 * 5.4) / ccaA + 0.4 * MOHM + 0.075 / 150 + 0.15 * ohmPerM('1/0', 20) + strapOhm(0.4));

  it('stops for a main link of 2000 A at 700 A of CCA, which asks for 3000 A, and names a family that has it', () => {
    expect(ofRule(assess(branched(700)), 'breaking-capacity')).toMatchObject([
      {
        severity: 'stop',
        places: [{ id: 'main' }],
        params: { verdict: 'belowTable', place: 'main', breakingA: 2000, askedA: 3000, helpRatingA: 150 },
        source: 'abycTableVA',
      },
    ]);
  });

  it('has one note below the estimate at 600 A: 2300 A against 2000 A, though not with twice the resistance', () => {
    const [only, ...others] = ofRule(assess(branched(600)), 'breaking-capacity');
    expect(others).toEqual([]);
    expect(behindMain(600, 1)).toBeGreaterThan(2000);
    expect(behindMain(600, 2)).toBeLessThan(2000);
    expect(only).toMatchObject({ severity: 'note', params: { verdict: 'belowEstimate', links: 1 } });
    expect(only?.params.estimateA).toBeCloseTo(behindMain(600, 1), 6);
    expect(only?.params.doubledA).toBeCloseTo(behindMain(600, 2), 6);
  });

  it('asks to fix it where even twice the resistance lets more through: a battery told to have 1 mohm', () => {
    const answer = assess(branched(600, {}, { internalOhm: told(MOHM) }));
    // 12.6 V / (2 + 1.3 mohm) = 3800 A; the table goes by the label
    expect(ofRule(answer, 'breaking-capacity')[0]).toMatchObject({
      severity: 'fix',
      places: [{ id: 'main' }],
      params: { verdict: 'belowDoubled' },
    });
  });

  it('goes by the figure for branches behind another device: 750 A at 600 A of CCA, which a type C of 1000 A has', () => {
    const answer = assess(branched(600, {}, {}, 20));
    expect(answer.fuses.find(({ terminal }) => terminal === 'out1')?.family).toBe('iso8820-3-C');
    expect(ofRule(answer, 'breaking-capacity').filter(({ severity }) => severity === 'stop')).toEqual([]);
    // at 700 A the table asks 1500 A of branches
    const stops = ofRule(assess(branched(700, {}, {}, 20)), 'breaking-capacity').filter(
      ({ severity }) => severity === 'stop',
    );
    expect(stops.map(({ id }) => id)).toEqual(['breaking-capacity:main', 'breaking-capacity:block.out1']);
  });

  it('says that it is not stated of a slotted link', () => {
    const family: LinkFamily = 'slotted-long';
    expect(ofRule(assess(branched(600, { family })), 'breaking-capacity')).toMatchObject([
      { severity: 'note', params: { verdict: 'notStated', breakingA: null } },
    ]);
  });

  it('says that an assumed battery decides it', () => {
    const answer = assess(branched(600, {}, { ccaA: { value: 600, origin: 'assumed' } }));
    expect(ofRule(answer, 'breaking-capacity')[0]?.decidedBy).toEqual(['battery.ccaA']);
  });
});

describe('selectivity (RULES 5)', () => {
  it('is one note for all pairs: 1 s held against the least I2t of the main', () => {
    expect(ofRule(assess(branched(600)), 'selectivity')).toMatchObject([
      {
        severity: 'note',
        places: [
          { kind: 'fitting', id: 'main' },
          { kind: 'fitting', id: 'block' },
        ],
        params: { pairs: 2, branches: 2, withoutLimits: 0 },
      },
    ]);
  });

  it('says nothing of fuses in a row to one amplifier: the same goes dark', () => {
    const plan = new PlanOf()
      .battery('battery')
      .fuse('main', 125, { zone: 'bay' })
      .fuse('second', 100)
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay' })
      .run('main.out', 'second.in', 3)
      .run('second.out', 'amp.supply', 0.3)
      .run('amp.ground', 'g.body', 0.5)
      .done();
    expect(ofRule(assess(plan), 'selectivity')).toEqual([]);
  });
});

describe('heating under overload in the bay (RULES 4)', () => {
  const inBay = (size: string, zone: 'bay' | 'cabin') =>
    new PlanOf()
      .battery('battery')
      .fuse('main', 125, { zone: 'bay' })
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone, size })
      .run('main.out', 'amp.supply', 2, { zone, size })
      .run('amp.ground', 'g.body', 0.5, { size })
      .done();

  it('is to be fixed: 1.35 x 125 A over 4 AWG at 80 degC would pass 155 degC', () => {
    // 125 A is within its ampacity in the bay, 0.85 of the table
    expect(0.85 * amps30('4')).toBeGreaterThan(125);
    const settled = heated(1.35 * 125, 2e5, '4', 80, 80);
    expect(settled).toBeGreaterThan(155);
    const [only, ...others] = ofRule(assess(inBay('sae:4', 'bay')), 'overload-heating');
    expect(others).toEqual([]);
    expect(only).toMatchObject({ severity: 'fix', params: { limitC: 155, ratingA: 125 } });
    expect(only?.params.conductorC).toBeCloseTo(settled, 2);
  });

  it('is accepted in the cabin, and in the bay with 2 AWG', () => {
    expect(heated(1.35 * 125, 2e5, '2', 80, 80)).toBeLessThan(155);
    expect(ofRule(assess(inBay('sae:2', 'bay')), 'overload-heating')).toEqual([]);
    expect(ofRule(assess(inBay('sae:4', 'cabin')), 'overload-heating')).toEqual([]);
  });

  it('is left to nobody where the answer chooses the size', () => {
    expect(ofRule(assess(inBay('auto', 'bay')), 'overload-heating')).toEqual([]);
  });
});
