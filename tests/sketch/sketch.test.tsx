import { act, cleanup, fireEvent, render, screen, within } from '@testing-library/react';
import { StrictMode } from 'react';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { answerOf, loadAssess } from '../../src/desk/answer.ts';
import { createDesk, type Desk } from '../../src/desk/desk.ts';
import { beginGesture, commitGesture, draftGesture } from '../../src/desk/edit.ts';
import { newPlan } from '../../src/plan/create.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import type { OutlineOf, Plan } from '../../src/plan/schema.ts';
import { pageLate } from '../../src/sketch/loadLate.ts';
import Sketch from '../../src/sketch/Sketch.tsx';
import { speakIn } from '../../src/words/language.ts';
import { BENCH, emptyPlan, feedPlan, SHEET } from '../drawing/support/plans.ts';
import { send, tap } from './support/finger.ts';

beforeAll(() => Promise.all([loadAssess(), pageLate.load()]));

let room = { widthPx: 1400, heightPx: 900 };

/** The stand-in page lays nothing out: every element gets the size of the room, panes included. */
beforeEach(() => {
  room = { widthPx: 1400, heightPx: 900 };
  vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockImplementation(() => room.widthPx);
  vi.spyOn(HTMLElement.prototype, 'clientHeight', 'get').mockImplementation(() => room.heightPx);
});
afterEach(async () => {
  vi.restoreAllMocks();
  await speakIn('en');
});

const OWN: OutlineOf<'own'> = {
  kind: 'own',
  lengthM: 4,
  widthM: 1.8,
  heightM: 1.5,
  edge: [
    { xM: 0, yM: 0 },
    { xM: 4, yM: 0 },
    { xM: 4, yM: 1.8 },
    { xM: 0, yM: 1.8 },
  ],
  bayM: 1,
  cabM: null,
};

function show(plan: Plan): Desk {
  const desk = createDesk(plan, { isExample: false, bigFingers: false });
  render(
    <StrictMode>
      <Sketch desk={desk} />
    </StrictMode>,
  );
  return desk;
}

const panes = () => [...document.querySelectorAll<HTMLElement>('[data-pane]')];
const pane = (id: string) => {
  const found = document.querySelector<HTMLElement>(`[data-pane="${id}"]`);
  if (found === null) throw new Error(`no pane ${id}`);
  return found;
};
const surface = (id: string) => {
  const found = pane(id).querySelector<HTMLElement>('.sketch-surface');
  if (found === null) throw new Error('no surface');
  return found;
};

describe('the sketch', () => {
  it('shows the bay beside the whole vehicle, four canvases each', () => {
    show(feedPlan());
    expect(panes().map((element) => element.dataset.pane)).toEqual(['bay', 'whole']);
    for (const element of panes()) expect(element.querySelectorAll('canvas')).toHaveLength(4);
  });

  it('is a picture with a description, and has the unprotected length as large text in each pane', () => {
    const plan = feedPlan();
    show(plan);
    const [source] = answerOf(plan).sources;
    expect(source?.unprotectedM).toBeCloseTo(0.3, 6);
    for (const element of panes()) {
      expect(within(element).getByRole('img').getAttribute('aria-label')).toContain('30 cm');
      expect(element.querySelector('.sketch-label[data-kind="hazard"]')?.textContent).toBe('30 cm');
    }
  });

  it('paints what has to be named over the scale, where there is room for both nowhere', () => {
    show(feedPlan());
    for (const element of panes()) {
      const [scale, labels] = ['.sketch-scale', '.sketch-labels'].map((of) => element.querySelector(of));
      if (!scale || !labels) throw new Error('no scale or no labels');
      expect(scale.compareDocumentPosition(labels)).toBe(Node.DOCUMENT_POSITION_FOLLOWING);
    }
  });

  it('shows one pane where there is room for one, and the other by its title', () => {
    room = { widthPx: 390, heightPx: 560 };
    show(feedPlan());
    expect(panes().map((element) => element.dataset.pane)).toEqual(['bay']);
    fireEvent.click(screen.getByRole('button', { name: /show whole vehicle instead/ }));
    expect(panes().map((element) => element.dataset.pane)).toEqual(['whole']);
  });

  it('shows one pane alone by its title, and both again', () => {
    show(feedPlan());
    fireEvent.click(screen.getByRole('button', { name: /Engine bay: show it alone/ }));
    expect(panes().map((element) => element.dataset.pane)).toEqual(['bay']);
    fireEvent.click(screen.getByRole('button', { name: /show both/ }));
    expect(panes()).toHaveLength(2);
  });

  it('shows a board without a bay as one', () => {
    show(emptyPlan(BENCH));
    expect(panes().map((element) => element.dataset.pane)).toEqual(['whole']);
    expect(screen.getByRole('heading', { name: 'Whole board' })).toBeTruthy();
  });

  it.each([
    ['en', 'Own outline', 'Engine bay'],
    ['en-GB', 'Own outline', 'Engine bay'],
    ['de', 'Eigener Umriss', 'Motorraum'],
  ] as const)('calls an outline of the user no vehicle: %s', async (language, own, bay) => {
    await speakIn(language);
    show(emptyPlan(OWN));
    const titles = panes().map((element) => element.querySelector('.sketch-title')?.textContent);
    expect(titles).toEqual([bay, own]);
    cleanup();
    // without a firewall there is nothing to look at beside it
    show(emptyPlan({ ...OWN, bayM: null, cabM: null }));
    expect(screen.getByRole('heading', { name: own })).toBeTruthy();
    expect(screen.getByRole('img').getAttribute('aria-label')).toMatch(new RegExp(`^${own}:`));
  });

  it('fits its cameras to the room, again when the room changes, and not once someone has moved them', () => {
    const desk = show(feedPlan());
    const fitted = desk.getState().cameras.whole;
    expect(fitted?.sheetId).toBe(SHEET);
    act(() => desk.setState(({ cameras }) => ({ cameras: { ...cameras, whole: null } })));
    expect(desk.getState().cameras.whole).toEqual(fitted);
    const moved = { sheetId: SHEET, centreXM: 9, centreYM: 9, pxPerM: 50 };
    act(() => desk.setState(({ cameras }) => ({ cameras: { ...cameras, whole: moved } })));
    expect(desk.getState().cameras.whole).toBe(moved);
  });

  it('fits anew when another plan is opened', () => {
    const desk = show(feedPlan());
    const other = newPlan({ id: 'other', name: '', sheetId: 'sheet2', outline: BENCH, mirrored: false });
    act(() => desk.setState({ plan: other, cameras: { whole: null, bay: null } }));
    expect(desk.getState().cameras.whole?.sheetId).toBe('sheet2');
  });

  it('opens the terminals of a fitting as buttons, draws, steps back and cancels without a keyboard', () => {
    const desk = show(feedPlan());
    act(() => desk.setState({ hand: { way: 'run' }, selection: null }));
    const camera = desk.getState().cameras.whole;
    const at = (xM: number, yM: number): [number, number] => [
      (xM - (camera?.centreXM ?? 0)) * (camera?.pxPerM ?? 0) + room.widthPx / 2,
      (yM - (camera?.centreYM ?? 0)) * (camera?.pxPerM ?? 0) + room.heightPx / 2,
    ];
    act(() => tap(surface('whole'), ...at(0.2, 1)));
    const tabs = screen.getByRole('group', { name: 'Terminals of battery' });
    expect(
      within(tabs)
        .getAllByRole('button')
        .map((button) => button.textContent),
    ).toEqual(['+ positivein use', '− negative']);
    fireEvent.click(within(tabs).getByRole('button', { name: /negative/ }));
    act(() => tap(surface('whole'), ...at(0.2, 1.6)));
    fireEvent.click(screen.getByRole('button', { name: 'Back' }));
    fireEvent.keyDown(window, { key: 'Escape' });
    expect(screen.queryByRole('button', { name: 'Back' })).toBeNull();
    expect(desk.getState().hand).toEqual({ way: 'run' });
    expect(desk.getState().plan.runs).toHaveLength(3);
  });

  it('leaves Escape to a field that is being typed in', () => {
    const desk = show(feedPlan());
    act(() => desk.setState({ hand: { way: 'run' } }));
    const field = document.createElement('input');
    document.body.append(field);
    let reached = false;
    field.addEventListener('keydown', () => {
      reached = true;
    });
    fireEvent.keyDown(field, { key: 'Escape' });
    expect(reached).toBe(true);
    field.remove();
  });

  it('drops what is held when the page loses the focus', () => {
    const desk = show(feedPlan());
    const camera = desk.getState().cameras.whole;
    const x = (0.2 - (camera?.centreXM ?? 0)) * (camera?.pxPerM ?? 0) + room.widthPx / 2;
    const y = (1 - (camera?.centreYM ?? 0)) * (camera?.pxPerM ?? 0) + room.heightPx / 2;
    act(() => {
      send(surface('whole'), 'pointerdown', x, y);
      send(surface('whole'), 'pointermove', x + 60, y + 60);
    });
    expect(desk.getState().gesture).toBe('moveFitting');
    act(() => {
      window.dispatchEvent(new Event('blur'));
    });
    expect(desk.getState().gesture).toBeNull();
    expect(desk.getState().draft).toBeNull();
  });

  it('shows a name of 200 letters without letting it cover the sheet', () => {
    show(changeFitting(feedPlan(), 'amp', { name: 'A'.repeat(200) }));
    const labels = [...pane('whole').querySelectorAll<HTMLElement>('.sketch-label')];
    const long = labels.find((label) => label.textContent?.startsWith('AAAA'));
    expect(Number.parseFloat(long?.style.maxWidth ?? '')).toBeLessThanOrEqual(180);
  });

  it('names what a gesture has left once it is over, and not what stood there before', async () => {
    const desk = show(feedPlan());
    const named = () =>
      [...pane('whole').querySelectorAll('.sketch-label-title')].map(({ textContent }) => textContent);
    expect(named()).not.toContain('Other name');
    // a tap is over before the page has been drawn anew, and that is done ahead of what the draft asked for
    act(() => {
      beginGesture(desk, 'moveFitting');
      draftGesture(desk, (plan) => changeFitting(plan, 'amp', { name: 'Other name' }));
      commitGesture(desk);
    });
    await act(async () => undefined);
    expect(named()).toContain('Other name');
  });

  it('takes a bend away by the button beside it', () => {
    const desk = show(feedPlan());
    act(() => desk.setState({ selection: { kind: 'bend', id: 'run3', index: 0 } }));
    const [button] = screen.getAllByRole('button', { name: 'Remove bend' });
    if (button === undefined) throw new Error('no button');
    fireEvent.click(button);
    expect(desk.getState().plan.runs.find(({ id }) => id === 'run3')?.bends).toEqual([]);
    expect(screen.queryByRole('button', { name: 'Remove bend' })).toBeNull();
  });
});
