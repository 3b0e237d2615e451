import { describe, expect, it } from 'vitest';
import { assess, factsOfPlan } from '../../src/assess/assess.ts';
import { shortAt } from '../../src/assess/short/at.ts';
import { ohmPerM, strapOhm } from './byHand.ts';
import { PlanOf } from './planOf.ts';

const told = <T>(value: T) => ({ value, origin: 'told' as const });
const MOHM = 1e-3;

/** Front battery, fuse, 3 m, block; rear battery with a strap of its own, fused or not, 2 m to the block; an amplifier on it. */
const two = (rearFuse: number | null, rearCcaA: number) => {
  const plan = new PlanOf()
    .battery('front')
    .battery('rear', { zone: 'cargo', ccaA: told(rearCcaA) })
    .fuse('f1', 125, { zone: 'bay' })
    .block('block', [null])
    .amplifier('amp', { ratedW: 500 })
    .fitting('ground', 'g')
    .run('front.positive', 'f1.in', 0.15, { size: 'sae:4/0' })
    .run('f1.out', 'block.bus', 3, { size: 'sae:4/0' })
    .run('block.out1', 'amp.supply', 0.5, { size: 'sae:4/0' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:4/0' });
  const rear =
    rearFuse === null
      ? plan.run('rear.positive', 'block.bus', 2, { size: 'sae:4/0', id: 'rear-block' })
      : plan
          .fuse('f2', rearFuse)
          .run('rear.positive', 'f2.in', 0.15, { size: 'sae:4/0' })
          .run('f2.out', 'block.bus', 1.85, { size: 'sae:4/0', id: 'rear-block' });
  return rear.done();
};

describe('two batteries at one block', () => {
  it('adds their currents, by source; at the block both stand side by side', () => {
    const [short] = assess(two(125, 600)).shorts.filter(({ runId }) => runId === 'block-amp');
    const strap = strapOhm(0.4);
    const warm = (0.45 * 5.4) / 600;
    const link = 0.075 / 125;
    // front: post 2, fuse 2 + 2, block 1 joints; the same in the rear; straps: each its own way to the body
    const front = 12.6 / (warm + strap + 7 * 0.1 * MOHM + link + 3.15 * ohmPerM('4/0', 20));
    const rear = 12.6 / (warm + strap + 7 * 0.1 * MOHM + link + 2 * ohmPerM('4/0', 20));
    expect(short?.highestA).toBeCloseTo(front + rear, 5);
    expect(short?.bySource.map(({ fittingId }) => fittingId)).toEqual(['front', 'rear']);
    expect(short?.bySource[0]?.highestA).toBeCloseTo(front, 5);
    expect(short?.bySource[1]?.highestA).toBeCloseTo(rear, 5);
    expect(short?.fuses.map(({ fittingId }) => fittingId).toSorted()).toEqual(['f1', 'f2']);
    expect(short?.verdict).toBe('opensInTime');
  });

  it('says that a second source without a fuse still feeds what the fuse has opened for', () => {
    const answer = assess(two(null, 600));
    const [short] = answer.shorts.filter(({ runId }) => runId === 'f1-block');
    expect(short).toMatchObject({ unprotected: true, verdict: 'nothingOpens', stillFedBy: ['rear'] });
    expect(answer.findings.filter(({ rule }) => rule === 'back-fed')).toMatchObject([
      { severity: 'note', params: { by: 'source' } },
    ]);
    // the stop is the unprotected length's
    expect(answer.findings.some(({ rule, severity }) => rule === 'unprotected-length' && severity === 'stop')).toBe(
      true,
    );
    expect(answer.findings.filter(({ rule }) => rule.startsWith('short-'))).toEqual([]);
  });

  it('says that a weak battery goes on feeding through its fuse when the other fuse has opened', () => {
    const answer = assess(two(125, 60));
    // rear post 2, fuse 2 + 2, block 1 + 1, front fuse 2: ten joints
    const left =
      12.6 / ((2 * 5.4) / 60 + strapOhm(0.4) + 10 * 0.1 * MOHM + 0.075 / 125 + MOHM + 5 * ohmPerM('4/0', 105));
    expect(left).toBeLessThan(1.35 * 125);
    const [short] = answer.shorts.filter(({ runId }) => runId === 'f1-block');
    expect(short?.residualA).toBeCloseTo(left, 6);
    expect(answer.findings.filter(({ rule }) => rule === 'back-fed')).toMatchObject([
      { severity: 'note', params: { by: 'fuse' } },
    ]);
    const at = shortAt(factsOfPlan(two(125, 60)), { runId: 'f1-block', share: 0, faultOhm: 0 });
    expect(at?.lowest.stages).toHaveLength(2);
    expect(at?.lowest.stages[0]?.opens?.fittingId).toBe('f1');
    expect(at?.lowest.stages[1]).toMatchObject({ opens: null });
    expect(at?.lowest.stages[1]?.faultA).toBeCloseTo(left, 5);
    expect(at?.lowest.clearedS).toBeNull();
  });

  it('says nothing of it where both fuses open by themselves', () => {
    expect(assess(two(125, 600)).findings.filter(({ rule }) => rule === 'back-fed')).toEqual([]);
  });

  it('says nothing of a battery whose negative post is joined to nothing: it feeds no short', () => {
    const plan = new PlanOf()
      .battery('front')
      .battery('rear', { zone: 'cargo', strap: null })
      .fuse('f1', 175, { zone: 'bay' })
      .fuse('f2')
      .fitting('passThrough', 'firewall')
      .amplifier('amp', { ratedW: 1500 })
      .fitting('ground', 'g')
      .run('front.positive', 'f1.in', 0.15)
      .run('f1.out', 'firewall.through', 3)
      .run('firewall.through', 'amp.supply', 3)
      .run('amp.ground', 'g.body', 0.5)
      .run('rear.positive', 'f2.in', 0.15)
      .run('f2.out', 'amp.supply', 1.85)
      .done();
    expect(assess(plan).findings.filter(({ rule }) => rule === 'back-fed')).toEqual([]);
  });
});
