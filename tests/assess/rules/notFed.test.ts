import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import { remedyOf, sentenceOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';

/** A battery, a fuse and an amplifier of which the feed and the way to the body come to these terminals. */
const wired = (feed: string, back: string) =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 'auto', { zone: 'bay' })
    .amplifier('amp')
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.1, { zone: 'bay' })
    .run('main.out', `amp.${feed}`, 4)
    .run(`amp.${back}`, 'g.body', 0.5)
    .done();

const fixes = (feed: string, back: string): string[] => {
  const plan = wired(feed, back);
  return assess(plan)
    .findings.filter(({ severity }) => severity === 'fix')
    .map((one) => `${sentenceOf(one, plan)} ${remedyOf(one, plan)}`);
};

describe('an amplifier that gets no current', () => {
  it('for its two cables are swapped is told that, and nothing that would have it wired once more', () => {
    expect(fixes('ground', 'supply')).toEqual([
      "Amp is wired the wrong way round: the battery's positive comes to its ground. Swap its two cables: the fused feed goes to the supply, the other to the ground.",
    ]);
  });

  it('for only its remote lead is joined is told to be fed', () => {
    expect(fixes('remote', 'ground')).toEqual(['Amp is not connected to a battery. Draw the run that feeds it.']);
  });

  it('and one that gets it is told nothing of the kind', () => {
    expect(fixes('supply', 'ground')).toEqual([]);
  });
});
