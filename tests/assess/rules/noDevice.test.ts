/** Every source, and every lead that one reaches, meets a device before anything else (RULES 6). */
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/plan/schema.ts';
import { PlanOf } from '../planOf.ts';
import { findingsOf, told } from './findingsOf.ts';

const BIG = { size: 'sae:2' } as const;

/** A job that nothing is wrong with, on a block with a free output. */
const job = (): PlanOf =>
  new PlanOf()
    .battery('battery')
    .fuse('main', 100, { zone: 'bay' })
    .block('block', [null, null])
    .amplifier('amp', { ratedW: 500 })
    .fitting('ground', 'g')
    .fitting('ground', 'g2')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', ...BIG })
    .run('main.out', 'block.bus', 3, BIG)
    .run('block.out1', 'amp.supply', 0.5, BIG)
    .run('amp.ground', 'g.body', 0.5, BIG);

const stops = (plan: Plan): string[] =>
  findingsOf(plan, 'no-device')
    .filter(({ severity }) => severity === 'stop')
    .map(({ places }) => places[0]?.id ?? '');

describe('a second source without a fuse', () => {
  it('is a stop, whatever it is', () => {
    expect(stops(job().done())).toEqual([]);
    const battery = (chemistry: 'leadAcid' | 'lithium' | 'supercapacitor') =>
      job()
        .battery('second', { strap: null, zone: 'cargo', chemistry })
        .run('second.positive', 'block.out2', 0.1, { ...BIG, id: 'bare' })
        .run('second.negative', 'g2.body', 0.4, BIG)
        .done();
    for (const chemistry of ['leadAcid', 'lithium', 'supercapacitor'] as const)
      expect(stops(battery(chemistry)), chemistry).toEqual(['bare']);
    const post = job()
      .fitting('jumpPost', 'post')
      .run('post.stud', 'block.out2', 0.1, { ...BIG, id: 'bare' })
      .done();
    expect(stops(post)).toEqual(['bare']);
    const stud = (fuseA: number | null) =>
      job()
        .fitting('takeOff', 'stud', { fuseA })
        .run('stud.stud', 'block.out2', 0.1, { ...BIG, id: 'bare' })
        .done();
    expect(stops(stud(null))).toEqual(['bare']);
    // behind a factory fuse of a rating that is told it has one
    expect(stops(stud(80))).toEqual([]);
  });

  it('is none with a fuse at its post, or a link on it', () => {
    const second = (postLink: { ratingA: number; family: 'auto' } | null) =>
      job()
        .battery('second', { strap: null, zone: 'cargo', postLink })
        .run('second.positive', 'block.out2', 0.5, { ...BIG, id: 'bare' })
        .run('second.negative', 'g2.body', 0.4, BIG)
        .done();
    expect(stops(second(null))).toEqual(['bare']);
    expect(stops(second({ ratingA: 100, family: 'auto' }))).toEqual([]);
  });

  it('joined by a relay, a switch or a charger is no less a source: those are no fuses', () => {
    for (const kind of ['relay', 'switch'] as const) {
      const plan = job()
        .battery('second', { strap: null, zone: 'cargo' })
        .fitting(kind, 'join')
        .run('block.out2', 'join.in', 1, BIG)
        .run('join.out', 'second.positive', 0.3, { ...BIG, id: 'bare' })
        .run('second.negative', 'g2.body', 0.4, BIG)
        .done();
      expect(stops(plan), kind).toContain('bare');
    }
    const charger = (fuse: boolean) => {
      const draft = job()
        .battery('second', { strap: null, zone: 'cargo' })
        .fitting('charger', 'charger', { outputMaxA: told(30) })
        .run('block.out2', 'charger.input', 1, BIG)
        .run('charger.ground', 'g2.body', 0.3, BIG)
        .run('second.negative', 'g2.body', 0.4, BIG);
      if (!fuse) return draft.run('second.positive', 'charger.output', 0.3, { ...BIG, id: 'bare' }).done();
      return draft
        .fuse('own', 50)
        .run('second.positive', 'own.in', 0.1, BIG)
        .run('own.out', 'charger.output', 0.3, BIG)
        .done();
    };
    expect(stops(charger(false))).toEqual(['bare']);
    expect(stops(charger(true))).toEqual([]);
  });
});

describe('a remote lead without a fuse', () => {
  const lead = { kind: 'remote', id: 'lead' } as const;

  it('is a stop from any source, and through a switch', () => {
    expect(stops(job().run('battery.positive', 'amp.remote', 3, lead).done())).toEqual(['lead']);
    const rear = job()
      .battery('second', { strap: null, zone: 'cargo' })
      .run('second.negative', 'g2.body', 0.4, BIG)
      .run('second.positive', 'amp.remote', 0.5, lead)
      .done();
    expect(stops(rear)).toEqual(['lead']);
    const switched = job()
      .fitting('switch', 'switch')
      .run('battery.positive', 'switch.in', 1, lead)
      .run('switch.out', 'amp.remote', 2, { kind: 'remote' })
      .done();
    expect(stops(switched)).toEqual(['lead']);
  });

  it('behind the main fuse alone it is a lead behind a fuse too large for it', () => {
    const plan = job().run('block.out2', 'amp.remote', 1, lead).done();
    expect(stops(plan)).toEqual([]);
    const over = [...findingsOf(plan, 'step-down'), ...findingsOf(plan, 'fuse-over-conductor')];
    expect(over).toMatchObject([{ severity: 'stop', places: [{ id: 'lead' }, { id: 'main' }] }]);
  });

  it('from a source unit or from amplifier to amplifier no battery reaches it', () => {
    const plan = job().amplifier('other').run('other.remote', 'amp.remote', 1, lead).done();
    expect(stops(plan)).toEqual([]);
  });
});
