/** One cause, one finding: what merely follows from it is not told beside it, and no finding speaks with another's words. */
import { describe, expect, it } from 'vitest';
import type { Assessment, RuleId } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { sentenceOf } from '../../src/words/answer.ts';
import { PlanOf } from './planOf.ts';

const found = (answer: Assessment, rule: RuleId) => answer.findings.filter((finding) => finding.rule === rule);
const grave = (answer: Assessment): string[] =>
  answer.findings.filter(({ severity }) => severity !== 'note').map(({ rule, severity }) => `${severity} ${rule}`);

describe('a class too low for the place (RULES 4: Ta >= Tr, no ampacity, stop)', () => {
  /** Unmarked cable fixed by hand from the battery on, in a bay of 80 degC: it counts as 60 degC. */
  const plan = (size: string, fuseA: number | 'auto', makerMaxA = 300): Plan => {
    const draft = new PlanOf()
      .battery('battery')
      .fuse('main', fuseA, { zone: 'bay' })
      .fitting('passThrough', 'wall', { zone: 'bay' })
      .amplifier('amp', { ratedW: 500, externalFuseMaxA: makerMaxA })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
      .run('main.out', 'wall.through', 0.6, { zone: 'bay', size })
      .run('wall.through', 'amp.supply', 3, { zone: 'bay', size })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:4' })
      .done();
    return {
      ...draft,
      runs: draft.runs.map((run) =>
        run.id === 'amp-g'
          ? run
          : { ...run, conductor: { ...run.conductor, insulationC: { value: 60, origin: 'assumed' } } },
      ),
    };
  };

  it.each([
    ['a fuse left to the answer', 'auto'],
    ['a fuse fixed by hand', 80],
  ] as const)('is one stop that names it, with %s', (_what, fuseA) => {
    const of = plan('sae:4', fuseA);
    const answer = assess(of);
    expect(grave(answer)).toEqual(['stop ampacity']);
    const [one] = found(answer, 'ampacity');
    expect(one).toMatchObject({
      places: [{ id: 'battery-main' }, { id: 'main-wall' }, { id: 'wall-amp' }],
      params: { ampacityA: 0, classC: 60, airC: 80, unmarked: 'yes' },
    });
    if (one === undefined) return;
    expect(sentenceOf(one, of)).toBe(
      'Battery-main and 2 more may carry nothing: the air there is 80 °C, and cable that is not marked counts as good for 60 °C.',
    );
    // the fuse is rated for the load, and for the ground that can carry it: 625 W at 12 V or so, 55 A
    expect(answer.fuses[0]?.ratingA).toBe(fuseA === 'auto' ? 60 : 80);
  });

  it('says nothing of a need as if it were a fuse', () => {
    // no type F link carries 55 A: whatever is told, it is not that a fuse of 55 A is in there
    const draft = plan('sae:4', 'auto', 30);
    const answer = assess({ ...draft, settings: { ...draft.settings, linkFamilies: ['iso8820-3-F'] } });
    expect(found(answer, 'fuse-over-conductor')).toEqual([]);
    expect(found(answer, 'fuse-over-maker')).toEqual([]);
    expect(grave(answer).sort()).toEqual(['stop ampacity', 'stop no-fuse-qualifies']);
  });

  it('still judges a branch behind an unrated main fuse by the fuse that it has', () => {
    const draft = new PlanOf({ linkFamilies: ['iso8820-3-F'] })
      .battery('battery')
      .fuse('main', 'auto', { zone: 'bay' })
      .fuse('branch', 100)
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('main.out', 'branch.in', 2, { size: 'sae:1/0' })
      .run('branch.out', 'amp.supply', 0.5, { size: 'sae:8' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:8' })
      .done();
    const answer = assess(draft);
    expect(found(answer, 'no-fuse-qualifies').map(({ places }) => places[0]?.id)).toEqual(['main']);
    // 8 AWG carries 65 A; 100 A come through the branch fuse
    expect(
      answer.findings
        .filter(({ rule }) => rule === 'fuse-over-conductor' || rule === 'step-down')
        .map(({ places, params }) => [places[0]?.id, params.ratingA]),
    ).toEqual(expect.arrayContaining([['branch-amp', 100]]));
    expect(
      answer.findings.every(({ places, rule }) => rule !== 'fuse-over-conductor' || places[0]?.id !== 'battery-main'),
    ).toBe(true);
  });
});

describe('ground against feed: conductance, not area (RULES 4)', () => {
  type Conductor = readonly [size: string, material: 'copper' | 'cca10' | 'cca15' | 'aluminium'];
  const plan = ([feedSize, feedMetal]: Conductor, [groundSize, groundMetal]: Conductor): Plan => {
    const draft = new PlanOf()
      .battery('battery')
      .fuse('main', 'auto', { zone: 'bay' })
      .amplifier('amp', { ratedW: 300 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: feedSize })
      .run('main.out', 'amp.supply', 1, { size: feedSize })
      .run('amp.ground', 'g.body', 0.5, { size: groundSize })
      .done();
    return {
      ...draft,
      runs: draft.runs.map((run) => ({
        ...run,
        conductor: {
          ...run.conductor,
          material: { value: run.id === 'amp-g' ? groundMetal : feedMetal, origin: 'told' as const },
        },
      })),
    };
  };
  const smaller = (feed: Conductor, ground: Conductor) => found(assess(plan(feed, ground)), 'ground-smaller');

  it('finds a copper-clad ground of the same number, which conducts 0.63 of copper', () => {
    const of = plan(['sae:4', 'copper'], ['sae:4', 'cca10']);
    const [one] = found(assess(of), 'ground-smaller');
    expect(one).toMatchObject({ severity: 'fix', params: { metal: 'cca10', feedMetal: 'copper' } });
    if (one !== undefined)
      expect(sentenceOf(one, of)).toBe(
        'Amp-g, at SAE 4 of copper-clad aluminum (10 %), conducts less than the feed it returns: SAE 4 of copper.',
      );
  });

  it('has nothing to say of a clad ground that is thick enough, or of a clad feed with a thinner copper ground', () => {
    // 2 AWG 30.1 mm2 x 0.629 = 18.95, just above 4 AWG 18.93 of copper (SAE areas)
    expect(smaller(['sae:4', 'copper'], ['sae:2', 'cca10'])).toEqual([]);
    expect(smaller(['sae:2', 'cca15'], ['sae:3', 'copper'])).toEqual([]);
    expect(smaller(['sae:2', 'cca15'], ['sae:6', 'copper'])).toHaveLength(1);
  });

  it('takes equal numbers of AWG and SAE for equal, as long as the metal is', () => {
    expect(smaller(['awg:2', 'copper'], ['sae:2', 'copper'])).toEqual([]);
    expect(smaller(['awg:2', 'copper'], ['sae:2', 'cca15'])).toHaveLength(1);
    expect(smaller(['awg:2', 'copper'], ['sae:4', 'copper'])).toHaveLength(1);
  });

  it('chooses a ground that conducts as well as the feed, whatever each is made of', () => {
    const of = plan(['sae:4', 'copper'], ['auto', 'cca10']);
    const answer = assess(of);
    // 4 AWG of copper asks for 2 AWG of clad aluminium: 4 AWG of it conducts 11.9 against 18.9
    expect(answer.runs.find(({ runId }) => runId === 'amp-g')).toMatchObject({ gauge: 'sae:2', governs: 'ground' });
    expect(found(answer, 'ground-smaller')).toEqual([]);
    const alike = assess(plan(['awg:4', 'copper'], ['auto', 'copper']));
    expect(alike.runs.find(({ runId }) => runId === 'amp-g')?.gauge).toBe('sae:4');
  });
});

describe('a positive post that finds a return', () => {
  const size = 'sae:2';
  const fused = (draft: PlanOf) =>
    draft
      .fuse('main', 100, { zone: 'bay' })
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .run('main.out', 'amp.supply', 2, { size });

  it('a dead short is one stop: the stretch that touches the body is not also told as unprotected', () => {
    const plan = fused(new PlanOf().battery('battery'))
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size })
      .run('amp.ground', 'g.body', 0.5, { size })
      .run('battery.positive', 'g.body', 1, { size, id: 'wrong' })
      .done();
    expect(grave(assess(plan))).toEqual(['stop source-short']);
  });

  it('but a first fuse too far away is told beside it', () => {
    const plan = fused(new PlanOf().battery('battery'))
      .run('battery.positive', 'main.in', 0.6, { zone: 'bay', size })
      .run('amp.ground', 'g.body', 0.5, { size })
      .run('battery.positive', 'g.body', 1, { size, id: 'wrong' })
      .done();
    expect(grave(assess(plan))).toEqual(['stop source-short', 'stop unprotected-length']);
    expect(found(assess(plan), 'unprotected-length')[0]?.params).toMatchObject({ unprotectedM: 0.6, endsAt: 'device' });
  });

  const series = (second: { strap: null } | object = { strap: null }) =>
    fused(new PlanOf().battery('one').battery('two', second))
      .run('one.positive', 'two.negative', 0.3, { size })
      .run('two.positive', 'main.in', 0.15, { zone: 'bay', size })
      .run('amp.ground', 'g.body', 0.5, { size })
      .done();

  it('batteries in series are told as such: twice the voltage, no short', () => {
    const plan = series();
    const answer = assess(plan);
    expect(grave(answer)).toEqual(['stop series-batteries']);
    const [one] = found(answer, 'series-batteries');
    expect(one).toMatchObject({ places: [{ id: 'one' }, { id: 'two' }], params: { count: 2, systemV: 12 } });
    if (one !== undefined)
      expect(sentenceOf(one, plan)).toBe('One and two are joined in series: 2 times 12 V at what they feed.');
  });

  it('in series with a strap still on the second is a dead short', () => {
    expect(grave(assess(series({})))).toEqual(['stop source-short']);
  });

  it('a ring of two in series is a dead short', () => {
    const plan = fused(new PlanOf().battery('one').battery('two', { strap: null }))
      .run('one.positive', 'two.negative', 0.3, { size })
      .run('two.positive', 'one.negative', 0.3, { size, id: 'closing' })
      .run('two.positive', 'main.in', 0.15, { zone: 'bay', size })
      .run('amp.ground', 'g.body', 0.5, { size })
      .done();
    expect(found(assess(plan), 'source-short').length).toBeGreaterThan(0);
    expect(found(assess(plan), 'series-batteries')).toEqual([]);
  });

  it('two batteries side by side are neither', () => {
    const plan = fused(new PlanOf().battery('one').battery('two', { strap: null }))
      .fuse('f1', 100, { zone: 'bay' })
      .fuse('f2', 100, { zone: 'bay' })
      .run('one.positive', 'f1.in', 0.1, { zone: 'bay', size })
      .run('two.positive', 'f2.in', 0.1, { zone: 'bay', size })
      .run('f1.out', 'main.in', 0.3, { size })
      .run('f2.out', 'main.in', 0.3, { size })
      .run('two.negative', 'g.body', 0.5, { size })
      .run('amp.ground', 'g.body', 0.5, { size })
      .done();
    expect(found(assess(plan), 'series-batteries')).toEqual([]);
    expect(found(assess(plan), 'source-short')).toEqual([]);
  });

  const positiveEarth = (strap: { strap: null } | object) =>
    new PlanOf()
      .battery('battery', strap)
      .fuse('main', 100, { zone: 'bay' })
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .fitting('ground', 'post')
      .run('battery.positive', 'post.body', 0.3, { size })
      .run('battery.negative', 'main.in', 0.15, { zone: 'bay', size })
      .run('main.out', 'amp.ground', 2, { size })
      .run('amp.supply', 'g.body', 0.5, { size })
      .done();

  it('a positive ground is told as such', () => {
    const plan = positiveEarth({ strap: null });
    const answer = assess(plan);
    expect(grave(answer)).toEqual(['stop positive-earth']);
    const [one] = found(answer, 'positive-earth');
    expect(one).toMatchObject({ places: [{ id: 'battery' }] });
    if (one !== undefined)
      expect(sentenceOf(one, plan)).toBe(
        'The positive of battery is joined to the body and its negative is not: nothing here is worked out for positive ground.',
      );
  });

  it('with the negative at the body too it is a dead short', () => {
    expect(grave(assess(positiveEarth({})))).toContain('stop source-short');
    expect(found(assess(positiveEarth({})), 'positive-earth')).toEqual([]);
  });

  it('a feed and a ground drawn through one pass-through: the drawing is at fault, not a cable', () => {
    const plan = fused(new PlanOf().battery('battery').fitting('passThrough', 'wall'))
      .run('battery.positive', 'wall.through', 0.1, { zone: 'bay', size })
      .run('wall.through', 'main.in', 0.05, { zone: 'bay', size })
      .run('amp.ground', 'wall.through', 2, { size, id: 'back' })
      .run('wall.through', 'g.body', 0.5, { size, id: 'on' })
      .done();
    const answer = assess(plan);
    expect(grave(answer)).toEqual(['stop pass-through-shared']);
    const [one] = found(answer, 'pass-through-shared');
    if (one !== undefined)
      expect(sentenceOf(one, plan)).toBe(
        '4 runs meet in wall, feed and ground among them: as drawn that is a short, and nothing else is worked out.',
      );
  });
});

describe('a reason why nearer is impossible holds for its own way (RULES 6)', () => {
  it('does not excuse a shorter way beside it that has none', () => {
    const near = { zone: 'bay', sheathed: true, size: 'sae:1/0' } as const;
    const plan = (reason: boolean) =>
      new PlanOf()
        .battery('battery')
        .fuse('main', 200, { zone: 'bay' })
        .amplifier('amp')
        .fitting('ground', 'g')
        .run('battery.positive', 'main.in', 0.51, { ...near, id: 'long', nearerImpossible: 'the box is full' })
        .run('battery.positive', 'main.in', 0.47, {
          ...near,
          id: 'short',
          nearerImpossible: reason ? 'the box is full' : null,
        })
        .run('main.out', 'amp.supply', 2, { size: 'sae:1/0' })
        .run('amp.ground', 'g.body', 0.5, { size: 'sae:1/0' })
        .done();
    const told = (reason: boolean) =>
      found(assess(plan(reason)), 'unprotected-length').map(({ severity, places }) => [severity, places[1]?.id]);
    // the loop of both is 0.98 m, and has a reason; sheathed, beyond 450 mm and within 1016 mm: fix, a note only where the reason is written
    expect(told(true).map(([severity]) => severity)).toEqual(['note']);
    expect(told(false)).toEqual([['fix', 'short']]);
  });
});
