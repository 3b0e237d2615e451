import { describe, expect, it } from 'vitest';
import { createDesk } from '../../src/desk/desk.ts';
import { beginGesture, commit, commitGesture, draftGesture, undo, undoDepth } from '../../src/desk/edit.ts';
import { dropOnRun, dropping, mayDropOnRun, placeFitting, placing } from '../../src/desk/place.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { terminalsOf } from '../../src/plan/terminals.ts';
import { vanWithFeed } from './plans.ts';

const deskOf = (plan: Plan) => createDesk(plan, { isExample: false, bigFingers: false });
const ends = (plan: Plan) => plan.runs.map(({ from, to }) => [from.fittingId, to.fittingId]);

describe('a fuse placed onto a run', () => {
  it('splits it in one step, and one undo joins it again to the same bytes', () => {
    const desk = deskOf(vanWithFeed());
    const before = savePlan(desk.getState().plan);
    const fuse = placeFitting(desk, 'fuse', { xM: 1, yM: 0.8 }, 'sheet-1', 'Main fuse', 'feed');
    expect(ends(desk.getState().plan)).toEqual([
      ['battery', fuse],
      [fuse, 'amp'],
    ]);
    expect(undoDepth(desk)).toBe(1);
    undo(desk);
    expect(savePlan(desk.getState().plan)).toBe(before);
  });

  it('by a drag that drafts with the same edit makes the same plan', () => {
    const byAct = deskOf(vanWithFeed());
    const id = placeFitting(byAct, 'fuse', { xM: 1, yM: 0.8 }, 'sheet-1', 'Main fuse', 'feed') ?? '';
    const newRunId = byAct.getState().plan.runs[1]?.id ?? '';

    const byHand = deskOf(vanWithFeed());
    const fuse = newFittingIn(byHand.getState().plan, 'fuse', {
      id,
      name: 'Main fuse',
      sheetId: 'sheet-1',
      at: { xM: 0, yM: 0 },
    });
    beginGesture(byHand, 'place');
    for (const xM of [0.2, 0.6, 1]) draftGesture(byHand, placing({ ...fuse, at: { xM, yM: 0.8 } }, 'feed', newRunId));
    commitGesture(byHand, { selection: { kind: 'fitting', id } });
    expect(savePlan(byHand.getState().plan)).toBe(savePlan(byAct.getState().plan));
    expect(byHand.getState().selection).toEqual({ kind: 'fitting', id });
  });

  it.each(['fuse', 'passThrough', 'breaker', 'reducer', 'relay', 'switch'] as const)(
    'so does a %s: what comes in goes out again, and one undo takes it back',
    (kind) => {
      const desk = deskOf(vanWithFeed());
      const before = savePlan(desk.getState().plan);
      const id = placeFitting(desk, kind, { xM: 1, yM: 0.8 }, 'sheet-1', 'In the cable', 'feed') ?? '';
      const { plan } = desk.getState();
      expect(ends(plan)).toEqual([
        ['battery', id],
        [id, 'amp'],
      ]);
      const fitting = plan.fittings.find((one) => one.id === id);
      const offered = fitting === undefined ? [] : terminalsOf(fitting);
      expect([plan.runs[0]?.to.terminal, plan.runs[1]?.from.terminal]).toEqual([offered[0], offered.at(-1)]);
      undo(desk);
      expect(savePlan(desk.getState().plan)).toBe(before);
    },
  );

  it('stands free when it is no kind that sits in a cable, or the run is gone', () => {
    const desk = deskOf(vanWithFeed());
    placeFitting(desk, 'block', { xM: 1, yM: 0.8 }, 'sheet-1', 'Block', 'feed');
    placeFitting(desk, 'fuse', { xM: 1, yM: 0.8 }, 'sheet-1', 'Fuse', 'no-such-run');
    expect(ends(desk.getState().plan)).toEqual([['battery', 'amp']]);
    expect(desk.getState().plan.fittings).toHaveLength(4);
  });
});

describe('a loose fuse dropped onto a run', () => {
  it('splits it and keeps what it is', () => {
    const desk = deskOf(vanWithFeed());
    const fuse = placeFitting(desk, 'fuse', { xM: 1, yM: 1.6 }, 'sheet-1', 'Main fuse') ?? '';
    commit(desk, 'change', (plan) => changeFitting(plan, fuse, { link: { ratingA: 100, family: 'auto' } }));
    const before = savePlan(desk.getState().plan);
    expect(mayDropOnRun(desk.getState().plan, fuse)).toBe(true);
    expect(dropOnRun(desk, fuse, 'feed', { xM: 1, yM: 0.8 })).toBe(true);
    expect(ends(desk.getState().plan)).toEqual([
      ['battery', fuse],
      [fuse, 'amp'],
    ]);
    expect(desk.getState().plan.fittings.find(({ id }) => id === fuse)).toMatchObject({ link: { ratingA: 100 } });
    undo(desk);
    expect(savePlan(desk.getState().plan)).toBe(before);
  });

  it('is left alone when it is in a cable already, locked, or of another kind', () => {
    const desk = deskOf(vanWithFeed());
    const joined = placeFitting(desk, 'fuse', { xM: 1, yM: 0.8 }, 'sheet-1', 'Main fuse', 'feed') ?? '';
    const locked = placeFitting(desk, 'fuse', { xM: 1, yM: 1.6 }, 'sheet-1', 'Spare') ?? '';
    commit(desk, 'lock', (plan) => changeFitting(plan, locked, { locked: true }));
    const { plan } = desk.getState();
    for (const id of [joined, locked, 'battery', 'nobody']) {
      expect(mayDropOnRun(plan, id)).toBe(false);
      expect(dropping(id, 'feed', { xM: 1, yM: 0.8 }, 'new-run')(plan)).toBe(plan);
    }
    expect(dropping(joined, 'no-such-run', { xM: 1, yM: 0.8 }, 'new-run')(plan)).toBe(plan);
  });
});
