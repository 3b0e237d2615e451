import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDesk, shownPlan } from '../../src/desk/desk.ts';
import {
  beginGesture,
  cancelGesture,
  commit,
  commitGesture,
  draftGesture,
  openOnDesk,
  redo,
  redoDepth,
  undo,
  undoDepth,
} from '../../src/desk/edit.ts';
import { select } from '../../src/desk/selection.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { emptyVan, vanWithFeed } from './plans.ts';

const deskOf = (plan: Plan, isExample = false) => createDesk(plan, { isExample, bigFingers: false });
const rename = (name: string) => (plan: Plan) => renamePlan(plan, name);
const moveAmp = (xM: number) => (plan: Plan) => moveFitting(plan, 'amp', { xM, yM: 1 });

/** How often the desk is set while something is done. */
function setsDuring(desk: ReturnType<typeof deskOf>, act: () => void): number {
  let sets = 0;
  const stop = desk.subscribe(() => {
    sets += 1;
  });
  act();
  stop();
  return sets;
}

describe('a commit', () => {
  it('is one set and one step of history', () => {
    const desk = deskOf(emptyVan());
    expect(setsDuring(desk, () => commit(desk, 'rename', rename('Sound van')))).toBe(1);
    expect(desk.getState().plan.name).toBe('Sound van');
    expect(desk.getState().act).toBe('rename');
    expect(undoDepth(desk)).toBe(1);
  });

  it('of an edit that answers the same plan changes nothing and keeps redo', () => {
    const desk = deskOf(emptyVan());
    commit(desk, 'rename', rename('Sound van'));
    undo(desk);
    expect(commit(desk, 'rename', (plan) => plan)).toBe(false);
    expect([undoDepth(desk), redoDepth(desk)]).toEqual([0, 1]);
    redo(desk);
    expect(desk.getState().plan.name).toBe('Sound van');
  });

  it('that changes something ends redo', () => {
    const desk = deskOf(emptyVan());
    commit(desk, 'rename', rename('One'));
    undo(desk);
    commit(desk, 'rename', rename('Two'));
    expect([undoDepth(desk), redoDepth(desk)]).toEqual([1, 0]);
  });

  it('is taken back by one undo, to the same bytes', () => {
    const desk = deskOf(vanWithFeed());
    const before = savePlan(desk.getState().plan);
    commit(desk, 'remove', (plan) => removeFitting(plan, 'amp'));
    expect(savePlan(desk.getState().plan)).not.toBe(before);
    undo(desk);
    expect(savePlan(desk.getState().plan)).toBe(before);
  });

  it('sets what comes with it in the same set, and drops a selection of what is gone', () => {
    const desk = deskOf(vanWithFeed());
    select(desk, { kind: 'run', id: 'feed' });
    const sets = setsDuring(desk, () => {
      commit(desk, 'remove', (plan) => removeFitting(plan, 'amp'), {
        message: { id: 'removed', params: { name: 'Rear amplifier' }, undo: true },
      });
    });
    expect(sets).toBe(1);
    expect(desk.getState().message?.id).toBe('removed');
    expect(desk.getState().selection).toBeNull();
  });

  it('ends the offer to take an earlier act back', () => {
    const desk = deskOf(vanWithFeed());
    const message = { id: 'removed', params: { name: 'Rear amplifier' }, undo: true } as const;
    commit(desk, 'remove', (plan) => removeFitting(plan, 'amp'), { message });
    commit(desk, 'rename', rename('Two'));
    expect(desk.getState().message).toBeNull();
  });

  it('while a gesture is under way drops the gesture', () => {
    const desk = deskOf(vanWithFeed());
    beginGesture(desk, 'move');
    draftGesture(desk, moveAmp(3));
    commit(desk, 'rename', rename('Two'));
    expect(desk.getState().draft).toBeNull();
    expect(draftGesture(desk, moveAmp(2))).toBe(false);
    expect(commitGesture(desk)).toBe(false);
    expect(undoDepth(desk)).toBe(1);
  });
});

describe('a gesture', () => {
  it('drafts from the plan as it was at the start, and the plan stays', () => {
    const plan = vanWithFeed();
    const desk = deskOf(plan);
    beginGesture(desk, 'move');
    for (const xM of [3, 2.5, 2]) draftGesture(desk, moveAmp(xM));
    expect(shownPlan(desk.getState()).fittings[1]?.at.xM).toBe(2);
    expect(desk.getState().plan).toBe(plan);
    expect(undoDepth(desk)).toBe(0);
  });

  it('gives every draft the same base', () => {
    const plan = vanWithFeed();
    const desk = deskOf(plan);
    const bases: Plan[] = [];
    beginGesture(desk, 'move');
    for (const xM of [3, 2, 1]) {
      draftGesture(desk, (base) => {
        bases.push(base);
        return moveAmp(xM)(base);
      });
    }
    expect(bases).toEqual([plan, plan, plan]);
    expect(bases.every((base) => base === plan)).toBe(true);
  });

  it('committed is exactly one set and one step, whatever was drafted', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 20 }), (tenths) => {
        const desk = deskOf(vanWithFeed());
        commit(desk, 'rename', rename('Before'));
        const before = savePlan(desk.getState().plan);
        beginGesture(desk, 'move');
        for (const tenth of tenths) draftGesture(desk, moveAmp(tenth / 10));
        const changes = tenths.at(-1) !== 35;
        expect(setsDuring(desk, () => commitGesture(desk))).toBe(1);
        expect(undoDepth(desk)).toBe(changes ? 2 : 1);
        expect(desk.getState().plan.fittings[1]?.at.xM).toBe((tenths.at(-1) ?? 0) / 10);
        expect(desk.getState().draft).toBeNull();
        if (changes) undo(desk);
        expect(savePlan(desk.getState().plan)).toBe(before);
      }),
    );
  });

  it('cancelled leaves the same bytes, depth and redo', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 40 }), { maxLength: 20 }), (tenths) => {
        const desk = deskOf(vanWithFeed());
        commit(desk, 'rename', rename('One'));
        commit(desk, 'rename', rename('Two'));
        undo(desk);
        const before = savePlan(desk.getState().plan);
        beginGesture(desk, 'move');
        for (const tenth of tenths) draftGesture(desk, moveAmp(tenth / 10));
        cancelGesture(desk);
        expect(savePlan(desk.getState().plan)).toBe(before);
        expect([undoDepth(desk), redoDepth(desk)]).toEqual([1, 1]);
        expect(desk.getState().gesture).toBeNull();
      }),
    );
  });

  it('is dropped by an undo, which then takes one step', () => {
    const desk = deskOf(vanWithFeed());
    commit(desk, 'rename', rename('One'));
    beginGesture(desk, 'move');
    draftGesture(desk, moveAmp(1));
    undo(desk);
    expect(desk.getState().draft).toBeNull();
    expect(desk.getState().plan.name).toBe('Van');
    expect(desk.getState().plan.fittings[1]?.at.xM).toBe(3.5);
    expect(draftGesture(desk, moveAmp(2))).toBe(false);
  });

  it('takes what was selected in its draft alone with it', () => {
    const desk = deskOf(vanWithFeed());
    beginGesture(desk, 'remove');
    draftGesture(desk, (plan) => ({ ...plan, fittings: plan.fittings.map((f) => ({ ...f, id: `${f.id}-new` })) }));
    select(desk, { kind: 'fitting', id: 'amp-new' });
    expect(desk.getState().selection).not.toBeNull();
    cancelGesture(desk);
    expect(desk.getState().selection).toBeNull();
  });
});

describe('the example', () => {
  it('becomes a copy with its first change: another id, the same name, one step', () => {
    const example = vanWithFeed();
    const desk = deskOf(example, true);
    commit(desk, 'move', moveAmp(3));
    const { plan, isExample, message } = desk.getState();
    expect(plan.id).not.toBe(example.id);
    expect(plan.name).toBe(example.name);
    expect(isExample).toBe(false);
    expect(message?.id).toBe('exampleCopied');
    expect(undoDepth(desk)).toBe(1);
  });

  it('says so only where nothing weightier is said', () => {
    const desk = deskOf(vanWithFeed(), true);
    desk.setState({ message: { id: 'notKept', params: {}, undo: false } });
    commit(desk, 'move', moveAmp(3));
    expect(desk.getState().message?.id).toBe('notKept');
  });

  it('is not copied by looking, by a change of nothing, or by a gesture that is dropped', () => {
    const example = vanWithFeed();
    const desk = deskOf(example, true);
    select(desk, { kind: 'fitting', id: 'amp' });
    commit(desk, 'rename', (plan) => plan);
    beginGesture(desk, 'move');
    draftGesture(desk, moveAmp(1));
    cancelGesture(desk);
    expect(desk.getState().plan).toBe(example);
    expect(desk.getState().isExample).toBe(true);
  });

  it('undone to the start stays a copy, with the content of the example', () => {
    const example = vanWithFeed();
    const desk = deskOf(example, true);
    beginGesture(desk, 'move');
    draftGesture(desk, moveAmp(3));
    commitGesture(desk);
    const { id } = desk.getState().plan;
    undo(desk);
    expect(desk.getState().plan.id).toBe(id);
    expect(savePlan({ ...desk.getState().plan, id: example.id })).toBe(savePlan(example));
    expect(desk.getState().isExample).toBe(false);
    redo(desk);
    expect(desk.getState().plan.fittings[1]?.at.xM).toBe(3);
    expect(desk.getState().plan.id).toBe(id);
  });
});

describe('another plan on the desk', () => {
  it('comes with an empty history and nothing selected', () => {
    const desk = deskOf(vanWithFeed());
    commit(desk, 'rename', rename('One'));
    select(desk, { kind: 'fitting', id: 'amp' });
    beginGesture(desk, 'move');
    const next = emptyVan();
    openOnDesk(desk, next, { isExample: false });
    expect(desk.getState()).toMatchObject({ selection: null, gesture: null, draft: null, act: null, isExample: false });
    expect(desk.getState().plan).toBe(next);
    expect([undoDepth(desk), redoDepth(desk)]).toEqual([0, 0]);
    undo(desk);
    expect(desk.getState().plan).toBe(next);
  });
});
