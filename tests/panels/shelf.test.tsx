import { act, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { runAct } from '../../src/desk/acts/index.ts';
import { removeSelected } from '../../src/desk/acts/removeSelected.ts';
import { commit, layProposal } from '../../src/desk/edit.ts';
import { refusePart } from '../../src/desk/proposing.ts';
import { MessageBar } from '../../src/panels/message/MessageBar.tsx';
import { changedName } from '../../src/panels/shelf/History.tsx';
import { Shelf } from '../../src/panels/shelf/Shelf.tsx';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../src/plan/edits/removeFitting.ts';
import { newFittingIn } from '../../src/plan/newFitting.ts';
import type { Proposal } from '../../src/plan/propose/proposal.ts';
import { words } from '../../src/words/index.ts';
import { speakIn } from '../../src/words/language.ts';
import '../../src/words/placedNames.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

afterEach(() => speakIn('en'));

const moveFuse = (xM: number) => (plan: ReturnType<typeof examplePlan>) =>
  moveFitting(plan, 'mainFuse', { xM, yM: 0.7 });

describe('the shelf', () => {
  it('always shows the way of the hand, and changes it', () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    const hand = within(screen.getByRole('radiogroup', { name: 'The hand' }));
    expect(hand.getByRole<HTMLInputElement>('radio', { name: 'Move' }).checked).toBe(true);
    fireEvent.click(hand.getByRole('radio', { name: 'Run' }));
    expect(desk.getState().hand).toEqual({ way: 'run' });
    fireEvent.click(screen.getByRole('radio', { name: 'Amplifier' }));
    expect(desk.getState().hand).toEqual({ way: 'place', fitting: 'amplifier' });
    expect(hand.getByRole<HTMLInputElement>('radio', { name: 'Place' }).checked).toBe(true);
  });

  it('undo says what it takes back and how many steps there are', () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    const undo = screen.getByRole('button', { name: /^Undo/ });
    expect(undo.getAttribute('aria-disabled')).toBe('true');
    act(() => {
      commit(desk, 'moveFitting', moveFuse(0.6));
      commit(desk, 'moveFitting', moveFuse(0.5));
    });
    expect(undo.getAttribute('aria-label')).toBe('Undo: move Main fuse, 2 steps');
    fireEvent.click(undo);
    expect(undo.getAttribute('aria-label')).toBe('Undo: move Main fuse, 1 step');
    const redo = screen.getByRole('button', { name: 'Redo: move Main fuse, 1 step' });
    fireEvent.click(redo);
    expect(desk.getState().plan.fittings.find(({ id }) => id === 'mainFuse')?.at.xM).toBe(0.5);
  });

  it('undo says what was proposed, bent or refused', () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    const undo = () => screen.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label');
    const plan = examplePlan();
    const ghost = (id: string, name: string): Proposal[number] => {
      const place = { id, name, sheetId: plan.sheets[0]?.id ?? '', at: { xM: 2, yM: 0.5 } };
      return { kind: 'fitting', id, fitting: newFittingIn(plan, 'ground', place), why: 'groundBeside' };
    };
    act(() => layProposal(desk, 'propose', [ghost('one', 'Rear ground'), ghost('two', 'Front ground')]));
    expect(undo()).toBe('Undo: propose a feed, 1 step');
    act(() => void commit(desk, 'moveFitting', (before) => moveFitting(before, 'two', { xM: 1, yM: 0.5 })));
    expect(undo()).toBe('Undo: move Front ground, 2 steps');
    act(() => refusePart(desk, 'one'));
    expect(undo()).toBe('Undo: refuse the proposed Rear ground, 3 steps');
    fireEvent.click(screen.getByRole('button', { name: /^Undo/ }));
    expect(screen.getByRole('button', { name: 'Redo: refuse the proposed Rear ground, 1 step' })).toBeTruthy();
    expect(undo()).toBe('Undo: move Front ground, 2 steps');
  });

  it('its pull shows what is in the hand, whatever the drawer hides', () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    const pull = () => screen.getByRole('button', { name: /^Tools/ });
    const symbol = () => pull().querySelector('path')?.getAttribute('d');
    const symbolOf = (name: string) =>
      screen.getByRole('radio', { name }).closest('label')?.querySelector('path')?.getAttribute('d');
    const atRest = symbol();
    act(() => desk.setState({ hand: { way: 'place', fitting: 'fuse' } }));
    expect(pull().textContent).toBe('Tools, in the hand: Fuse');
    expect(symbol()).toBe(symbolOf('Fuse'));
    act(() => desk.setState({ hand: { way: 'run' } }));
    expect(pull().textContent).toBe('Tools, in the hand: Run');
    expect(symbol()).toBe(symbolOf('Run'));
    act(() => desk.setState({ hand: { way: 'move' } }));
    expect(pull().textContent).toBe('Tools');
    expect(symbol()).toBe(atRest);
  });

  it('switches snapping', () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    fireEvent.click(screen.getByRole('button', { name: 'Snap' }));
    expect(desk.getState().snap).toBe(false);
  });
});

describe('more fittings', () => {
  const open = async () => {
    fireEvent.click(screen.getByRole('button', { name: 'More fittings' }));
    return within(await screen.findByRole('region', { name: 'More fittings' }));
  };

  it('holds every kind that is not on the shelf, once, in groups that have a name', async () => {
    renderPanel(<Shelf />, examplePlan());
    const more = await open();
    const groups = more.getAllByRole('group').map((group) => within(group).getAllByRole('button').length);
    // sources, protection, joining, loads; and the ways to another sheet, which are no fittings
    expect(groups).toEqual([5, 3, 2, 1, 4]);
    const here = more.getAllByRole('button').map((button) => button.dataset.choice);
    const onShelf = within(screen.getByRole('radiogroup', { name: 'Fittings' })).getAllByRole('radio');
    const all = new Set([...here.filter((kind) => kind !== undefined)]);
    // a continuation point comes with its sheets
    expect(all.size + onShelf.length).toBe(Object.keys(words.fittings.kinds).length - 1);
  });

  it('takes one into the hand, goes away, and the shelf shows what is held', async () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    const more = await open();
    fireEvent.click(more.getByRole('button', { name: 'Isolating relay' }));
    expect(desk.getState().hand).toEqual({ way: 'place', fitting: 'relay' });
    expect(screen.queryByRole('region', { name: 'More fittings' })).toBeNull();
    expect(screen.getByRole('button', { name: 'More fittings, Isolating relay in the hand' })).toBeTruthy();
  });

  it('puts the drawer away too once something is taken or begun in it, so that the sheet is in sight', async () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    const isDrawerOpen = () => screen.getByRole('button', { name: /ools/ }).getAttribute('aria-expanded');
    for (const begun of ['Draw its outline', 'Cargo from the side', 'Alternator']) {
      fireEvent.click(screen.getByRole('button', { name: 'Tools' }));
      const more = await open();
      expect(isDrawerOpen()).toBe('true');
      fireEvent.click(more.getByRole('button', { name: begun }));
      expect(screen.queryByRole('region', { name: 'More fittings' })).toBeNull();
      expect(isDrawerOpen(), begun).toBe('false');
    }
    expect(desk.getState().outlineOf).not.toBeNull();
  });

  it('goes away by Escape and by a press elsewhere, changes nothing, and gives the focus back', async () => {
    const { desk } = renderPanel(<Shelf />, examplePlan());
    const tile = screen.getByRole('button', { name: 'More fittings' });
    tile.focus();
    const more = await open();
    expect(document.activeElement?.closest('.more')).not.toBeNull();
    fireEvent.keyDown(more.getByRole('button', { name: 'Alternator' }), { key: 'Escape' });
    expect(document.activeElement).toBe(tile);
    await open();
    fireEvent.pointerDown(document.body);
    expect(screen.queryByRole('region', { name: 'More fittings' })).toBeNull();
    expect(desk.getState().hand).toEqual({ way: 'move' });
  });
});

describe('what changed between two plans', () => {
  it('is what is new or other, else what is gone', () => {
    const plan = examplePlan();
    expect(changedName(plan, moveFuse(0.4)(plan))).toBe('Main fuse');
    expect(changedName(plan, plan)).toBeNull();
    expect(changedName(plan, { ...plan, runs: plan.runs.slice(1) })).toBe('Battery to main fuse');
  });
});

describe('the message at the foot', () => {
  it('offers to take a deletion back', () => {
    const { desk } = renderPanel(<MessageBar />, examplePlan());
    act(() => {
      const message = { id: 'removed', params: { name: 'Rear amplifier' }, undo: true } as const;
      commit(desk, 'remove', (plan) => removeFitting(plan, 'rear'), { message });
    });
    expect(screen.getByRole('status').textContent).toContain('Rear amplifier deleted.');
    fireEvent.click(screen.getByRole('button', { name: 'Undo' }));
    expect(desk.getState().plan.fittings.some(({ id }) => id === 'rear')).toBe(true);
    expect(desk.getState().message).toBeNull();
  });

  it.each([
    ['a fitting', { kind: 'fitting', id: 'mainFuse' }, 'Hauptsicherung gelöscht.', 'Main fuse deleted.'],
    ['one without a name', { kind: 'fitting', id: 'rear' }, 'Endstufe gelöscht.', 'Amplifier deleted.'],
    ['a run', { kind: 'run', id: 'batToFuse' }, 'Batterie – Hauptsicherung gelöscht.', 'Battery to main fuse deleted.'],
  ] as const)('calls %s that was deleted what it was called where it was shown', async (_, one, german, english) => {
    await speakIn('de');
    const { desk } = renderPanel(<MessageBar />, changeFitting(examplePlan(), 'rear', { name: '' }));
    act(() => {
      desk.setState({ selection: one });
      runAct(desk, removeSelected);
    });
    const said = () => screen.getByRole('status').textContent;
    expect(said()).toContain(german);
    await act(() => speakIn('en'));
    act(() => desk.setState(({ message }) => ({ message: message && { ...message } })));
    expect(said()).toContain(english);
  });

  it('says so where two unlike cables became one', async () => {
    await speakIn('de');
    const { desk } = renderPanel(<MessageBar />, examplePlan());
    act(() => {
      commit(desk, 'size', (plan) => {
        const run = plan.runs.find(({ id }) => id === 'batToFuse');
        return run === undefined ? plan : changeRun(plan, run.id, { conductor: { ...run.conductor, size: 'mm2:25' } });
      });
      desk.setState({ selection: { kind: 'fitting', id: 'mainFuse' } });
      runAct(desk, removeSelected);
    });
    expect(screen.getByRole('status').textContent).toContain('Hauptsicherung gelöscht. Die zwei Leitungen');
  });

  it('goes by itself, but a refusal stays until it is put away', async () => {
    vi.useFakeTimers();
    const { desk } = renderPanel(<MessageBar />, examplePlan());
    act(() => desk.setState({ message: { id: 'fileSaved', params: { name: 'Van' }, undo: false } }));
    act(() => vi.advanceTimersByTime(60_000));
    expect(desk.getState().message).toBeNull();
    act(() => desk.setState({ message: { id: 'fileRefused', params: { code: 'truncated', where: '' }, undo: false } }));
    act(() => vi.advanceTimersByTime(60_000));
    vi.useRealTimers();
    expect(await screen.findByText(/^Not opened: the file stops in the middle\./)).toBeTruthy();
  });

  it('an offer to take something back waits until it is taken or put away', () => {
    vi.useFakeTimers();
    const { desk } = renderPanel(<MessageBar />, examplePlan());
    act(() => desk.setState({ message: { id: 'removed', params: { name: 'Van' }, undo: true } }));
    act(() => vi.advanceTimersByTime(60_000));
    expect(desk.getState().message).not.toBeNull();
    act(() =>
      desk.setState({
        message: { id: 'planDeleted', params: { name: 'Van' }, undo: false, takeBack: () => undefined },
      }),
    );
    act(() => vi.advanceTimersByTime(60_000));
    expect(desk.getState().message).not.toBeNull();
    vi.useRealTimers();
  });

  it('does not go while the pointer or the focus is on it', () => {
    vi.useFakeTimers();
    const { desk } = renderPanel(<MessageBar />, examplePlan());
    const say = () => act(() => desk.setState({ message: { id: 'fileSaved', params: { name: 'Van' }, undo: false } }));
    const wait = (ms: number) => act(() => vi.advanceTimersByTime(ms));
    say();
    wait(5_000);
    expect(desk.getState().message).not.toBeNull();
    wait(2_000);
    expect(desk.getState().message).toBeNull();

    say();
    fireEvent.pointerEnter(screen.getByText(/Van/));
    wait(60_000);
    expect(desk.getState().message).not.toBeNull();
    fireEvent.pointerLeave(screen.getByText(/Van/));
    wait(7_000);
    expect(desk.getState().message).toBeNull();

    say();
    act(() => screen.getByRole('button', { name: 'Dismiss' }).focus());
    wait(60_000);
    expect(desk.getState().message).not.toBeNull();
    act(() => screen.getByRole('button', { name: 'Dismiss' }).blur());
    wait(7_000);
    expect(desk.getState().message).toBeNull();
    vi.useRealTimers();
  });
});
