import { describe, expect, it } from 'vitest';
import type { Plan, Settings } from '../../../src/plan/schema.ts';
import { remedyOf, sentenceOf } from '../../../src/words/answer.ts';
import { speakIn } from '../../../src/words/language.ts';
import { ampacity } from '../byHand.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, severitiesOf, told } from './findingsOf.ts';

const RULE = 'supply-wiring';

interface Sizes {
  readonly inputA?: number | 'auto';
  readonly outputA?: number | 'auto';
  readonly inputSize?: string;
  readonly outputSize?: string;
  readonly settings?: Partial<Settings>;
  /** Draws from the way to the charger, A. */
  readonly lightsA?: number;
}

/** 14.4 V, 30 A and 0.9 between a front battery in the bay and a rear one; an amplifier of its own on the rear one. */
const charged = ({
  inputA = 50,
  outputA = 40,
  inputSize = 'sae:8',
  outputSize = 'sae:8',
  settings,
  lightsA,
}: Sizes) => {
  const draft = new PlanOf(settings)
    .battery('front')
    .fuse('frontFuse', inputA, { zone: 'bay' })
    .fitting('bus', 'bar')
    .fitting('charger', 'charger', { outputV: told(14.4), outputMaxA: told(30), efficiency: told(0.9) })
    .fuse('chargerFuse', outputA)
    .battery('rear', { zone: 'cargo', strap: null })
    .fuse('rearFuse', 80)
    .amplifier('amp', { ratedW: 500 })
    .fitting('ground', 'g1')
    .fitting('ground', 'g2')
    .run('front.positive', 'frontFuse.in', 0.15, { zone: 'bay', size: 'sae:4' })
    .run('frontFuse.out', 'bar.bus', 4, { size: inputSize })
    .run('bar.bus', 'charger.input', 0.3, { size: inputSize })
    .run('charger.output', 'chargerFuse.in', 0.3, { size: outputSize })
    .run('chargerFuse.out', 'rear.positive', 0.1, { size: outputSize })
    .run('charger.ground', 'g1.body', 0.3, { size: 'sae:8' })
    .run('rear.positive', 'rearFuse.in', 0.15, { size: 'sae:2' })
    .run('rearFuse.out', 'amp.supply', 1, { size: 'sae:2' })
    .run('rear.negative', 'g2.body', 0.4, { size: 'sae:2' })
    .run('amp.ground', 'g2.body', 0.4, { size: 'sae:2' });
  if (lightsA !== undefined)
    draft
      .fitting('load', 'lights', { currentA: told(lightsA) })
      .run('bar.bus', 'lights.supply', 1, { size: 'sae:8' })
      .run('lights.ground', 'g1.body', 0.3, { size: 'sae:8' });
  return draft.done();
};

/** 14.4 V x 30 A / 0.9 from posts at 12.6 V. */
const INPUT_A = (14.4 * 30) / 0.9 / 12.6;

/** With another charger of 20 A on the same bar, for a third battery: 25.4 A more at its input. */
function withSecond(plan: Plan, inputSize = 'auto'): Plan {
  const second = new PlanOf()
    .fitting('charger', 'charger2', { outputV: told(14.4), outputMaxA: told(20), efficiency: told(0.9) })
    .battery('third', { strap: null })
    .run('bar.bus', 'charger2.input', 0.3, { size: inputSize })
    .run('charger2.output', 'third.positive', 0.3, { size: 'sae:8' }).plan;
  return { ...plan, fittings: [...plan.fittings, ...second.fittings], runs: [...plan.runs, ...second.runs] };
}

const places = (plan: Plan) =>
  findingsOf(plan, RULE).map(({ severity, params, places: [first] }) => `${severity} ${params.what} ${first?.id}`);

describe('cable and fuse of a DC-DC charger: 38.1 A at its input, 30 A at its output', () => {
  it('of 50 A and SAE 8 bear it: 0.775 x 50 A in the bay', () => {
    expect(INPUT_A).toBeCloseTo(38.1, 1);
    expect(0.775 * 50).toBeGreaterThan(INPUT_A);
    expect(places(charged({}))).toEqual([]);
  });

  it('a fuse below it opens: stop; one that does not bear it for long is a fix', () => {
    expect(places(charged({ inputA: 35 }))).toEqual(['stop opens frontFuse']);
    const plan = charged({ inputA: 40 });
    const [fix] = findingsOf(plan, RULE);
    expect(fix).toMatchObject({
      severity: 'fix',
      places: [{ id: 'frontFuse' }, { id: 'charger' }],
      params: { what: 'forLong', ratingA: 40 },
    });
    expect(fix?.params.supplyA).toBeCloseTo(INPUT_A, 9);
    expect(fix?.params.neededA).toBeCloseTo(INPUT_A / 0.775, 6);
    if (fix === undefined) return;
    expect(sentenceOf(fix, plan)).toBe('FrontFuse, at 40 A, would carry 38.1 A for long, for charger.');
    expect(remedyOf(fix, plan)).toContain('at least 49.2 A');
  });

  it('its output is held against its limit: 30 A over 0.8 x 35 A', () => {
    expect(places(charged({ outputA: 40 }))).toEqual([]);
    expect(places(charged({ outputA: 35 }))).toEqual(['fix forLong chargerFuse']);
    expect(places(charged({ outputA: 25 }))).toEqual(['stop opens chargerFuse']);
  });

  it('a cable that does not carry it for long is a fix, whatever the fuse', () => {
    expect(ampacity('14', 'cabin')).toBeLessThan(30);
    expect(ampacity('10', 'cabin')).toBeGreaterThan(INPUT_A);
    expect(places(charged({ inputSize: 'sae:10' }))).toEqual([]);
    expect(places(charged({ inputSize: 'sae:14' }))).toEqual(['fix carries frontFuse-bar', 'fix carries bar-charger']);
  });

  it('what nothing is chosen for is said, not passed over', () => {
    const plan = charged({ inputA: 'auto', outputSize: 'auto' });
    const [fix, ...others] = findingsOf(plan, RULE);
    expect(others).toEqual([]);
    // one cause: nothing is chosen by what the charger sends; where that shows is all told, the greatest current first
    expect(fix).toMatchObject({ severity: 'fix', params: { what: 'undecided' } });
    const ids = ['frontFuse', 'charger-chargerFuse', 'chargerFuse-rear', 'charger'];
    expect(fix?.places.map(({ id }) => id)).toEqual(ids);
    if (fix === undefined) return;
    expect(sentenceOf(fix, plan)).toBe(
      'Nothing is chosen for frontFuse and 2 more on the way of charger, which sends up to 38.1 A through them.',
    );
    // 38.1 A over 0.775; the cables carry the charger's 30 A
    expect(remedyOf(fix, plan)).toBe(
      'Sizes are not chosen by what a charger or an alternator sends. Set them by hand: frontFuse to at least 49.2 A; charger-chargerFuse for at least 30 A; chargerFuse-rear for at least 30 A.',
    );
  });

  it('of one part alone is said as of that part', () => {
    const plan = charged({ inputA: 'auto' });
    const [fix, ...others] = findingsOf(plan, RULE);
    expect(others).toEqual([]);
    expect(fix?.places.map(({ id }) => id)).toEqual(['frontFuse', 'charger']);
    if (fix === undefined) return;
    expect(sentenceOf(fix, plan)).toBe('Nothing is chosen for frontFuse, which charger sends 38.1 A through.');
    expect(remedyOf(fix, plan)).toMatch(/set it by hand, to at least 49\.2 A\.$/);
  });

  it('is one fix for each of two chargers and one for what both send through, and takes in no cause but that', () => {
    // the output fuse is told and too small: a stop of its own
    const stop = charged({ inputA: 'auto', inputSize: 'auto', outputA: 25 });
    expect(places(stop)).toEqual(['stop opens chargerFuse', 'fix undecided frontFuse']);
    const two = withSecond(charged({ inputA: 'auto', inputSize: 'auto' }));
    const found = findingsOf(two, RULE);
    expect(found.map(({ places: of }) => of.map(({ id }) => id))).toEqual([
      ['frontFuse', 'frontFuse-bar', 'charger', 'charger2'],
      ['bar-charger', 'charger'],
      ['bar-charger2', 'charger2'],
    ]);
    expect(new Set(found.map(({ id }) => id)).size).toBe(3);
    const [shared] = found;
    if (shared === undefined) return;
    // 38.1 A and 25.4 A
    expect(sentenceOf(shared, two)).toBe(
      'Nothing is chosen for frontFuse and 1 more on the way of charger and charger2, which send up to 63.5 A through them.',
    );
  });

  it('tells what passes on the way of two chargers of both, and what is the way of one of that one', async () => {
    const two = withSecond(charged({ inputA: 60, inputSize: 'sae:10' }), 'sae:16');
    const found = findingsOf(two, RULE);
    expect(found.map(({ params, places: of }) => [params.what, ...of.map(({ id }) => id)])).toEqual([
      ['opens', 'frontFuse', 'charger', 'charger2'],
      ['carries', 'frontFuse-bar', 'charger', 'charger2'],
      ['carries', 'bar-charger2', 'charger2'],
    ]);
    const sentences = () => found.map((one) => sentenceOf(one, two));
    const [opens, both, one] = sentences();
    expect(opens).toBe('FrontFuse, at 60 A, is smaller than the full current of 63.5 A, for charger and charger2.');
    expect(both).toMatch(/^FrontFuse-bar would carry 63\.5 A for long, for charger and charger2; /);
    expect(one).toMatch(/^Bar-charger2 would carry 25\.4 A for long, for charger2; /);
    await speakIn('de');
    expect(sentences()[0]).toBe(
      'FrontFuse, mit 60 A: kleiner als der volle Strom von 63,5 A, für charger und charger2.',
    );
    await speakIn('en');
  });

  it('says so of what serves music as well on its own, since that has causes of its own', () => {
    // no fuse carries 900 A of lights
    const plan = charged({ inputA: 'auto', inputSize: 'auto', outputSize: 'auto', lightsA: 900 });
    expect(findingsOf(plan, RULE).map(({ places: of }) => of.map(({ id }) => id))).toEqual([
      ['frontFuse', 'charger'],
      ['bar-charger', 'charger-chargerFuse', 'chargerFuse-rear', 'charger'],
    ]);
  });

  it('comes on top of what else is on the way: 5 A of lights beside it', () => {
    // 43.1 A over 0.775: 55.6 A
    expect(severitiesOf(charged({ lightsA: 5 }), RULE)).toEqual(['fix']);
    expect(findingsOf(charged({ lightsA: 5 }), RULE)[0]?.params.heatingA).toBeCloseTo(INPUT_A + 5, 6);
    expect(severitiesOf(charged({ lightsA: 15 }), RULE)).toEqual(['stop']);
  });

  it('with an engine that always runs the posts hold 14.4 V: 33.3 A', () => {
    const plan = charged({ inputA: 40, settings: { engineAlwaysRunning: true } });
    expect(findingsOf(plan, RULE)[0]?.params.supplyA).toBeCloseTo(30 / 0.9, 9);
  });
});

describe('an alternator of 150 A, 120 A hot, on a cable that was added', () => {
  const alternator = (ratingA: number): Plan =>
    new PlanOf()
      .battery('battery')
      .fitting('alternator', 'alternator', { ratedA: told(150), hotShare: told(0.8), zone: 'bay' })
      .fuse('main', 80, { zone: 'bay' })
      .fuse('output', ratingA, { zone: 'bay' })
      .amplifier('amp', { ratedW: 500 })
      .fitting('ground', 'g')
      .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:2' })
      .run('main.out', 'amp.supply', 3, { size: 'sae:2' })
      .run('amp.ground', 'g.body', 0.5, { size: 'sae:2' })
      .run('alternator.positive', 'output.in', 0.15, { zone: 'bay', size: 'sae:1/0' })
      .run('output.out', 'battery.positive', 1, { zone: 'bay', size: 'sae:1/0' })
      .done();

  it('takes a fuse that bears 120 A for long: 150 A x 0.775 is 116 A, 175 A x 0.775 136 A', () => {
    expect(places(alternator(100))).toEqual(['stop opens output']);
    const plan = alternator(150);
    expect(places(plan)).toEqual(['fix forLong output']);
    const [fix] = findingsOf(plan, RULE);
    if (fix !== undefined)
      expect(sentenceOf(fix, plan)).toBe('Output, at 150 A, would carry 120 A for long, for alternator.');
    expect(places(alternator(175))).toEqual([]);
  });

  it("is the factory's matter on the factory's own cable, and judged on the added one without a fuse too", () => {
    const joined = (kind: 'power' | 'factory', size: string): Plan => {
      const plan = alternator(175);
      const [own] = new PlanOf().run('alternator.positive', 'battery.positive', 1, { zone: 'bay', size, kind }).plan
        .runs;
      return {
        ...plan,
        fittings: plan.fittings.filter(({ id }) => id !== 'output'),
        runs: [...plan.runs.filter(({ id }) => !id.includes('output')), ...(own === undefined ? [] : [own])],
      };
    };
    expect(places(joined('factory', 'sae:8'))).toEqual([]);
    expect(places(joined('power', 'sae:8'))).toEqual(['fix carries alternator-battery']);
    // SAE 4 in the bay: 128.7 A
    expect(places(joined('power', 'sae:4'))).toEqual([]);
  });
});

describe('a cable to a charger without a fuse', () => {
  it('is a stop however short: the charger takes current there', () => {
    const plan = charged({});
    const first = plan.runs.find(({ id }) => id === 'bar-charger');
    const runs = (tapedM: number) => [
      ...plan.runs.filter(({ id }) => !['frontFuse-bar', 'bar-charger'].includes(id)),
      ...(first === undefined
        ? []
        : [{ ...first, id: 'bare', name: 'bare', tapedM, from: { fittingId: 'front', terminal: 'positive' } }]),
    ];
    for (const tapedM of [0.1, 2]) {
      const bare = { ...plan, runs: runs(tapedM) };
      const [stop] = findingsOf(bare, 'no-device');
      expect(stop).toMatchObject({ severity: 'stop', places: [{ id: 'bare' }, { id: 'front' }, { id: 'charger' }] });
      if (stop !== undefined)
        expect(sentenceOf(stop, bare)).toBe(
          'No fuse protects bare: from front on, nothing opens if it touches the body.',
        );
    }
  });
});
