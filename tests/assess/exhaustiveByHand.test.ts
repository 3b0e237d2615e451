/** The sizes chosen against every set, judged by arithmetic that shares nothing with src but the published tables. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { blockFeed, tenths } from './blockFeed.ts';
import { type HandAmp, judgeByHand, leastByHand } from './byHandFeed.ts';

const RUNS = process.env.FEEDRUN_LONG === undefined ? 15 : 500;
const STOCK = ['8', '4', '2', '1/0', '2/0', '4/0'];

const anyAmp = fc.record({
  ratedW: fc.integer({ min: 50, max: 1000 }),
  branchM: tenths(2, 25),
  groundM: tenths(2, 12),
  fused: fc.boolean(),
});

describe('the sizes chosen, judged by hand', () => {
  it('are the set of least metal for two or three amplifiers on a block', { timeout: 300_000 }, () => {
    let chosen = 0;
    fc.assert(
      fc.property(tenths(5, 60), fc.array(anyAmp, { minLength: 2, maxLength: 3 }), (feedM, amps) => {
        const least = leastByHand(feedM, amps, STOCK);
        const answer = assess(blockFeed({ feedM, amps }));
        const sizeOf = (id: string) => answer.runs.find(({ runId }) => runId === id)?.gauge ?? null;
        if (least === null) {
          expect(answer.findings.map(({ rule }) => rule)).toContain('no-size-in-stock');
          return;
        }
        chosen += 1;
        expect(answer.leastCopperProven).toBe(true);
        expect(sizeOf('main-block')).toBe(`sae:${least.feed}`);
        for (const [index, size] of least.branches.entries()) {
          expect(sizeOf(`block-amp${index}`), `amp${index}`).toBe(`sae:${size}`);
          expect(sizeOf(`amp${index}-g${index}`), `amp${index}`).toBe(`sae:${size}`);
        }
      }),
      { numRuns: RUNS, seed: 20260401 },
    );
    expect(chosen).toBeGreaterThan(RUNS / 4);
  });

  it('carry, for 600 W and 250 W on a block, the currents and drops worked by hand', () => {
    const amps: HandAmp[] = [
      { ratedW: 600, branchM: 0.8, groundM: 0.5, fused: true },
      { ratedW: 250, branchM: 1.2, groundM: 0.6, fused: true },
    ];
    const least = leastByHand(4, amps, STOCK);
    if (least === null) throw new Error('some set holds');
    const hand = judgeByHand(4, amps, least.feed, least.branches);
    const answer = assess(blockFeed({ feedM: 4, amps }));
    // 1062.5 W at 12.6 V or somewhat less: 84 A and a little more
    expect(hand.fullA).toBeGreaterThan(84.3);
    expect(hand.fullA).toBeLessThan(92);
    expect(answer.figures.feed.value).toBe(`sae:${least.feed}`);
    expect(answer.figures.mainFuse.value).toBe(hand.mainA);
    expect(answer.runs.find(({ runId }) => runId === 'main-block')?.fullA).toBeCloseTo(hand.fullA, 6);
    for (const [index, volts] of hand.cablesV.entries())
      expect(answer.amplifiers[index]?.dropCablesV).toBeCloseTo(volts, 6);
    expect(answer.findings.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });
});
