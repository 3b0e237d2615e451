import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { secondBattery } from '../../src/plan/alternatives/secondBattery.ts';
import { newPlan } from '../../src/plan/create.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { withProposal } from '../../src/plan/propose/proposal.ts';
import { proposeFeed } from '../../src/plan/propose/propose.ts';
import { withUsualStart } from '../../src/plan/usualStart.ts';
import { remedyOf } from '../../src/words/answer.ts';
import { PlanOf } from './planOf.ts';

/**
 * How two batteries share a current hangs on how full and how old each is: every fuse and cable between them must bear
 * what flows when one of them is flat. 1,000 W at 0.8 off at most 12.6 V: at least 1000 / 0.8 / 12.6 = 99.2 A.
 */
const LEAST_ALONE_A = 1000 / 0.8 / 12.6;

const twoBatteries = (front: number | 'auto', rear: number | 'auto', size: string) =>
  new PlanOf()
    .battery('front')
    .fuse('f1', front, { zone: 'bay' })
    .block('block', [null])
    .battery('rear', { zone: 'cargo', strap: null })
    .fuse('f2', rear)
    .amplifier('amp')
    .fitting('ground', 'g1')
    .fitting('ground', 'g2')
    .run('front.positive', 'f1.in', 0.15, { zone: 'bay', size })
    .run('f1.out', 'block.bus', 4, { size })
    .run('rear.positive', 'f2.in', 0.1, { size })
    .run('f2.out', 'block.bus', 0.5, { size })
    .run('block.out1', 'amp.supply', 0.5, { size })
    .run('amp.ground', 'g1.body', 0.5, { size })
    .run('rear.negative', 'g2.body', 0.5, { size })
    .done();

describe('two batteries at one block', () => {
  it('whose fuses together are too much for every ground asks for a fuse at the amplifier, and that remedies it', () => {
    // 225 A and 225 A against what 4/0 carries in the cabin: 445 A x sqrt((105 - 50) / 75) x sqrt(SAE's area over AWG's)
    const plan = (output: 'auto' | null) =>
      new PlanOf()
        .battery('front')
        .fuse('f1', 225, { zone: 'bay' })
        .block('block', [output])
        .battery('rear', { zone: 'cargo', strap: null })
        .fuse('f2', 225)
        .amplifier('amp')
        .fitting('ground', 'g1')
        .fitting('ground', 'g2')
        .run('front.positive', 'f1.in', 0.15, { zone: 'bay', size: 'sae:4/0' })
        .run('f1.out', 'block.bus', 4, { size: 'sae:4/0' })
        .run('rear.positive', 'f2.in', 0.1, { size: 'sae:4/0' })
        .run('f2.out', 'block.bus', 0.5, { size: 'sae:4/0' })
        .run('block.out1', 'amp.supply', 0.5)
        .run('amp.ground', 'g1.body', 0.5)
        .run('rear.negative', 'g2.body', 0.5, { size: 'sae:4/0' })
        .done();
    const lacking = (output: 'auto' | null) =>
      assess(plan(output)).findings.filter(({ rule }) => rule === 'no-size-in-stock');
    expect(lacking(null).map((one) => remedyOf(one, plan(null)))).toEqual([
      'Several fuses feed amp together: put a fuse of its own right ahead of it, no larger than it needs.',
    ]);
    expect(lacking('auto')).toEqual([]);
  });

  it('rates both fuses for the whole current, whichever battery is flat', () => {
    const answer = assess(twoBatteries('auto', 'auto', 'auto'));
    for (const { fittingId, ratingA, fullA } of answer.fuses) {
      expect(fullA, fittingId).toBeGreaterThan(LEAST_ALONE_A);
      expect(ratingA, fittingId).toBeGreaterThanOrEqual(100);
    }
  });

  it('says that a fuse rated for its share alone opens when the other battery is flat', () => {
    const answer = assess(twoBatteries(60, 125, 'sae:1/0'));
    const [finding, ...others] = answer.findings.filter(({ rule }) => rule === 'fuse-under-load');
    expect(others).toEqual([]);
    expect(finding).toMatchObject({ severity: 'fix', places: [{ id: 'f1' }], params: { ratingA: 60, alone: 'yes' } });
    expect(Number(finding?.params.fullA)).toBeGreaterThan(LEAST_ALONE_A);
  });

  it('keeps the drop and the voltage of all batteries together', () => {
    const [amp] = assess(twoBatteries(125, 125, 'sae:1/0')).amplifiers;
    // the rear one, half a metre away, carries most: a lone front battery would lose more than twice that over 4 m
    expect(amp?.dropCablesV).toBeLessThan(0.15);
  });
});

describe('a drop that hangs on a drawn length', () => {
  const feed = (tapedM: number | null) =>
    new PlanOf()
      .battery('battery')
      .fuse('main', 125, { zone: 'bay', at: { xM: 2, yM: 0.9 } })
      .amplifier('amp', { at: { xM: 6.6, yM: 0.9 } })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:2' })
      .run('main.out', 'amp.supply', tapedM, { size: 'sae:2', zone: 'cabin' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:2' })
      .done();

  it('is provisional until that length is taped', () => {
    // 104 A over 5.25 m of SAE 2 (0.556 mohm/m at 20 degC, x 1.14 warm): 0.345 V of 0.36; with 0.46 m more, 0.376 V
    const drawn = assess(feed(null));
    expect(drawn.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
    expect(drawn.headline).toEqual({ kind: 'provisional', count: 1 });
    expect(assess(feed(4.6)).headline).toEqual({ kind: 'nothing', count: 0 });
  });
});

describe('the feed in the figures', () => {
  const ids = () => {
    let count = 0;
    return () => {
      count += 1;
      return `id${count}`;
    };
  };
  const names = { fitting: (kind: string) => kind };

  // either battery may have to feed alone, so that the short cable of the second carries as much but for a hair
  it.each(['hatchback', 'panelVan', 'estate', 'saloon'] as const)(
    'is the thickest of the cables that carry as much, not the short one beside a second battery: %s',
    (body) => {
      const newId = ids();
      const empty = newPlan({
        ...{ id: 'plan', name: 'Plan', sheetId: 'sheet', mirrored: false, sizeSystem: 'mm2' },
        outline: DEFAULT_OUTLINES[body],
      });
      const start = withUsualStart(empty, { battery: 'front', amplifiersW: [500, 1000] }, (kind) => kind, newId);
      const one = withProposal(start, proposeFeed(start, 'sheet', names, newId));
      const plan = secondBattery(one, names, newId);
      const answer = assess(plan ?? one);
      const fulls = answer.runs.map(({ fullA }) => fullA ?? 0);
      const heavy = answer.runs.filter(({ fullA }) => (fullA ?? 0) > 0.95 * Math.max(...fulls));
      // front battery to its fuse, through the firewall, to the block; and the three of the second
      expect(heavy.length).toBeGreaterThanOrEqual(5);
      const thickest = Math.max(...heavy.map(({ areaMm2 }) => areaMm2 ?? 0));
      const feed = answer.runs.find(({ runId }) => runId === answer.figures.feed.places[0]?.id);
      expect(feed?.areaMm2).toBe(thickest);
      expect(answer.figures.feed.value).toBe(feed?.gauge);
      expect(feed?.length.lengthM).toBeGreaterThan(2);
    },
  );
});
