import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { loadAssess } from '../../src/desk/answer.ts';
import { createDesk, type Desk } from '../../src/desk/desk.ts';
import { commit, layProposal } from '../../src/desk/edit.ts';
import { proposeFeed } from '../../src/desk/proposing.ts';
import { choose, restoreChoices } from '../../src/look/choices.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import type { Proposal } from '../../src/plan/propose/proposal.ts';
import type { FittingKind, Plan } from '../../src/plan/schema.ts';
import { pageLate } from '../../src/sketch/loadLate.ts';
import ProposeBar from '../../src/sketch/ProposeBar.tsx';
import Sketch from '../../src/sketch/Sketch.tsx';
import { emptyPlan, feedPlan, SHEET } from '../drawing/support/plans.ts';
import { HandClock, tap } from './support/finger.ts';

beforeAll(() => Promise.all([loadAssess(), pageLate.load()]));
beforeEach(() => {
  localStorage.clear();
  restoreChoices();
  vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockImplementation(() => 1400);
  vi.spyOn(HTMLElement.prototype, 'clientHeight', 'get').mockImplementation(() => 900);
});
afterEach(() => vi.restoreAllMocks());

function show(plan: Plan): Desk {
  const desk = createDesk(plan, { isExample: false, bigFingers: false });
  render(<Sketch desk={desk} />);
  return desk;
}

const put = (kind: FittingKind, id: string, xM: number, yM: number) => (plan: Plan) =>
  addFitting(plan, newFittingIn(plan, kind, { id, name: id, sheetId: SHEET, at: { xM, yM } }));

/** A battery and an amplifier that nothing joins. */
const unfed = (): Plan => put('amplifier', 'amp', 3.5, 1)(put('battery', 'battery', 0.5, 1)(emptyPlan()));

const ghost = (kind: FittingKind, id: string, yM: number): Proposal[number] => {
  const fitting = newFittingIn(unfed(), kind, { id, name: id, sheetId: SHEET, at: { xM: 1, yM } });
  return { kind: 'fitting', id, fitting, why: kind === 'fuse' ? 'firstFuse' : 'divides' };
};
const GHOSTS: Proposal = [ghost('fuse', 'fuse', 0.6), ghost('block', 'block', 1.2)];

const strip = () => {
  const found = document.querySelector<HTMLElement>('.sketch-strip');
  if (found === null) throw new Error('no strip');
  return found;
};
const buttons = () =>
  within(strip())
    .queryAllByRole('button')
    .map((button) => button.textContent);
const press = (name: string) => fireEvent.click(within(strip()).getByRole('button', { name }));

describe('the strip under the panes', () => {
  it('lies in no pane, and says what a touch does while nothing is begun', () => {
    show(feedPlan());
    expect(strip().closest('.sketch-panes')).toBeNull();
    expect(document.querySelectorAll('.sketch-panes .sketch-pane')).toHaveLength(2);
    expect(strip().textContent).toBe('Tap to select, drag to move.');
    expect(buttons()).toEqual([]);
  });

  it('says what is in the hand and where it goes, and puts it away', () => {
    const desk = show(feedPlan());
    act(() => desk.setState({ hand: { way: 'place', fitting: 'fuse' } }));
    expect(within(strip()).getByRole('status').textContent).toBe('Fuse: tap where it goes.');
    press('Cancel');
    expect(desk.getState().hand).toEqual({ way: 'move' });
    expect(strip().textContent).toBe('Tap to select, drag to move.');
  });

  it('asks for a terminal while one is to be chosen', () => {
    const desk = show(feedPlan());
    act(() => desk.setState({ hand: { way: 'run' } }));
    expect(within(strip()).getByRole('status').textContent).toBe('Tap where the run starts.');
    const camera = desk.getState().cameras.whole;
    const surface = document.querySelector<HTMLElement>('[data-pane="whole"] .sketch-surface');
    if (camera === null || surface === null) throw new Error('no pane');
    const at = [(0.2 - camera.centreXM) * camera.pxPerM + 700, (1 - camera.centreYM) * camera.pxPerM + 450] as const;
    act(() => tap(surface, ...at));
    expect(screen.getByRole('group', { name: 'Terminals of battery' })).toBeTruthy();
    expect(within(strip()).getByRole('status').textContent).toBe('Tap the terminal to join.');
  });

  it('proposes in the work view alone', async () => {
    show(unfed());
    await screen.findByRole('button', { name: 'Propose feed' });
    act(() => choose('face', 'class'));
    expect(buttons()).toEqual([]);
    act(() => choose('face', 'work'));
    await screen.findByRole('button', { name: 'Propose feed' });
  });
});

describe('the focus', () => {
  it('stays in the strip when the button that had it goes', async () => {
    const desk = show(unfed());
    const ask = await screen.findByRole('button', { name: 'Propose feed' });
    act(() => ask.focus());
    await act(async () => layProposal(desk, 'propose', GHOSTS));
    expect(buttons()).toEqual(['Accept all', 'Refuse all']);
    expect(ask.isConnected).toBe(false);
    expect(document.activeElement).toBe(strip().firstElementChild);
  });

  it('is not taken from where it has gone meanwhile', async () => {
    const desk = show(unfed());
    const ask = await screen.findByRole('button', { name: 'Propose feed' });
    act(() => ask.focus());
    await act(async () => ask.blur());
    await act(async () => layProposal(desk, 'propose', GHOSTS));
    expect(ask.isConnected).toBe(false);
    expect(document.activeElement).toBe(document.body);
  });
});

describe('what can be done with a proposal', () => {
  function propose(proposal: Proposal = GHOSTS) {
    const desk = createDesk(unfed(), { isExample: false, bigFingers: false });
    const clock = new HandClock();
    render(
      <div className="sketch-strip">
        <ProposeBar desk={desk} clock={clock} />
      </div>,
    );
    const settle = () => act(() => clock.turn(400));
    settle();
    if (proposal.length > 0) act(() => layProposal(desk, 'propose', proposal));
    return { desk, clock, settle };
  }
  const strong = () => strip().querySelector('button.strong')?.textContent;
  const pick = (desk: Desk, id: string) => act(() => desk.setState({ selection: { kind: 'fitting', id } }));

  it('is to take all of it, or the one that is picked out', () => {
    const { desk } = propose();
    expect(buttons()).toEqual(['Accept all', 'Refuse all']);
    expect(strong()).toBe('Accept all');
    pick(desk, 'fuse');
    expect(buttons()).toEqual(['Accept', 'Refuse']);
    expect(strong()).toBe('Accept');
  });

  it('gives the reason until it was moved by hand', () => {
    const { desk } = propose();
    pick(desk, 'fuse');
    const said = () => within(strip()).getByRole('status').textContent;
    expect(said()).toBe('fuse: a fuse as near the source as the place allows');
    act(() => void commit(desk, 'moveFitting', (plan) => moveFitting(plan, 'fuse', { xM: 2, yM: 0.6 })));
    expect(said()).toBe('fuse: moved by you');
    pick(desk, 'block');
    expect(said()).toBe('block: one cable feeds more than one input');
  });

  it('is done by no tap that was meant for what stood there before', () => {
    const { desk, clock, settle } = propose();
    press('Refuse all');
    act(() => clock.turn(399));
    press('Refuse all');
    expect(desk.getState().proposal).toHaveLength(2);
    act(() => clock.turn(1));
    pick(desk, 'block');
    press('Refuse');
    // the second tap of two meets 'Refuse all' now
    press('Refuse all');
    expect(desk.getState().proposal).toHaveLength(1);
    settle();
    press('Refuse all');
    expect(desk.getState().proposal).toEqual([]);
    cleanup();
  });

  it('says what no feed settles: one battery does not hold the voltage for so much', async () => {
    const amplifier = (watts: number) => (plan: Plan) =>
      changeFitting(plan, 'amp', { ratedW: { value: watts, origin: 'told' }, supplyInputs: 'two' });
    const said = async (watts: number) => {
      const desk = createDesk(amplifier(watts)(unfed()), { isExample: false, bigFingers: false });
      await proposeFeed(desk);
      const { unmount } = render(<ProposeBar desk={desk} clock={new HandClock()} />);
      const text = screen.getByRole('status').textContent ?? '';
      unmount();
      return text;
    };
    expect(await said(500)).toMatch(/^\d+ proposed\. Tap one to bend, accept or refuse it\. +Remote leads/);
    // 3,000 W at 0.8 from 12.6 V are 298 A, and 600 A of cold cranking leave a battery 9 milliohm: 2.7 V stay in it
    expect(await said(3000)).toMatch(
      /^\d+ proposed\. Tap one to bend, accept or refuse it\. Left to settle: At full output amp gets \d+\.\d+ V and shuts down below 10\.50 V\. Remote leads/,
    );
  });

  it('calls the first fuse behind each source a main fuse', async () => {
    const desk = createDesk(put('battery', 'second', 3, 0.5)(unfed()), { isExample: false, bigFingers: false });
    const clock = new HandClock();
    render(
      <div className="sketch-strip">
        <ProposeBar desk={desk} clock={clock} />
      </div>,
    );
    act(() => clock.turn(400));
    press('Propose feed');
    await vi.waitFor(() => expect(desk.getState().proposal.length).toBeGreaterThan(0));
    const fuses = desk.getState().proposal.flatMap((part) => (part.kind === 'fitting' ? [part.fitting] : []));
    expect(fuses.filter(({ kind }) => kind === 'fuse').map(({ name }) => name)).toEqual(['Main fuse', 'Main fuse 2']);
  });

  it('is asked for anew by no second tap on Refuse all', async () => {
    const { desk, settle } = propose();
    settle();
    press('Refuse all');
    press('Propose feed');
    await act(() => new Promise((resolve) => setTimeout(resolve, 30)));
    expect(desk.getState().proposal).toEqual([]);
    settle();
    press('Propose feed');
    await vi.waitFor(() => expect(desk.getState().proposal.length).toBeGreaterThan(0));
  });
});
