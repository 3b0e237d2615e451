import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { ampacity } from './byHand.ts';
import { PlanOf } from './planOf.ts';

const found = (answer: Assessment, rule: RuleId) => answer.findings.filter((finding) => finding.rule === rule);
const rules = (answer: Assessment): string[] => answer.findings.map(({ rule, severity }) => `${severity} ${rule}`);
const run = (answer: Assessment, id: string) => answer.runs.find(({ runId }) => runId === id);
const fuse = (answer: Assessment, id: string, terminal: string | null = null) =>
  answer.fuses.find((one) => one.fittingId === id && one.terminal === terminal);

/** Feed of 1/0 to a block, from there a branch for each amplifier, grounds of 1/0; every length taped. */
function twoAmplifiers(
  outputs: readonly (number | 'auto' | null)[],
  branchSize: string,
  branchM = 0.8,
  mainA: number | 'auto' = 'auto',
) {
  return new PlanOf()
    .battery('battery')
    .fuse('main', mainA, { zone: 'bay' })
    .block('block', outputs)
    .amplifier('bass', { ratedW: 1000 })
    .amplifier('top', { ratedW: 250 })
    .fitting('ground', 'g1')
    .fitting('ground', 'g2')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
    .run('main.out', 'block.bus', 3.5, { size: 'sae:1/0' })
    .run('block.out1', 'bass.supply', 0.5, { size: 'sae:1/0' })
    .run('block.out2', 'top.supply', branchM, { size: branchSize })
    .run('bass.ground', 'g1.body', 0.5, { size: 'sae:1/0' })
    .run('top.ground', 'g2.body', 0.5, { size: 'sae:1/0' });
}

describe('a smaller conductor behind a larger fuse (RULES 5)', () => {
  // 1250 W + 312.5 W at about 12 V: 130 A through the main fuse, so 150 A; 8 AWG carries 80 x sqrt(0.897) x 0.856 = 65 A
  it('stops at an unfused step-down, naming the run and the fuse above', () => {
    const answer = assess(twoAmplifiers([null, null], 'sae:8').done());
    expect(fuse(answer, 'main')?.ratingA).toBe(150);
    expect(found(answer, 'step-down')).toMatchObject([
      {
        severity: 'stop',
        places: [
          { kind: 'run', id: 'block-top' },
          { kind: 'fitting', id: 'main' },
        ],
        params: { ratingA: 150 },
      },
    ]);
    expect(found(answer, 'step-down')[0]?.params.ceilingA).toBeCloseTo(ampacity('8', 'cabin'), 6);
    expect(ampacity('8', 'cabin')).toBeCloseTo(64.9, 1);
    expect(run(answer, 'block-top')?.limitA).toBe(150);
    expect(answer.headline).toEqual({ kind: 'stop', count: 1 });
  });

  it('has nothing to say once the branch has a fuse of its own', () => {
    const answer = assess(twoAmplifiers([null, 'auto'], 'sae:8').done());
    // 312.5 W at about 12 V: 26 A, so 30 A
    expect(fuse(answer, 'block', 'out2')?.ratingA).toBe(30);
    expect(run(answer, 'block-top')?.limitA).toBe(30);
    expect(found(answer, 'step-down')).toEqual([]);
    expect(answer.headline.kind).toBe('nothing');
  });

  it('has nothing to say where the fuse above is small enough already', () => {
    // 2 AWG carries 203.7 x 0.856 = 174 A; the main fuse is 150 A
    const answer = assess(twoAmplifiers([null, null], 'sae:2').done());
    expect(found(answer, 'step-down')).toEqual([]);
    expect(run(answer, 'block-top')?.limitA).toBe(150);
  });

  it('notes a pigtail of up to 178 mm, and stops at a longer one', () => {
    expect(found(assess(twoAmplifiers([null, null], 'sae:8', 0.178).done()), 'step-down')[0]?.severity).toBe('note');
    expect(found(assess(twoAmplifiers([null, null], 'sae:8', 0.179).done()), 'step-down')[0]?.severity).toBe('stop');
  });

  it('sizes an unfused branch for the fuse above it: no auto size is a step-down', () => {
    const answer = assess(twoAmplifiers([null, null], 'auto').done());
    const branch = run(answer, 'block-top');
    expect(branch?.gauge).toBe('sae:2');
    expect(branch?.governs).toBe('fuse');
    // 4 AWG: 151.4 x 0.856 = 129.6 A, below the 150 A fuse
    expect(ampacity('4', 'cabin')).toBeCloseTo(129.6, 1);
    expect(rules(answer)).not.toContain('stop step-down');
  });
});

describe('a fuse too large for the run it alone protects (RULES 5, 6)', () => {
  const plan = (ratingA: number | 'auto', size: string, settings = {}) =>
    new PlanOf(settings)
      .battery('battery')
      .fuse('main', ratingA, { zone: 'bay' })
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
      .run('main.out', 'amp.supply', 2, { size })
      .run('amp.ground', 'g.body', 0.5, { size });

  it('stops: 150 A over 4 AWG, which carries 129.6 A in the cabin and 128.7 A in the bay', () => {
    const answer = assess(plan(150, 'sae:4').done());
    const over = found(answer, 'fuse-over-conductor');
    expect(over.map(({ places }) => places[0]?.id)).toEqual(['battery-main', 'main-amp', 'amp-g']);
    expect(over.every(({ severity }) => severity === 'stop')).toBe(true);
    expect(over[0]?.params.ceilingA).toBeCloseTo(ampacity('4', 'bay'), 6);
    expect(over[1]?.params.ceilingA).toBeCloseTo(ampacity('4', 'cabin'), 6);
    // the largest of types C, E and SF30 that 4 AWG allows
    expect(over[1]?.params.largestA).toBe(125);
  });

  it('asks a larger auto size of a fuse fixed by hand', () => {
    const answer = assess(plan(200, 'auto').done());
    // 2 AWG in the cabin: 174 A < 200 A; 1/0: 236 A, 276 A at 30 degC. But 1.35 x 200 A held in the bay, at 80 degC, takes
    // 1/0 to (80 + 234.5 q) / (1 - q) = 164 degC with q = (270 / 276)^2 x 75 / 339.5, beyond 105 + 50 (RULES 4): 2/0
    expect(run(answer, 'main-amp')).toMatchObject({ gauge: 'sae:2/0', governs: 'heating' });
  });

  it('lets the conductor win: a size fixed by hand gets the largest fuse that it allows, and says that it is under the load', () => {
    // 625 W at 12 V: 53 A, but 10 AWG of 105 degC carries 60 x sqrt(0.9) x 0.85 = 48.4 A in the bay
    const answer = assess(plan('auto', 'sae:10').done());
    expect(ampacity('10', 'bay')).toBeCloseTo(48.4, 1);
    expect(fuse(answer, 'main')?.ratingA).toBe(40);
    expect(found(answer, 'fuse-under-load')).toMatchObject([{ severity: 'stop', params: { ratingA: 40 } }]);
    expect(found(answer, 'fuse-over-conductor')).toEqual([]);
  });

  it('says that no fuse held qualifies rather than taking the largest', () => {
    const answer = assess(plan('auto', 'auto', { linkFamilies: ['iso8820-3-F'] }).done());
    // type F ends at 30 A
    expect(fuse(answer, 'main')?.ratingA).toBeNull();
    expect(found(answer, 'no-fuse-qualifies')).toMatchObject([{ severity: 'stop', places: [{ id: 'main' }] }]);
    expect(answer.figures.mainFuse.value).toBeNull();
  });
});

describe('two unlike branches', () => {
  it('gives each amplifier its own fuse and gauge', () => {
    const plan = new PlanOf()
      .battery('battery')
      .fuse('main', 'auto', { zone: 'bay' })
      .block('block', ['auto', 'auto'])
      .amplifier('bass', { ratedW: 1000 })
      .amplifier('top', { ratedW: 100 })
      .fitting('ground', 'g1')
      .fitting('ground', 'g2')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay' })
      .run('main.out', 'block.bus', 3)
      .run('block.out1', 'bass.supply', 0.6)
      .run('block.out2', 'top.supply', 0.6)
      .run('bass.ground', 'g1.body', 0.6)
      .run('top.ground', 'g2.body', 0.6)
      .done();
    const answer = assess(plan);
    // 1250 W and 125 W at about 12 V: 105 A and 10.5 A; types C and E, SF30 and SF51 hold 125 A and 15 A
    expect(fuse(answer, 'block', 'out1')?.ratingA).toBe(125);
    expect(fuse(answer, 'block', 'out2')?.ratingA).toBe(15);
    expect(fuse(answer, 'main')?.ratingA).toBe(125);
    expect(run(answer, 'block-top')?.gauge).toBe('sae:8');
    expect(run(answer, 'block-top')?.governs).toBe('smallest');
    // 125 A asks more than the 64.9 A of 8 AWG and the 129.6 A of 4 AWG allow in the drop; more than 8 AWG by its fuse alone
    expect(run(answer, 'block-bass')?.gauge).not.toBe('sae:8');
    // a fuse of 15 A lets 15 A into its branch and its ground, the main fuse 125 A into the feed
    expect(run(answer, 'block-top')?.limitA).toBe(15);
    expect(run(answer, 'top-g2')?.limitA).toBe(15);
    expect(run(answer, 'main-block')?.limitA).toBe(125);
    expect(run(answer, 'bass-g1')?.limitA).toBe(125);
    expect(answer.headline.kind).toBe('nothing');
  });
});

describe('a second battery behind the block', () => {
  const plan = (secondFuse: boolean) => {
    const draft = new PlanOf()
      .battery('front')
      .fuse('frontFuse', 100, { zone: 'bay' })
      .block('block', [null, null])
      .battery('rear', { zone: 'cargo', strap: null })
      .fuse('rearFuse', 80)
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g1')
      .fitting('ground', 'g2')
      .run('front.positive', 'frontFuse.in', 0.15, { zone: 'bay', size: 'sae:2' })
      .run('frontFuse.out', 'block.bus', 3, { size: 'sae:2' })
      .run('block.out1', 'amp.supply', 0.5, { size: 'sae:4' })
      .run('amp.ground', 'g1.body', 0.5, { size: 'sae:4' })
      .run('rear.negative', 'g2.body', 0.5, { size: 'sae:2' });
    if (!secondFuse) return draft.run('rear.positive', 'block.out2', 0.7, { size: 'sae:2', id: 'rear-block' }).done();
    return draft
      .run('rear.positive', 'rearFuse.in', 0.1, { size: 'sae:2' })
      .run('rearFuse.out', 'block.out2', 0.6, { size: 'sae:2' })
      .done();
  };

  it('adds what both fuses let in: 100 + 80 A into the branch and its ground', () => {
    const answer = assess(plan(true));
    expect(run(answer, 'block-amp')?.limitA).toBe(180);
    expect(run(answer, 'amp-g1')?.limitA).toBe(180);
    // 4 AWG: 129.6 A
    expect(found(answer, 'step-down').map(({ places }) => places[0]?.id)).toEqual(['block-amp']);
    expect(found(answer, 'fuse-over-conductor').map(({ places }) => places[0]?.id)).toEqual(['amp-g1']);
    // the feed from the front: 100 A from its own fuse, 80 A back from the rear one
    expect(run(answer, 'frontFuse-block')?.limitA).toBe(100);
    expect(run(answer, 'rearFuse-block')?.limitA).toBe(100);
  });

  it('measures the unprotected length from each battery', () => {
    const answer = assess(plan(true));
    expect(answer.sources).toMatchObject([
      { fittingId: 'front', unprotectedM: 0.15, endsAt: { fittingId: 'frontFuse' } },
      { fittingId: 'rear', unprotectedM: 0.1, endsAt: { fittingId: 'rearFuse' } },
    ]);
  });

  it('stops when the second battery has no fuse: its cable and the branch are live with nothing before them', () => {
    const answer = assess(plan(false));
    expect(found(answer, 'no-device')).toMatchObject([
      { severity: 'stop', places: [{ id: 'rear-block' }, { id: 'block-amp' }, { id: 'rear' }, { id: 'amp' }] },
    ]);
    // from the rear: 0.7 m to the block, then 3 m on to the front fuse, the longest live way
    expect(answer.sources.find(({ fittingId }) => fittingId === 'rear')?.unprotectedM).toBeCloseTo(3.7, 9);
    expect(run(answer, 'block-amp')?.limitA).toBeNull();
    // behind the front fuse and still unprotected: the rear battery feeds it from the other end
    expect(run(answer, 'frontFuse-block')?.unprotectedM).toBe(3);
  });
});

describe('a ring', () => {
  /** Two feeds of unlike length from two fuses to one block: each end of each is fed. */
  const ring = (size: string) =>
    new PlanOf()
      .battery('battery')
      .fuse('left', 60, { zone: 'bay' })
      .fuse('right', 80, { zone: 'bay' })
      .block('block', [null])
      .amplifier('amp', { ratedW: 600 })
      .fitting('ground', 'g')
      .run('battery.positive', 'left.in', 0.1, { zone: 'bay', size: 'sae:1/0' })
      .run('battery.positive', 'right.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('left.out', 'block.bus', 2, { size, zone: 'cabin' })
      .run('right.out', 'block.bus', 3, { size, zone: 'cabin' })
      .run('block.out1', 'amp.supply', 0.5, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
      .done();

  it('takes for each half the greater of the ratings at its two ends, for what follows their sum', () => {
    const answer = assess(ring('sae:2'));
    expect(run(answer, 'left-block')?.limitA).toBe(80);
    expect(run(answer, 'right-block')?.limitA).toBe(80);
    expect(run(answer, 'block-amp')?.limitA).toBe(140);
    expect(run(answer, 'amp-g')?.limitA).toBe(140);
  });

  it('stops where the fuse at one end is too large for the run that it can reach from behind', () => {
    // 8 AWG: 64.9 A; its own 60 A would do, but 80 A come from the block
    const over = assess(ring('sae:8')).findings.filter(
      ({ rule }) => rule === 'step-down' || rule === 'fuse-over-conductor',
    );
    expect(over.map(({ places }) => places[0]?.id).sort()).toEqual(['left-block', 'right-block']);
  });

  it('shares the current between the halves by their resistance', () => {
    const answer = assess(ring('sae:2'));
    const left = run(answer, 'left-block');
    const right = run(answer, 'right-block');
    const total = run(answer, 'block-amp');
    expect((left?.fullA ?? 0) + (right?.fullA ?? 0)).toBeCloseTo(total?.fullA ?? 0, 6);
    // both halves lose the same from post to block; by hand with the figures told: cables, joints (2 + 2 and 2 + 1), link
    const lost = (half: typeof left, stub: typeof left, ratingA: number) =>
      (half?.dropV ?? 0) + (stub?.dropV ?? 0) + (half?.fullA ?? 0) * (7 * 1e-4 + 0.075 / ratingA);
    const [leftStub, rightStub] = [run(answer, 'battery-left'), run(answer, 'battery-right')];
    expect(lost(left, leftStub, 60)).toBeCloseTo(lost(right, rightStub, 80), 6);
  });
});

describe('where the fuse stands (RULES 6)', () => {
  const plan = (nearM: number, farM: number, patch: { sheathed?: boolean; nearerImpossible?: string | null } = {}) =>
    new PlanOf()
      .battery('battery')
      .fuse('main')
      .amplifier('amp')
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', nearM, { zone: 'bay', ...patch })
      .run('main.out', 'amp.supply', farM)
      .run('amp.ground', 'g.body', 0.5)
      .done();
  const severity = (...of: Parameters<typeof plan>) =>
    found(assess(plan(...of)), 'unprotected-length')[0]?.severity ?? null;

  it('stops for a fuse at the far end: the whole feed is unprotected', () => {
    const answer = assess(plan(4, 0.2));
    expect(answer.figures.unprotected.value).toBe(4);
    expect(found(answer, 'unprotected-length')).toMatchObject([
      { severity: 'stop', params: { unprotectedM: 4, limitM: 0.45 } },
    ]);
    expect(run(answer, 'battery-main')?.unprotectedM).toBe(4);
    expect(run(answer, 'main-amp')?.unprotectedM).toBe(0);
  });

  it('bare: nothing to 178 mm, note to 450 mm, stop beyond', () => {
    expect([0.178, 0.179, 0.45, 0.451].map((lengthM) => severity(lengthM, 3))).toEqual([null, 'note', 'note', 'stop']);
  });

  it('sheathed: fix beyond 450 mm, or a note with a reason; stop beyond 1016 mm whatever is ticked', () => {
    const reason = { sheathed: true, nearerImpossible: 'no room at the post' };
    expect([0.45, 0.451, 1.016, 1.017].map((lengthM) => severity(lengthM, 3, { sheathed: true }))).toEqual([
      'note',
      'fix',
      'fix',
      'stop',
    ]);
    expect([0.451, 1.016, 1.017].map((lengthM) => severity(lengthM, 3, reason))).toEqual(['note', 'note', 'stop']);
    // a reason without a sheath changes nothing
    expect(severity(0.451, 3, { nearerImpossible: 'no room at the post' })).toBe('stop');
  });

  it('stops when there is no fuse at all', () => {
    const bare = new PlanOf()
      .battery('battery')
      .amplifier('amp')
      .fitting('ground', 'g')
      .run('battery.positive', 'amp.supply', 4, { size: 'sae:1/0' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
      .done();
    const answer = assess(bare);
    expect(answer.headline).toEqual({ kind: 'stop', count: 1 });
    expect(found(answer, 'no-device')).toMatchObject([
      { severity: 'stop', places: [{ id: 'battery-amp' }, { id: 'battery' }, { id: 'amp' }] },
    ]);
    expect(answer.figures.unprotected.value).toBe(4);
    expect(answer.figures.mainFuse.value).toBeNull();
    expect(run(answer, 'battery-amp')?.limitA).toBeNull();
  });
});

describe('the main fuse in the figures', () => {
  const behind = (mainFuse: boolean) => {
    const plan = new PlanOf().battery('battery').block('block', [60, 60]).amplifier('one').amplifier('two');
    if (mainFuse) plan.fuse('main', 150).run('battery.positive', 'main.in', 0.15).run('main.out', 'block.bus', 3);
    else plan.run('battery.positive', 'block.bus', 3);
    return plan
      .fitting('ground', 'g')
      .run('block.out1', 'one.supply', 0.5)
      .run('block.out2', 'two.supply', 0.5)
      .run('one.ground', 'g.body', 0.5)
      .run('two.ground', 'g.body', 0.5)
      .done();
  };

  it('is never a branch: with none ahead of the block there is no figure, and it says why', () => {
    expect(assess(behind(true)).figures.mainFuse).toMatchObject({ value: 150, places: [{ id: 'main' }] });
    expect(assess(behind(false)).figures.mainFuse).toMatchObject({ value: null, governs: 'onlyBranches' });
  });

  /** Two feeds from one battery: a heavy one without a fuse, to a block or straight to its amplifier, and a light one with. */
  const twoFeeds = (isBlock: boolean) => {
    const plan = new PlanOf().battery('battery').fuse('light', 'auto').amplifier('small', { ratedW: 1000 });
    plan.run('battery.positive', 'light.in', 0.15).run('light.out', 'small.supply', 4);
    plan.fitting('ground', 'g').run('small.ground', 'g.body', 0.5);
    plan.amplifier('one', { ratedW: isBlock ? 800 : 1500 });
    plan.run('one.ground', 'g.body', 0.5);
    if (!isBlock) return plan.run('battery.positive', 'one.supply', 4).done();
    plan.block('block', ['auto', 'auto']).amplifier('two', { ratedW: 800 }).run('two.ground', 'g.body', 0.5);
    plan.run('battery.positive', 'block.bus', 4).run('block.out1', 'one.supply', 0.5);
    return plan.run('block.out2', 'two.supply', 0.5).done();
  };

  it.each([
    ['a block', true, 'onlyBranches'],
    ['its amplifier', false, 'bareFeed'],
  ] as const)('is not that of a lighter feed, where the heavy one goes bare to %s', (_where, isBlock, governs) => {
    const answer = assess(twoFeeds(isBlock));
    expect(answer.headline.kind).toBe('stop');
    expect(answer.fuses.find(({ fittingId }) => fittingId === 'light')?.ratingA).toBeGreaterThan(0);
    expect(answer.figures.mainFuse).toMatchObject({ value: null, governs });
  });
});
