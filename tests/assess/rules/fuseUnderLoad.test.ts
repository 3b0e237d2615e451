import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import { remedyOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';

/** 600 W at 0.8 off at most 12.6 V: at least 59.5 A. */
const plan = (groundSize: string, makerMaxA: number) =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 'auto', { zone: 'bay' })
    .amplifier('amp', { ratedW: 600, externalFuseMaxA: makerMaxA })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.1, { zone: 'bay', size: 'sae:2' })
    .run('main.out', 'amp.supply', 4, { size: 'sae:2' })
    .run('amp.ground', 'g.body', 0.4, { size: groundSize, name: 'Thin ground', id: 'thin' })
    .done();

const remedies = (groundSize: string, makerMaxA: number): string[] =>
  assess(plan(groundSize, makerMaxA))
    .findings.filter(({ rule, severity }) => rule === 'fuse-under-load' && severity === 'stop')
    .map((one) => remedyOf(one, plan(groundSize, makerMaxA)));

describe('a fuse that is kept below the full current', () => {
  it('by a cable names that cable: another one taken thicker would change nothing', () => {
    // SAE 10 carries about 50 A in the cabin, SAE 2 three times that
    expect(remedies('sae:10', 300)).toEqual([
      'Take Thin ground thicker so that a larger fuse is allowed, or split the feed. Never only a larger fuse.',
    ]);
    expect(remedies('sae:2', 300)).toEqual([]);
  });

  it("by the amplifier's maker does not ask for a thicker cable, which would change nothing", () => {
    expect(remedies('sae:2', 40)).toEqual([
      'The maker of amp allows 40 A at most: check that figure, the rated output and the load entered. Never only a larger fuse.',
    ]);
  });
});
