import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createDesk, HISTORY_LIMIT } from '../../src/desk/desk.ts';
import {
  beginGesture,
  cancelGesture,
  commit,
  commitGesture,
  draftGesture,
  redo,
  redoDepth,
  undo,
  undoDepth,
} from '../../src/desk/edit.ts';
import { select } from '../../src/desk/selection.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { emptyVan, vanWithFeed } from './plans.ts';

const deskOf = (plan: Plan) => createDesk(plan, { isExample: false, bigFingers: false });
const rename = (name: string) => (plan: Plan) => renamePlan(plan, name);

describe('history', () => {
  it('agrees with a plain list of plans, under any mix of acts', () => {
    const step = fc.oneof(
      fc.record({ kind: fc.constant('commit' as const), name: fc.string({ maxLength: 5 }) }),
      fc.record({ kind: fc.constant('drag' as const), name: fc.string({ maxLength: 5 }), done: fc.boolean() }),
      fc.constant({ kind: 'undo' as const }),
      fc.constant({ kind: 'redo' as const }),
      fc.constant({ kind: 'select' as const }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (steps) => {
        const first = vanWithFeed();
        const desk = deskOf(first);
        let model = [first.name];
        let at = 0;
        const write = (name: string) => {
          if (name === model[at]) return;
          model = [...model.slice(0, at + 1), name];
          at += 1;
        };
        for (const step of steps) {
          if (step.kind === 'commit') {
            commit(desk, 'rename', rename(step.name));
            write(step.name);
          } else if (step.kind === 'drag') {
            beginGesture(desk, 'rename');
            draftGesture(desk, rename(`${step.name}?`));
            draftGesture(desk, rename(step.name));
            if (step.done) {
              commitGesture(desk);
              write(step.name);
            } else cancelGesture(desk);
          } else if (step.kind === 'undo') {
            undo(desk);
            at = Math.max(0, at - 1);
          } else if (step.kind === 'redo') {
            redo(desk);
            at = Math.min(model.length - 1, at + 1);
          } else select(desk, { kind: 'fitting', id: 'amp' });
          expect(desk.getState().plan.name).toBe(model[at]);
          expect([undoDepth(desk), redoDepth(desk)]).toEqual([at, model.length - 1 - at]);
        }
      }),
    );
  });

  it('keeps redo when something is selected', () => {
    const desk = deskOf(vanWithFeed());
    commit(desk, 'rename', rename('One'));
    undo(desk);
    select(desk, { kind: 'fitting', id: 'amp' });
    select(desk, null);
    expect(redoDepth(desk)).toBe(1);
  });

  it('drops the selection of what an undo or redo takes away, and never shows the two together', () => {
    const desk = deskOf(emptyVan());
    const withFeed = { ...vanWithFeed() };
    commit(desk, 'place', () => withFeed, { selection: { kind: 'fitting', id: 'amp' } });
    const dangling: unknown[] = [];
    desk.subscribe(({ plan, selection }) => {
      if (selection !== null && !plan.fittings.some(({ id }) => id === selection.id)) dangling.push(selection);
    });
    undo(desk);
    expect(desk.getState().selection).toBeNull();
    redo(desk);
    select(desk, { kind: 'fitting', id: 'amp' });
    undo(desk);
    expect(desk.getState().selection).toBeNull();
    expect(dangling).toEqual([]);
  });

  it('keeps a selected run when the selected bend goes', () => {
    const desk = deskOf(vanWithFeed());
    const bend = { xM: 3, yM: 0.5 };
    const edit = (plan: Plan): Plan => ({ ...plan, runs: plan.runs.map((r) => ({ ...r, bends: [...r.bends, bend] })) });
    commit(desk, 'addBend', edit, { selection: { kind: 'bend', id: 'feed', index: 1 } });
    undo(desk);
    expect(desk.getState().selection).toEqual({ kind: 'run', id: 'feed' });
  });

  it(`holds ${HISTORY_LIMIT} steps and drops the oldest`, () => {
    const desk = deskOf(emptyVan());
    for (let n = 0; n < HISTORY_LIMIT + 10; n += 1) commit(desk, 'rename', rename(`${n}`));
    expect(undoDepth(desk)).toBe(HISTORY_LIMIT);
    for (let n = 0; n < HISTORY_LIMIT + 10; n += 1) undo(desk);
    expect(desk.getState().plan.name).toBe('9');
  });

  it('at its ends does nothing', () => {
    const desk = deskOf(emptyVan());
    const { plan } = desk.getState();
    undo(desk);
    redo(desk);
    expect(desk.getState().plan).toBe(plan);
  });
});
