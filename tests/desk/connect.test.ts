import { describe, expect, it } from 'vitest';
import { connect, runKindBetween } from '../../src/desk/connect.ts';
import { createDesk } from '../../src/desk/desk.ts';
import { undo, undoDepth } from '../../src/desk/edit.ts';
import { placeFitting } from '../../src/desk/place.ts';
import { fittingById } from '../../src/plan/byId.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { FittingKind, Plan } from '../../src/plan/schema.ts';
import { emptyVan, vanWithFeed } from './plans.ts';

const deskOf = (plan: Plan) => createDesk(plan, { isExample: false, bigFingers: false });
const end = (fittingId: string, terminal: string) => ({ fittingId, terminal });

/** A desk with one fitting of each kind asked for, and their ids. */
function deskWith(...kinds: FittingKind[]) {
  const desk = deskOf(emptyVan());
  const ids = kinds.map((kind, n) => placeFitting(desk, kind, { xM: 0.2 * n + 0.2, yM: 0.9 }, 'sheet-1', kind) ?? '');
  return { desk, ids };
}

describe('joining two terminals', () => {
  it('makes one run, selects it, and one undo gives back the same bytes', () => {
    const { desk, ids } = deskWith('battery', 'amplifier');
    const before = savePlan(desk.getState().plan);
    const depth = undoDepth(desk);
    const [battery = '', amp = ''] = ids;
    const joined = connect(desk, end(battery, 'positive'), end(amp, 'supply'), [{ xM: 0.3, yM: 0.5 }], null, 'Feed');
    if (!joined.ok) throw new Error(joined.reason);
    const [run] = desk.getState().plan.runs;
    expect(run).toMatchObject({ id: joined.runId, name: 'Feed', kind: 'power', sheetId: 'sheet-1' });
    expect(run?.bends).toEqual([{ xM: 0.3, yM: 0.5 }]);
    expect(desk.getState().selection).toEqual({ kind: 'run', id: joined.runId });
    expect(undoDepth(desk)).toBe(depth + 1);
    undo(desk);
    expect(savePlan(desk.getState().plan)).toBe(before);
  });

  it('refuses, with a reason, and changes nothing', () => {
    const desk = deskOf(vanWithFeed());
    const { plan } = desk.getState();
    const refused = (from: ReturnType<typeof end>, to: ReturnType<typeof end>) => {
      const result = connect(desk, from, to, [], null, 'x');
      return result.ok ? null : result.reason;
    };
    expect(refused(end('battery', 'positive'), end('battery', 'positive'))).toBe('sameFitting');
    expect(refused(end('battery', 'positive'), end('battery', 'negative'))).toBe('sameFitting');
    expect(refused(end('battery', 'positive'), end('amp', 'supply'))).toBe('alreadyJoined');
    expect(refused(end('amp', 'supply'), end('battery', 'positive'))).toBe('alreadyJoined');
    expect(refused(end('battery', 'positive'), end('nobody', 'supply'))).toBe('gone');
    expect(refused(end('battery', 'positive'), end('amp', 'bus'))).toBe('gone');
    expect(desk.getState().plan).toBe(plan);
    expect(undoDepth(desk)).toBe(0);
  });

  it('refuses more bends than a run may have, and a bend out of bounds', () => {
    const desk = deskOf(vanWithFeed());
    const bends = Array.from({ length: 501 }, () => ({ xM: 1, yM: 1 }));
    const result = connect(desk, end('battery', 'negative'), end('amp', 'ground'), bends, null, 'x');
    expect(result).toEqual({ ok: false, reason: 'tooManyBends' });
    const far = connect(desk, end('battery', 'negative'), end('amp', 'ground'), [{ xM: 900, yM: 0 }], null, 'x');
    expect(far).toEqual({ ok: false, reason: 'refused' });
  });
});

describe('the kind of a run', () => {
  it.each<[FittingKind, string, FittingKind, string, string]>([
    ['battery', 'positive', 'fuse', 'in', 'power'],
    ['fuse', 'out', 'block', 'bus', 'power'],
    ['block', 'out1', 'amplifier', 'supply', 'power'],
    ['amplifier', 'ground', 'ground', 'body', 'ground'],
    ['ground', 'body', 'battery', 'negative', 'ground'],
    ['amplifier', 'ground', 'passThrough', 'through', 'ground'],
    ['amplifier', 'remote', 'block', 'out1', 'remote'],
    ['alternator', 'positive', 'fuse', 'in', 'power'],
    ['jumpPost', 'stud', 'ground', 'body', 'power'],
    ['takeOff', 'stud', 'breaker', 'in', 'power'],
    ['charger', 'input', 'relay', 'out', 'power'],
    ['charger', 'ground', 'bus', 'bus', 'ground'],
    ['capacitor', 'negative', 'ground', 'body', 'ground'],
    ['load', 'supply', 'switch', 'out', 'power'],
    ['reducer', 'narrow', 'amplifier', 'ground', 'ground'],
    // a dead short does not look like a ground lead
    ['battery', 'positive', 'ground', 'body', 'power'],
    ['amplifier', 'supply', 'battery', 'negative', 'power'],
  ])('%s %s to %s %s is %s, either way round', (kindA, terminalA, kindB, terminalB, expected) => {
    const { desk, ids } = deskWith(kindA, kindB);
    const [a = '', b = ''] = ids;
    const { plan } = desk.getState();
    expect(runKindBetween(plan, end(a, terminalA), end(b, terminalB))).toBe(expected);
    expect(runKindBetween(plan, end(b, terminalB), end(a, terminalA))).toBe(expected);
  });

  it('goes on through a pass-through as what came to it', () => {
    const { desk, ids } = deskWith('amplifier', 'passThrough', 'block');
    const [amp = '', pass = '', block = ''] = ids;
    connect(desk, end(amp, 'ground'), end(pass, 'through'), [], null, 'Ground');
    expect(runKindBetween(desk.getState().plan, end(pass, 'through'), end(block, 'bus'))).toBe('ground');
  });

  it("from an alternator to the vehicle's own battery is the vehicle's own, and a second one beside it is not", () => {
    const { desk, ids } = deskWith('battery', 'alternator', 'battery', 'fuse');
    const [own = '', alternator = '', second = '', fuse = ''] = ids;
    const kind = (from: string, to: string, terminal: string) =>
      runKindBetween(desk.getState().plan, end(from, 'positive'), end(to, terminal));
    expect(kind(alternator, own, 'positive')).toBe('factory');
    expect(kind(own, alternator, 'positive')).toBe('factory');
    expect(kind(alternator, second, 'positive')).toBe('power');
    connect(desk, end(alternator, 'positive'), end(own, 'positive'), [], null, '');
    expect(desk.getState().plan.runs[0]?.kind).toBe('factory');
    expect(kind(alternator, own, 'positive')).toBe('power');
    // what is added to it is not the vehicle's own either
    connect(desk, end(fuse, 'in'), end(own, 'positive'), [], 'factory', '');
    expect(runKindBetween(desk.getState().plan, end(fuse, 'out'), end(second, 'positive'))).toBe('power');
  });

  it('may be told', () => {
    const { desk, ids } = deskWith('fuse', 'block');
    const [fuse = '', block = ''] = ids;
    connect(desk, end(fuse, 'out'), end(block, 'bus'), [], 'ground', 'Ground');
    expect(desk.getState().plan.runs[0]?.kind).toBe('ground');
  });
});

describe('placing a fitting', () => {
  it('adds it, selects it and gives back the moving hand, in one step', () => {
    const desk = deskOf(emptyVan());
    desk.setState({ hand: { way: 'place', fitting: 'fuse' } });
    const id = placeFitting(desk, 'fuse', { xM: 0.123_456, yM: 0.5 }, 'sheet-1', 'Main fuse') ?? '';
    const { plan, selection, hand } = desk.getState();
    expect(fittingById(plan, id)).toMatchObject({ kind: 'fuse', name: 'Main fuse', at: { xM: 0.1235, yM: 0.5 } });
    expect(selection).toEqual({ kind: 'fitting', id });
    expect(hand).toEqual({ way: 'move' });
    expect(undoDepth(desk)).toBe(1);
  });

  it('answers null where the plan will not have it', () => {
    const desk = deskOf(emptyVan());
    expect(placeFitting(desk, 'fuse', { xM: 900, yM: 0 }, 'sheet-1', 'x')).toBeNull();
    expect(placeFitting(desk, 'fuse', { xM: 1, yM: 0 }, 'sheet-9', 'x')).toBeNull();
    expect(undoDepth(desk)).toBe(0);
  });

  it('gives only the first battery of a vehicle a factory strap', () => {
    const { desk } = deskWith('battery', 'battery');
    const straps = desk.getState().plan.fittings.map((fitting) => fitting.kind === 'battery' && fitting.strap !== null);
    expect(straps).toEqual([true, false]);
  });
});
