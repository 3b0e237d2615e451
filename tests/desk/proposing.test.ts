import { describe, expect, it } from 'vitest';
import { proposeAct } from '../../src/desk/acts/propose.ts';
import { removeSelected } from '../../src/desk/acts/removeSelected.ts';
import { createDesk, type Desk, shownPlan } from '../../src/desk/desk.ts';
import { beginGesture, commit, commitGesture, draftGesture, redo, undo, undoDepth } from '../../src/desk/edit.ts';
import { acceptAll, acceptPart, nameProposedBy, proposeFeed, refuseAll, refusePart } from '../../src/desk/proposing.ts';
import { newPlan } from '../../src/plan/create.ts';
import { addBend } from '../../src/plan/edits/addBend.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Proposed } from '../../src/plan/propose/proposal.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { FittingKind, Plan } from '../../src/plan/schema.ts';

function placed(): Plan {
  const plan = newPlan({ id: 'p', name: 'P', sheetId: 's', outline: DEFAULT_OUTLINES.hatchback, mirrored: false });
  const put = (before: Plan, kind: FittingKind, id: string, xM: number, yM: number) =>
    addFitting(before, newFittingIn(before, kind, { id, name: id, sheetId: 's', at: { xM, yM } }));
  return put(
    put(put(plan, 'battery', 'battery', 0.6, 1.39), 'amplifier', 'one', 3.5, 0.5),
    'amplifier',
    'two',
    3.5,
    1.2,
  );
}

async function proposed(): Promise<Desk> {
  const desk = createDesk(placed(), { isExample: false, bigFingers: false });
  nameProposedBy(desk, (kind) => kind);
  await proposeFeed(desk);
  return desk;
}

function partOf(desk: Desk, kind: FittingKind): Extract<Proposed, { kind: 'fitting' }> {
  const found = desk.getState().proposal.find((part) => part.kind === 'fitting' && part.fitting.kind === kind);
  if (found?.kind !== 'fitting') throw new Error(`No ${kind} is proposed.`);
  return found;
}

describe('a proposal on the desk', () => {
  it('is seen and answered for, and no part of the plan', async () => {
    const desk = await proposed();
    const { plan, proposal } = desk.getState();
    expect(plan).toEqual(placed());
    const kinds = proposal.map((part) => (part.kind === 'fitting' ? part.fitting.kind : part.run.kind));
    expect(kinds.toSorted()).toEqual(
      ['fuse', 'block', 'passThrough', 'ground', 'ground', ...Array(5).fill('power'), 'ground', 'ground'].toSorted(),
    );
    expect(shownPlan(desk.getState()).fittings).toHaveLength(plan.fittings.length + 5);
    expect(undoDepth(desk)).toBe(1);
    expect(proposeAct.allowed(desk.getState())).toBe(false);
  });

  it('becomes the plan in one step, and undo gives the first bytes', async () => {
    const desk = await proposed();
    const whole = shownPlan(desk.getState());
    expect(acceptAll(desk)).toBe(true);
    expect(desk.getState().proposal).toEqual([]);
    expect(savePlan(desk.getState().plan)).toBe(savePlan(whole));
    expect(undoDepth(desk)).toBe(2);
    undo(desk);
    expect(savePlan(desk.getState().plan)).toBe(savePlan(placed()));
    expect(savePlan(shownPlan(desk.getState()))).toBe(savePlan(whole));
  });

  it('moves under the hand in a step of its own, and says from then on who moved it', async () => {
    const desk = await proposed();
    const { id, fitting } = partOf(desk, 'fuse');
    const before = fitting.at;
    beginGesture(desk, 'moveFitting');
    draftGesture(desk, (plan) => moveFitting(plan, id, { xM: 0.75, yM: 1.3 }));
    expect(commitGesture(desk)).toBe(true);
    expect(partOf(desk, 'fuse')).toMatchObject({ fitting: { at: { xM: 0.75, yM: 1.3 } }, why: 'moved' });
    expect(partOf(desk, 'passThrough').why).toBe('throughWall');
    expect(desk.getState().plan).toEqual(placed());
    expect(desk.getState().act).toBe('moveFitting');
    expect(undoDepth(desk)).toBe(2);
    undo(desk);
    expect(partOf(desk, 'fuse')).toMatchObject({ fitting: { at: before }, why: 'firstFuse' });
  });

  it('keeps the reason of what is taped, and not of what is bent', async () => {
    const desk = await proposed();
    const [first, second] = desk.getState().proposal.flatMap((part) => (part.kind === 'run' ? [part] : []));
    if (first === undefined || second === undefined) throw new Error('Two runs are proposed.');
    commit(desk, 'change', (plan) => changeRun(plan, first.id, { tapedM: 2.74 }));
    commit(desk, 'addBend', (plan) => addBend(plan, second.id, 0, { xM: 2, yM: 0.7 }));
    const whyOf = (id: string) => desk.getState().proposal.find((part) => part.id === id)?.why;
    expect(whyOf(first.id)).toBe(first.why);
    expect(whyOf(second.id)).toBe('moved');
  });

  it('is taken part by part: a run brings the fittings it needs', async () => {
    const desk = await proposed();
    const fuse = partOf(desk, 'fuse');
    const first = desk.getState().proposal.find((part) => part.kind === 'run' && part.run.to.fittingId === fuse.id);
    expect(first).toBeDefined();
    acceptPart(desk, first?.id ?? '');
    expect(desk.getState().plan.fittings.map(({ kind }) => kind)).toEqual([
      'battery',
      'amplifier',
      'amplifier',
      'fuse',
    ]);
    expect(desk.getState().plan.runs).toHaveLength(1);
    expect(desk.getState().proposal).toHaveLength(10);
    expect(undoDepth(desk)).toBe(2);
  });

  it('is refused part by part: the runs at a fitting go with it', async () => {
    const desk = await proposed();
    const { id } = partOf(desk, 'ground');
    desk.setState({ selection: { kind: 'fitting', id } });
    removeSelected.run(desk);
    expect(desk.getState().proposal).toHaveLength(10);
    expect(desk.getState().selection).toBeNull();
    expect(desk.getState().message).toEqual({ id: 'refused', params: { count: 2 }, undo: true });
    refusePart(desk, partOf(desk, 'block').id);
    expect(desk.getState().proposal).toHaveLength(6);
    expect(desk.getState().message).toEqual({ id: 'refused', params: { count: 4 }, undo: true });
    refuseAll(desk);
    expect(shownPlan(desk.getState())).toBe(desk.getState().plan);
    expect(desk.getState().message).toEqual({ id: 'refused', params: { count: 6 }, undo: true });
    expect(undoDepth(desk)).toBe(4);
  });

  it('comes back as it was, refusal by refusal, and nothing older goes with it', async () => {
    const desk = await proposed();
    commit(desk, 'rename', (plan) => renamePlan(plan, 'Mine'));
    const states = [desk.getState().proposal];
    refusePart(desk, partOf(desk, 'ground').id);
    states.push(desk.getState().proposal);
    refuseAll(desk);
    for (const proposal of states.toReversed()) {
      undo(desk);
      expect(desk.getState()).toMatchObject({ proposal, message: null, plan: { name: 'Mine' } });
    }
    undo(desk);
    expect(desk.getState().plan.name).toBe('P');
    expect(desk.getState().proposal).toHaveLength(12);
    undo(desk);
    expect(desk.getState().proposal).toEqual([]);
    expect(desk.getState().plan).toEqual(placed());
    for (let step = 0; step < 4; step += 1) redo(desk);
    expect(desk.getState()).toMatchObject({ proposal: [], plan: { name: 'Mine' } });
  });

  it('of the example makes it a plan of the own, like any other change', async () => {
    const desk = createDesk(placed(), { isExample: true, bigFingers: false });
    await proposeFeed(desk);
    expect(desk.getState()).toMatchObject({ isExample: false, message: { id: 'exampleCopied' } });
    const { id } = desk.getState().plan;
    expect(id).not.toBe('p');
    undo(desk);
    expect(desk.getState()).toMatchObject({ proposal: [], plan: { id } });
  });

  it('keeps what still fits when the plan is edited beside it', async () => {
    const desk = await proposed();
    commit(desk, 'move', (plan) => moveFitting(plan, 'one', { xM: 3.6, yM: 0.6 }));
    expect(desk.getState().proposal).toHaveLength(12);
    commit(desk, 'remove', (plan) => removeFitting(plan, 'one'));
    // its feed and its ground lead; the ground point stays where it is
    expect(desk.getState().proposal).toHaveLength(10);
    expect(desk.getState().plan.fittings.map(({ id }) => id)).toEqual(['battery', 'two']);
    undo(desk);
    expect(desk.getState().plan.fittings.map(({ id }) => id)).toEqual(['battery', 'one', 'two']);
    expect(desk.getState().proposal).toHaveLength(12);
  });
});
