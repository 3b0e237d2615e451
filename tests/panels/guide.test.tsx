import { act, cleanup, fireEvent, render, screen } from '@testing-library/react';
import { beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { loadAssess } from '../../src/desk/answer.ts';
import { commit } from '../../src/desk/edit.ts';
import { choice, choose, restoreChoices } from '../../src/look/choices.ts';
import { DeskProvider } from '../../src/panels/DeskProvider.tsx';
import Guide from '../../src/panels/guide/Guide.tsx';
import { GuideOffer } from '../../src/panels/guide/GuideOffer.tsx';
import { currentStep, doneSteps, STEPS, type StepId } from '../../src/panels/guide/steps.ts';
import { newRun } from '../../src/plan/create.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { addRun } from '../../src/plan/edits/addRun.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import type { FittingKind, Plan, RunKind } from '../../src/plan/schema.ts';
import { emptyVan } from '../desk/plans.ts';
import { terminalRef } from '../support/terminal.ts';
import { renderPanel } from './render.tsx';

beforeAll(() => loadAssess());
beforeEach(() => {
  localStorage.clear();
  restoreChoices();
});

const place = (kind: FittingKind, id: string, xM: number, yM: number) => (plan: Plan) =>
  addFitting(plan, newFittingIn(plan, kind, { id, name: id, sheetId: 'sheet-1', at: { xM, yM } }));

const join = (id: string, kind: RunKind, from: string, to: string) => (plan: Plan) =>
  addRun(
    plan,
    newRun({ id, name: '', kind, sheetId: 'sheet-1', from: terminalRef(from), to: terminalRef(to), bends: [] }),
  );

const doneIn = (plan: Plan, isExample = false): StepId[] => {
  const done = doneSteps({ plan, isExample, answer: assess(plan) });
  return STEPS.flatMap(({ id }, index) => (done[index] === true ? [id] : []));
};

const told = (plan: Plan) => changeFitting(plan, 'amp', { ratedW: { value: 500, origin: 'told' } });

/** What a user does, edit by edit, with the steps that are done after each. */
const EDITS: readonly (readonly [what: string, edit: (plan: Plan) => Plan, done: readonly StepId[]])[] = [
  ['nothing', (plan) => plan, ['plan']],
  ['a battery', place('battery', 'bat', 0.5, 1), ['plan', 'battery']],
  ['an amplifier, its output not told', place('amplifier', 'amp', 3.5, 1), ['plan', 'battery']],
  ['its output told', told, ['plan', 'battery', 'amplifier']],
  ['a fuse joined to nothing', place('fuse', 'fuse', 0.6, 1), ['plan', 'battery', 'amplifier']],
  ['half a feed', join('a', 'power', 'bat.positive', 'fuse.in'), ['plan', 'battery', 'amplifier']],
  ['the feed', join('b', 'power', 'fuse.out', 'amp.supply'), ['plan', 'battery', 'amplifier', 'feed']],
  ['a ground point', place('ground', 'gnd', 3.7, 1), ['plan', 'battery', 'amplifier', 'feed']],
  ['its cable', join('c', 'ground', 'amp.ground', 'gnd.body'), ['plan', 'battery', 'amplifier', 'feed', 'grounds']],
  [
    'a taped length',
    (plan) => changeRun(plan, 'a', { tapedM: 0.2 }),
    ['plan', 'battery', 'amplifier', 'feed', 'grounds', 'tape'],
  ],
];

describe('the steps', () => {
  it('tick themselves, edit by edit', () => {
    let plan = emptyVan();
    for (const [what, edit, done] of EDITS) {
      plan = edit(plan);
      expect(doneIn(plan), what).toEqual(done);
    }
    expect(currentStep({ plan, isExample: false, answer: assess(plan) })).toBe(STEPS.length - 1);
  });

  it('a main fuse far from the battery is no feed yet', () => {
    const plan = EDITS.reduce((before, [, edit]) => edit(before), emptyVan());
    const far = changeRun(plan, 'a', { tapedM: 2 });
    expect(doneIn(far)).not.toContain('feed');
    expect(STEPS[currentStep({ plan: far, isExample: false, answer: assess(far) })]?.id).toBe('feed');
  });

  it('nothing of the example is the own work of its visitor', () => {
    const plan = EDITS.reduce((before, [, edit]) => edit(before), emptyVan());
    expect(doneIn(plan, true)).toEqual([]);
  });
});

describe('the card', () => {
  const onNewPlan = vi.fn();
  const onEdit = vi.fn();
  const show = (plan: Plan) => renderPanel(<Guide onNewPlan={onNewPlan} onEdit={onEdit} />, plan);

  it('takes up the tool of its step, and goes on when the plan does', () => {
    choose('guide', 'open');
    const { desk } = show(emptyVan());
    expect(screen.getByRole('heading').textContent).toBe('Step 2 of 7: the battery');
    fireEvent.click(screen.getByRole('button', { name: 'Take a battery' }));
    expect(desk.getState().hand).toEqual({ way: 'place', fitting: 'battery' });
    expect(screen.getByRole('status').textContent).toBe('The battery is in your hand: tap where it sits in the car.');
    fireEvent.click(screen.getByRole('button', { name: 'Put it back' }));
    expect(desk.getState().hand).toEqual({ way: 'move' });
    fireEvent.click(screen.getByRole('button', { name: 'Take a battery' }));
    act(() => void commit(desk, 'place', place('battery', 'bat', 0.5, 1)));
    expect(screen.getByRole('heading').textContent).toBe('Step 3 of 7: the amplifier');
    act(() => void commit(desk, 'place', place('amplifier', 'amp', 3.5, 1)));
    fireEvent.click(screen.getByRole('button', { name: 'Enter its output' }));
    expect(desk.getState().selection).toEqual({ kind: 'fitting', id: 'amp' });
    expect(onEdit).toHaveBeenCalledOnce();
    act(() => void commit(desk, 'input', told));
    expect(screen.getByRole('heading').textContent).toBe('Step 4 of 7: the feed');
    expect(screen.getByRole('button', { name: 'Let it be proposed' })).toBeTruthy();
  });

  it('begins with a plan of the own', () => {
    const { desk } = show(emptyVan());
    act(() => desk.setState({ isExample: true }));
    fireEvent.click(screen.getByRole('button', { name: 'Start a new plan' }));
    expect(onNewPlan).toHaveBeenCalledOnce();
  });

  it('is folded and left with one tap each', () => {
    choose('guide', 'open');
    show(emptyVan());
    fireEvent.click(screen.getByRole('button', { name: 'Fold' }));
    expect(screen.queryByRole('button', { name: 'Take a battery' })).toBeNull();
    fireEvent.click(screen.getByRole('button', { name: 'Leave' }));
    expect(choice('guide')).toBe('left');
  });

  it('Escape leaves, once there is nothing else to step back from', () => {
    choose('guide', 'open');
    const { desk } = show(emptyVan());
    act(() => desk.setState({ hand: { way: 'run' } }));
    fireEvent.keyDown(window, { key: 'Escape' });
    expect(choice('guide')).toBe('open');
    act(() => desk.setState({ hand: { way: 'move' } }));
    fireEvent.keyDown(window, { key: 'Escape' });
    expect(choice('guide')).toBe('left');
  });
});

describe('the offer', () => {
  it('stands on the first visit only, and is answered once', () => {
    const { desk, unmount } = renderPanel(<GuideOffer />, emptyVan());
    expect(screen.queryByRole('region', { name: 'First visit' })).toBeNull();
    unmount();
    desk.setState({ isExample: true });
    choose('guide', 'left');
    renderPanel(<GuideOffer />, emptyVan());
    expect(screen.queryByRole('region', { name: 'First visit' })).toBeNull();
  });

  it('is made in the work face alone: elsewhere there is no guide to open', () => {
    const { desk } = renderPanel(<GuideOffer />, emptyVan());
    cleanup();
    desk.setState({ isExample: true });
    const offer = () => screen.queryByRole('region', { name: 'First visit' });
    render(
      <DeskProvider desk={desk}>
        <GuideOffer />
      </DeskProvider>,
    );
    expect(offer()).not.toBeNull();
    act(() => choose('face', 'class'));
    expect(offer()).toBeNull();
    act(() => choose('face', 'work'));
    expect(offer()).not.toBeNull();
  });
});
