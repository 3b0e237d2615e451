/** Fuses that cannot be bought, that end, that stand in the wrong line, or sit where nothing is known of them. */
import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { Link, Settings } from '../../src/plan/schema.ts';
import { remedyOf, sentenceOf } from '../../src/words/answer.ts';
import { PlanOf } from './planOf.ts';

const found = (answer: Assessment, rule: RuleId) => answer.findings.filter((finding) => finding.rule === rule);
const grave = (answer: Assessment): string[] =>
  answer.findings.filter(({ severity }) => severity !== 'note').map(({ rule, severity }) => `${severity} ${rule}`);

/** One fused amplifier on sizes large enough for any fuse here. */
function feed(link: Link, { ratedW = 1000, settings = {} }: { ratedW?: number; settings?: Partial<Settings> } = {}) {
  const size = 'sae:4/0';
  return new PlanOf(settings)
    .battery('battery')
    .fitting('fuse', 'main', { zone: 'bay', link })
    .amplifier('amp', { ratedW })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
    .run('main.out', 'amp.supply', 2, { size })
    .run('amp.ground', 'g.body', 0.5, { size })
    .done();
}

describe('rating-not-held: a rating that no such link is made in (RULES 5)', () => {
  it('finds 300 A in a family that ends at 200 A, and says what the family offers', () => {
    const plan = feed({ ratingA: 300, family: 'iso8820-5-SF30' });
    const [one, ...others] = found(assess(plan), 'rating-not-held');
    expect(others).toEqual([]);
    expect(one).toMatchObject({
      severity: 'fix',
      places: [{ kind: 'fitting', id: 'main' }],
      params: { ratingA: 300, belowA: 200, aboveA: null, family: 'iso8820-5-SF30', heldBy: [] },
    });
    if (one === undefined) return;
    expect(sentenceOf(one, plan)).toBe(
      'Main is set to 300 A, and no such link is made (Bolt-in, ISO 8820-5 type SF30).',
    );
    expect(remedyOf(one, plan)).toBe('The nearest rating is 200 A. The cable decides whether it may be that large.');
  });

  it('finds 137 A, which nobody makes, whatever the family', () => {
    const [one] = found(assess(feed({ ratingA: 137, family: 'auto' })), 'rating-not-held');
    expect(one).toMatchObject({ severity: 'fix', params: { ratingA: 137, belowA: 125, aboveA: 150, heldBy: [] } });
  });

  it('only notes a rating that is made, but in none of the families in stock', () => {
    const settings: Partial<Settings> = { linkFamilies: ['iso8820-3-E', 'iso8820-5-SF30'] };
    const [one] = found(assess(feed({ ratingA: 225, family: 'auto' }, { settings })), 'rating-not-held');
    expect(one).toMatchObject({ severity: 'note', params: { ratingA: 225 } });
    expect(one?.params.heldBy).toContain('iso8820-5-SF51');
  });

  it('has nothing to say of a rating that is held, of one left to the answer, or of a factory fuse', () => {
    expect(found(assess(feed({ ratingA: 150, family: 'iso8820-5-SF30' })), 'rating-not-held')).toEqual([]);
    expect(found(assess(feed({ ratingA: 'auto', family: 'auto' })), 'rating-not-held')).toEqual([]);
    const takeOff = new PlanOf().fitting('takeOff', 'stud', { fuseA: 137 }).done();
    expect(found(assess(takeOff), 'rating-not-held')).toEqual([]);
  });

  it('finds a block output too, each by itself', () => {
    const plan = new PlanOf().block('block', [137, 90, 30]).done();
    expect(found(assess(plan), 'rating-not-held').map(({ id, params }) => [id, params.ratingA])).toEqual([
      ['rating-not-held:block.out1', 137],
      ['rating-not-held:block.out2', 90],
    ]);
  });
});

describe('link-under-voltage: links are rated at least the system voltage (RULES 8)', () => {
  const own = (ratedV: number): Partial<Settings> => ({
    systemV: 24,
    restV: { value: 25.2, origin: 'assumed' },
    chargingV: { value: 28.8, origin: 'assumed' },
    linkFamilies: ['own1'],
    ownLinks: [{ family: 'own1', name: 'ours', seat: 'holder', ratingsA: [60, 80, 100], breakingA: 2000, ratedV }],
  });

  it('stops at a link of the user’s own that is rated for less', () => {
    const link: Link = { ratingA: 80, family: 'own1' };
    expect(found(assess(feed(link, { settings: own(16) })), 'link-under-voltage')).toMatchObject([
      { severity: 'stop', places: [{ id: 'main' }], params: { ratedV: 16, systemV: 24, ratingA: 80 } },
    ]);
    expect(found(assess(feed(link, { settings: own(32) })), 'link-under-voltage')).toEqual([]);
    expect(
      found(assess(feed({ ratingA: 'auto', family: 'auto' }, { settings: own(16) })), 'link-under-voltage'),
    ).toHaveLength(1);
  });
});

describe('where links end (RULES 5: then split the feed, never two in parallel)', () => {
  /** Two amplifiers of 3 kW each at 0.8: 7500 W at 12.6 V or less, 595 A at the very least. */
  const plan = (settings: Partial<Settings> = {}) =>
    new PlanOf(settings)
      .battery('battery')
      .fuse('main', 'auto', { zone: 'bay' })
      .block('block', ['auto', 'auto'])
      .amplifier('one', { ratedW: 3000 })
      .amplifier('two', { ratedW: 3000 })
      .fitting('ground', 'g1')
      .fitting('ground', 'g2')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay' })
      .run('main.out', 'block.bus', 3)
      .run('block.out1', 'one.supply', 0.5)
      .run('block.out2', 'two.supply', 0.5)
      .run('one.ground', 'g1.body', 0.5)
      .run('two.ground', 'g2.body', 0.5)
      .done();
  const all: Partial<Settings> = { linkFamilies: ['iso8820-3-E', 'iso8820-5-SF30', 'iso8820-5-SF51', 'slotted-long'] };

  it('says both: no cable in stock, and no link; each with what would help', () => {
    const of = plan(all);
    const answer = assess(of);
    const [main] = found(answer, 'no-fuse-qualifies').filter(({ places }) => places[0]?.id === 'main');
    const [size] = found(answer, 'no-size-in-stock').filter(({ places }) =>
      places.some(({ id }) => id === 'main-block'),
    );
    expect(main).toMatchObject({ severity: 'stop', params: { largestA: 500, ends: 'everywhere' } });
    expect(Number(main?.params.neededA)).toBeGreaterThan(7500 / 12.6);
    expect(size).toMatchObject({ severity: 'stop' });
    if (main === undefined || size === undefined) return;
    expect(sentenceOf(main, of)).toMatch(
      /^No fuse is made for main: it needs at least \d+ A, and the largest link is 500 A\.$/,
    );
    expect(remedyOf(main, of)).toContain('Split the feed');
    expect(remedyOf(main, of)).toContain('Never two links side by side');
    expect(remedyOf(size, of)).toContain('Split the feed');
    expect(answer.fuses.find(({ fittingId }) => fittingId === 'main')?.ratingA).toBeNull();
  });

  it('says to allow another family where one that is not in stock goes far enough', () => {
    // SF30 ends at 200 A; 3 kW at 0.8 and 12.6 V need 298 A, which SF51 has
    const settings: Partial<Settings> = { linkFamilies: ['iso8820-5-SF30'] };
    const of = feed({ ratingA: 'auto', family: 'auto' }, { ratedW: 3000, settings });
    const [one] = found(assess(of), 'no-fuse-qualifies');
    expect(one).toMatchObject({ severity: 'stop', params: { largestA: 200, ends: 'inStock' } });
    if (one !== undefined) expect(remedyOf(one, of)).toContain('Allow more kinds of fuse');
  });
});

describe('fuse-in-return: the negative line is not fused (FCS 1362, 4.6.4)', () => {
  const plan = (back: 'fuse' | 'block' | null) => {
    const size = 'sae:1/0';
    const draft = new PlanOf()
      .battery('battery')
      .fuse('main', 125, { zone: 'bay' })
      .amplifier('amp')
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
      .run('main.out', 'amp.supply', 2, { size });
    if (back === null) return draft.run('amp.ground', 'g.body', 0.5, { size }).done();
    if (back === 'fuse')
      draft.fuse('back', 125).run('amp.ground', 'back.in', 0.2, { size }).run('back.out', 'g.body', 0.2, { size });
    else
      draft.block('back', [125]).run('amp.ground', 'back.out1', 0.2, { size }).run('back.bus', 'g.body', 0.2, { size });
    return draft.done();
  };

  it('is found for a fuse and for a fused output, with its source', () => {
    for (const back of ['fuse', 'block'] as const) {
      expect(found(assess(plan(back)), 'fuse-in-return'), back).toMatchObject([
        { severity: 'fix', places: [{ id: 'back' }], source: 'fcs1362' },
      ]);
    }
  });

  it('has nothing to say of fuses in the feed', () => {
    expect(found(assess(plan(null)), 'fuse-in-return')).toEqual([]);
  });
});

describe('holder-too-hot: beyond 125 degC nothing is published of what a link carries', () => {
  const at = (hotC: number) => {
    const size = 'sae:4/0';
    return new PlanOf({ hotC: { value: hotC, origin: 'told' } })
      .battery('battery')
      .fuse('main', 200, { zone: 'hot' })
      .amplifier('amp')
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
      .run('main.out', 'amp.supply', 2, { size })
      .run('amp.ground', 'g.body', 0.5, { size })
      .done();
  };

  it('is found above it and not at it', () => {
    expect(found(assess(at(125)), 'holder-too-hot')).toEqual([]);
    expect(found(assess(at(126)), 'holder-too-hot')).toMatchObject([
      { severity: 'fix', places: [{ id: 'main' }], params: { holderC: 126, limitC: 125 }, source: 'linkDataSheet' },
    ]);
  });
});

describe('what a finding rests on can be asked', () => {
  it('fuse-over-maker: the rating of the fuse', () => {
    const draft = new PlanOf()
      .battery('battery')
      .fuse('main', 150, { zone: 'bay' })
      .amplifier('amp', { externalFuseMaxA: 100 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('main.out', 'amp.supply', 2, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
      .done();
    const answer = assess(draft);
    const [one] = found(answer, 'fuse-over-maker');
    expect(one?.why).toBe('rating:main');
    expect(answer.whys['rating:main']).toBeDefined();
  });

  it('no-fuse-qualifies: the least rating', () => {
    const answer = assess(feed({ ratingA: 'auto', family: 'iso8820-3-F' }));
    const [one] = found(answer, 'no-fuse-qualifies');
    expect(one?.why).toBe('need:main');
    const steps = answer.whys['need:main']?.steps ?? [];
    expect(steps.find(({ symbol }) => symbol === 'Ineed')?.value).toBeCloseTo(Number(one?.params.neededA), 9);
  });

  it('heating: the temperature it settles at, for the current held', () => {
    const plan = new PlanOf({ hotC: { value: 100, origin: 'told' } })
      .battery('battery')
      .fuse('main', 60, { zone: 'bay' })
      .amplifier('amp', { ratedW: 550 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:8' })
      .run('main.out', 'amp.supply', 2, { size: 'sae:8', zone: 'hot' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:8' })
      .done();
    const answer = assess(plan);
    const heated = found(answer, 'heating');
    expect(heated.map(({ params }) => params.held)).toContain('heatingCurrent');
    expect(heated.map(({ params }) => params.held)).toContain('fuseRating');
    for (const { why, params } of heated) {
      const steps = answer.whys[why ?? '']?.steps ?? [];
      const at = (symbol: string) => steps.find((step) => step.symbol === symbol)?.value;
      expect(at('I')).toBeCloseTo(Number(params.currentA), 9);
      expect(at('Tx')).toBeCloseTo(Number(params.conductorC), 9);
    }
  });
});

it('a good job has none of these findings', () => {
  expect(grave(assess(feed({ ratingA: 125, family: 'auto' })))).toEqual([]);
});
