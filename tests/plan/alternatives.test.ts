import { describe, expect, it } from 'vitest';
import { copperClad } from '../../src/plan/alternatives/copperClad.ts';
import { likelyOther, otherAmplifier } from '../../src/plan/alternatives/otherAmplifier.ts';
import { secondBattery } from '../../src/plan/alternatives/secondBattery.ts';
import { nextInStock, thickerFeed } from '../../src/plan/alternatives/thickerFeed.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { openPlan } from '../../src/plan/open.ts';
import { sheetBox } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { emptyVan, sampleVan } from './support/samplePlan.ts';

const rated = (plan: Plan, ...watts: [string, number][]): Plan =>
  watts.reduce(
    (now, [id, value]) => changeFitting(now, id, { ratedW: { value, origin: 'told' }, externalFuseMaxA: 60 }),
    plan,
  );

let next = 0;
const newId = (): string => {
  next += 1;
  return `new${next}`;
};
const second = (plan: Plan) => secondBattery(plan, { fitting: (kind) => kind }, newId);

describe('a thicker feed', () => {
  it('takes the next size that the shop holds, of the same kind', () => {
    // SAE 6 and 3 are made but not held
    const stock = ['sae:1/0', 'sae:8', 'sae:4', 'mm2:35', 'sae:2'];
    expect(nextInStock(stock, 'sae:8')).toBe('sae:4');
    expect(nextInStock(stock, 'sae:4')).toBe('sae:2');
    expect(nextInStock(stock, 'sae:2')).toBe('sae:1/0');
    expect(nextInStock(stock, 'sae:1/0')).toBeNull();
    expect(nextInStock(stock, 'mm2:25')).toBe('mm2:35');
    expect(nextInStock(stock, 'awg:4')).toBeNull();
  });

  it('fixes that size on the runs it is told, and on no other', () => {
    const plan = sampleVan();
    const thicker = thickerFeed(plan, [
      { runId: 'feed', gauge: 'sae:4' },
      { runId: 'long', gauge: 'sae:4' },
    ]);
    expect(thicker?.runs.map(({ id, conductor }) => [id, conductor.size])).toEqual(
      plan.runs.map(({ id }) => [id, id === 'feed' || id === 'long' ? 'sae:2' : 'auto']),
    );
  });

  it('tells of the cable what was assumed: it is bought marked', () => {
    const thicker = thickerFeed(sampleVan(), [{ runId: 'feed', gauge: 'sae:4' }]);
    expect(thicker?.runs.find(({ id }) => id === 'feed')?.conductor).toMatchObject({
      material: { value: 'copper', origin: 'told' },
      insulationC: { value: 105, origin: 'told' },
    });
  });

  it('is none where the largest size is in already, or a run is gone', () => {
    expect(thickerFeed(sampleVan(), [{ runId: 'feed', gauge: 'sae:4/0' }])).toBeNull();
    expect(thickerFeed(sampleVan(), [{ runId: 'none', gauge: 'sae:4' }])).toBeNull();
  });
});

describe('copper-clad cable', () => {
  it('is told of every added cable, and not of the vehicle’s own or a remote lead', () => {
    const plan = changeRun(changeRun(sampleVan(), 'toRear', { kind: 'remote' }), 'toFront', { kind: 'factory' });
    const clad = copperClad(plan);
    const material = (id: string) => clad?.runs.find((run) => run.id === id)?.conductor.material;
    expect(material('feed')).toEqual({ value: 'cca10', origin: 'told' });
    expect(material('rearGround')).toEqual({ value: 'cca10', origin: 'told' });
    expect([material('toRear')?.value, material('toFront')?.value]).toEqual(['copper', 'copper']);
  });

  it('is none where nothing is of copper', () => {
    expect(copperClad(emptyVan())).toBeNull();
    const clad = copperClad(sampleVan());
    expect(clad === null ? null : copperClad(clad)).toBeNull();
  });
});

describe('another amplifier', () => {
  it('is asked about for the strongest first, half as strong again to the next 50 W', () => {
    const plan = rated(sampleVan(), ['front', 300], ['rear', 510]);
    // 510 W and a half is 765 W
    expect(likelyOther(plan)).toEqual({ fittingId: 'rear', ratedW: 800 });
    expect(likelyOther(plan, 'front')).toEqual({ fittingId: 'front', ratedW: 450 });
    expect(likelyOther(sampleVan())).toBeNull();
  });

  it('has its output, and nothing that only the old one told', () => {
    const plan = rated(sampleVan(), ['front', 300]);
    expect(
      otherAmplifier(plan, { fittingId: 'front', ratedW: 600 })?.fittings.find(({ id }) => id === 'front'),
    ).toMatchObject({
      ratedW: { value: 600, origin: 'told' },
      externalFuseMaxA: null,
      onboardFusesA: null,
    });
    expect(otherAmplifier(plan, { fittingId: 'front', ratedW: 300 })).toBeNull();
    expect(otherAmplifier(plan, { fittingId: 'battery', ratedW: 300 })).toBeNull();
  });
});

describe('a second battery', () => {
  const plan = rated(sampleVan(), ['front', 300], ['rear', 500]);
  const whole = second(plan);

  it('comes with a fuse of its own on the way to the block, a ground, and no factory strap', () => {
    const added = whole?.fittings.slice(plan.fittings.length) ?? [];
    expect(added.map(({ kind }) => kind)).toEqual(['battery', 'fuse', 'ground']);
    expect(added[0]).toMatchObject({ kind: 'battery', strap: null });
    const ends = whole?.runs.slice(plan.runs.length).map(({ kind, from, to }) => [kind, from.terminal, to.terminal]);
    expect(ends).toEqual([
      ['power', 'positive', 'in'],
      ['power', 'out', 'bus'],
      ['ground', 'negative', 'body'],
    ]);
    expect(whole?.runs.at(-2)?.to.fittingId).toBe('block');
  });

  it('stands inside the vehicle, its fuse within 0.3 m, and the plan opens again', () => {
    const [sheet] = plan.sheets;
    if (whole === null || sheet === undefined) throw new Error('There is one');
    const box = sheetBox(sheet);
    const [battery, fuse] = whole.fittings.slice(plan.fittings.length);
    for (const { at } of whole.fittings) {
      expect(at.xM >= box.minXM && at.xM <= box.maxXM && at.yM >= box.minYM && at.yM <= box.maxYM).toBe(true);
    }
    if (battery === undefined || fuse === undefined) throw new Error('They are there');
    expect(Math.hypot(battery.at.xM - fuse.at.xM, battery.at.yM - fuse.at.yM)).toBeLessThan(0.3);
    expect(openPlan(savePlan(whole))).toMatchObject({ ok: true });
  });

  it('is joined to the amplifier itself where no block feeds it', () => {
    const alone = second(removeFitting(plan, 'block'));
    expect(alone?.runs.at(-2)?.to).toEqual({ fittingId: 'rear', terminal: 'supply' });
  });

  it('is none where no amplifier is rated', () => {
    expect(second(sampleVan())).toBeNull();
  });
});
