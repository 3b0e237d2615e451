import { describe, expect, it } from 'vitest';
import { assess } from '../../../src/assess/assess.ts';
import { DEFAULT_OUTLINES } from '../../../src/plan/outline.ts';
import type { Plan } from '../../../src/plan/schema.ts';
import { headlineOf, sentenceOf } from '../../../src/words/answer.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf } from './findingsOf.ts';

const RULE = 'tape-doubtful';

/** Battery and fuse 1 m apart in a straight line, in a van of 4.4 m x 1.8 m. */
const feed = (tapedM: number, tapedAs: 'run' | 'outdated' = 'run'): Plan =>
  new PlanOf()
    .battery('battery', { at: { xM: 1, yM: 0.9 } })
    .fuse('main', 60, { at: { xM: 2, yM: 0.9 } })
    .run('battery.positive', 'main.in', tapedM, { id: 'head', name: 'Head', tapedAs })
    .done();

describe('a tape that the drawing speaks against', () => {
  it('is shorter than the straight line by more than a drawing may be off: 1 m less 0.1 m', () => {
    expect(severitiesOf(feed(0.9), RULE)).toEqual([]);
    expect(findingsOf(feed(0.89), RULE)).toMatchObject([
      { severity: 'note', places: [{ kind: 'run', id: 'head' }], params: { what: 'short', tapedM: 0.89, againstM: 1 } },
    ]);
    const [found] = findingsOf(feed(0.05), RULE);
    if (found !== undefined)
      expect(sentenceOf(found, feed(0.05))).toBe(
        'Head is taped at 5 cm, yet its ends are drawn 1 m apart in a straight line.',
      );
  });

  it('that is a slip keeps the verdict from saying that nothing was found', () => {
    const plan = (tapedM: number) =>
      new PlanOf()
        .battery('battery', { at: { xM: 1, yM: 0.9 } })
        .fuse('main', 'auto', { at: { xM: 1.6, yM: 0.9 } })
        .amplifier('amp', { ratedW: 500, at: { xM: 3, yM: 0.9 } })
        .fitting('ground', 'body', { at: { xM: 3.2, yM: 0.9 } })
        .run('battery.positive', 'main.in', tapedM, { id: 'head', name: 'Head' })
        .run('main.out', 'amp.supply', 1.5, { id: 'feed' })
        .run('amp.ground', 'body.body', 0.3, { id: 'back' })
        .done();
    const said = (tapedM: number) => headlineOf(assess(plan(tapedM)), plan(tapedM));
    // 0.6 m bare is beyond 0.45 m; 0.06 m would be within every limit, were its ends not 0.6 m apart
    expect(said(0.6)).toBe('1 to stop for');
    expect(said(0.06)).toBe('Provisional: 1 length to tape');
    // a drawing may be as far off as that
    expect(said(0.17)).toMatch(/^Nothing found/);
  });

  it('is longer than one and a half times round the vehicle: 1.5 x 2 x (4.4 m + 1.8 m) = 18.6 m', () => {
    expect(severitiesOf(feed(18.5), RULE)).toEqual([]);
    expect(findingsOf(feed(55), RULE)).toMatchObject([{ severity: 'note', params: { what: 'long', tapedM: 55 } }]);
  });

  it('on a board is none: it shows what is joined, not where', () => {
    const plan = feed(0.05);
    const board = plan.sheets.map((sheet) => ({ ...sheet, outline: DEFAULT_OUTLINES.bench }));
    expect(severitiesOf({ ...plan, sheets: board }, RULE)).toEqual([]);
  });

  it('that is outdated is told so elsewhere, and does not count', () => {
    expect(severitiesOf(feed(0.05, 'outdated'), RULE)).toEqual([]);
  });
});
