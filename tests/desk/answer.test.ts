import { beforeAll, describe, expect, it } from 'vitest';
import { answerOf, loadAssess } from '../../src/desk/answer.ts';
import { createDesk, shownPlan } from '../../src/desk/desk.ts';
import { beginGesture, draftGesture, redo, undo } from '../../src/desk/edit.ts';
import { removeRun } from '../../src/plan/edits/removeRun.ts';
import { vanWithFeed } from './plans.ts';

beforeAll(loadAssess);

describe('the answer for a plan', () => {
  it('is worked out once for a plan, and the same again for an equal one', () => {
    const plan = vanWithFeed();
    expect(answerOf(plan)).toBe(answerOf(plan));
    const equal = structuredClone(plan);
    expect(answerOf(equal)).not.toBe(answerOf(plan));
    expect(answerOf(equal)).toEqual(answerOf(plan));
  });

  it('follows the draft of a gesture, and comes back unchanged with undo', () => {
    const desk = createDesk(vanWithFeed(), { isExample: false, bigFingers: false });
    const before = answerOf(shownPlan(desk.getState()));
    beginGesture(desk, 'remove');
    draftGesture(desk, (plan) => removeRun(plan, 'feed'));
    expect(answerOf(shownPlan(desk.getState())).runs).toHaveLength(0);
    expect(answerOf(desk.getState().plan)).toBe(before);
    undo(desk);
    redo(desk);
    expect(answerOf(shownPlan(desk.getState()))).toBe(before);
    expect(before.runs).toHaveLength(1);
  });
});
