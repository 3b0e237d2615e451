/** Live cable that ends nowhere, without a fuse (RULES 6: no device at all on a live path). */
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { PlanOf } from './planOf.ts';

/** A finished job with a block at the battery beside it, which leads nowhere. */
const withStub = (lengthM: number | null, sheathed = false) =>
  new PlanOf()
    .battery('battery', { at: { xM: 0.5, yM: 1 } })
    .fuse('main', 60, { zone: 'bay' })
    .block('stub', [null, null])
    .amplifier('amp', { ratedW: 400 })
    .fitting('ground', 'g')
    .run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: 'sae:4' })
    .run('main.out', 'amp.supply', 3, { size: 'sae:4' })
    .run('amp.ground', 'g.body', 0.5, { size: 'sae:4' })
    .run('battery.positive', 'stub.bus', lengthM, { zone: 'bay', size: 'sae:4', sheathed, id: 'dead' });

const of = (plan: PlanOf) =>
  assess(plan.done()).findings.flatMap(({ rule, severity, places, params, provisional }) =>
    rule === 'no-device' || rule === 'unprotected-length'
      ? [{ rule, severity, at: places.map(({ id }) => id), endsAt: params.endsAt, provisional }]
      : [],
  );

describe('a live stub without a fuse', () => {
  const stub = { rule: 'no-device', at: ['dead', 'battery', 'stub'], endsAt: 'nothing' };

  it('is worth a note up to 178 mm, and a stop beyond, sheathed or not', () => {
    expect(of(withStub(0.178))).toEqual([{ ...stub, severity: 'note', provisional: false }]);
    expect(of(withStub(0.179))).toEqual([{ ...stub, severity: 'stop', provisional: false }]);
    expect(of(withStub(0.3, true))).toEqual([{ ...stub, severity: 'stop', provisional: false }]);
    expect(of(withStub(3))).toEqual([{ ...stub, severity: 'stop', provisional: false }]);
  });

  it('is no stub once a fuse is at its end', () => {
    const fused = withStub(0.17).fuse('next', 60).run('stub.out1', 'next.in', 0.005, { zone: 'bay', size: 'sae:4' });
    expect(of(fused)).toEqual([]);
  });

  it('stops for the stub beyond a block of which one output is fused', () => {
    const beside = withStub(0.1)
      .fuse('next', 60)
      .fitting('passThrough', 'end')
      .run('stub.out1', 'next.in', 0.05, { zone: 'bay', size: 'sae:4' })
      .run('stub.out2', 'end.through', 0.1, { zone: 'bay', size: 'sae:4', id: 'on' });
    expect(of(beside)).toEqual([
      {
        rule: 'no-device',
        severity: 'stop',
        at: ['dead', 'on', 'battery', 'end'],
        endsAt: 'nothing',
        provisional: false,
      },
    ]);
  });
});
