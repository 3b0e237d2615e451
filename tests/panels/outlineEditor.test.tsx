import { act, fireEvent, screen } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { NO_TEMPLATES } from '../../src/app/templates.ts';
import { undo, undoDepth } from '../../src/desk/edit.ts';
import { MessageBar } from '../../src/panels/message/MessageBar.tsx';
import OutlineEditor from '../../src/panels/outline/OutlineEditor.tsx';
import type { TemplateFiles } from '../../src/panels/outline/templates.ts';
import { newSheet } from '../../src/plan/create.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Sheet } from '../../src/plan/schema.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

function show(isKept = true) {
  const templates = {
    list: async () => [],
    keep: vi.fn<TemplateFiles['keep']>(async () => isKept),
    remove: async () => async () => undefined,
  };
  const { desk } = renderPanel(<OutlineEditor sheetId="sheet" templates={templates} />, examplePlan());
  desk.setState({ outlineOf: 'sheet' });
  const outline = () => desk.getState().plan.sheets[0]?.outline;
  return { desk, templates, outline };
}

const button = (name: string) => screen.getByRole<HTMLButtonElement>('button', { name });
const press = (name: string) => fireEvent.click(button(name));
const field = (label: string) => screen.getByLabelText<HTMLInputElement>(label);
function set(label: string, value: string): void {
  fireEvent.change(field(label), { target: { value } });
  fireEvent.blur(field(label));
}
const corner = () => document.querySelector('.outline-fields legend')?.textContent;

/** 100 px to the metre: the corner at the nose on the right side is at 25, 25, the one at the tail at 465, 25. */
const picture = () => {
  const svg = screen.getByRole('img', { name: /^The outline from above/ });
  svg.getBoundingClientRect = () => new DOMRect(0, 0, 490, 230);
  return svg;
};
const edge = () => document.querySelector('.outline-edge')?.getAttribute('d');
type Pointer = 'pointerDown' | 'pointerMove' | 'pointerUp' | 'pointerCancel';
const point = (type: Pointer, x: number, y: number, more: PointerEventInit = {}) =>
  fireEvent[type](picture(), {
    ...{ clientX: x, clientY: y, pointerId: 1, pointerType: 'touch', button: 0, width: 20, height: 20 },
    ...more,
  });
const PALM = { width: 120, height: 60 };

/** Holds the corner at the tail and pulls it in. */
function pull(more?: PointerEventInit): void {
  point('pointerDown', 465, 25, more);
  point('pointerMove', 425, 65, more);
}

describe('a hand on the outline', () => {
  const marked = () => !button('Undo in the outline').disabled;

  it('pulls a corner to where it lets go', () => {
    show();
    const asItWas = edge();
    pull();
    expect([edge(), marked()]).toEqual([asItWas?.replace('4.4 0', '4 0.4'), false]);
    point('pointerUp', 425, 65);
    expect([edge(), marked()]).toEqual([asItWas?.replace('4.4 0', '4 0.4'), true]);
  });

  const FINGER_2 = { pointerId: 2 };
  it.each<[string, () => void]>([
    ['a second finger', () => point('pointerDown', 225, 125, FINGER_2)],
    [
      'a second finger that moves and lifts',
      () => {
        point('pointerDown', 225, 125, FINGER_2);
        point('pointerMove', 245, 145, FINGER_2);
        point('pointerUp', 245, 145, FINGER_2);
      },
    ],
    ['the side of a hand beside it', () => point('pointerDown', 225, 125, { ...FINGER_2, ...PALM })],
    ['the side of a hand where it is', () => point('pointerMove', 425, 66, PALM)],
    ['the system', () => point('pointerCancel', 0, 0)],
    [
      'the loss of its capture',
      () => fireEvent(picture(), new PointerEvent('lostpointercapture', { pointerId: 1, bubbles: true })),
    ],
  ])('%s takes away what a finger has begun, for good', (_by, happens) => {
    show();
    const asItWas = edge();
    pull();
    happens();
    expect(edge()).toBe(asItWas);
    point('pointerMove', 405, 85);
    point('pointerUp', 405, 85);
    expect([edge(), marked()]).toEqual([asItWas, false]);
  });

  it('is not let go of by a pointer that only passes, nor follows it', () => {
    show();
    pull();
    const pulled = edge();
    point('pointerMove', 225, 125, FINGER_2);
    point('pointerUp', 225, 125, FINGER_2);
    point('pointerCancel', 225, 125, FINGER_2);
    expect([edge(), marked()]).toEqual([pulled, false]);
    point('pointerUp', 425, 65);
    expect(marked()).toBe(true);
  });

  it('takes hold with the first finger only, and with none of a palm or a second button', () => {
    show();
    const asItWas = edge();
    point('pointerDown', 225, 125);
    pull(FINGER_2);
    point('pointerUp', 425, 65, FINGER_2);
    point('pointerUp', 225, 125);
    pull(PALM);
    point('pointerUp', 425, 65);
    pull({ pointerType: 'mouse', button: 2 });
    point('pointerUp', 425, 65, { pointerType: 'mouse', button: 2 });
    expect([edge(), marked()]).toEqual([asItWas, false]);
  });

  it('counts for nothing while it rests beside a pen', () => {
    show();
    const pen = { pointerId: 9, pointerType: 'pen' };
    point('pointerDown', 225, 125);
    pull(pen);
    point('pointerDown', 245, 165, { ...FINGER_2, ...PALM });
    point('pointerDown', 245, 165, { pointerId: 3 });
    point('pointerUp', 225, 125);
    point('pointerUp', 425, 65, pen);
    expect(marked()).toBe(true);
  });
});

describe('the outline editor', () => {
  it('moves a corner by its two lengths; nothing of the plan changes until it is used, and then in one step', () => {
    const { desk, outline } = show();
    expect(corner()).toBe('Corner 1 of 4');
    set('Corner, from the nose', '40 cm');
    set('Corner, from the right side', '0.3 m');
    press('Next corner');
    press('Add a corner behind it');
    expect(corner()).toBe('Corner 3 of 5');
    set('Corner, from the nose', '4 m');
    expect([outline()?.kind, undoDepth(desk)]).toEqual(['vehicle', 0]);

    press('Use for this sheet');
    expect(outline()).toMatchObject({
      ...{ kind: 'own', lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 },
      edge: [
        { xM: 0.4, yM: 0.3 },
        { xM: 4.4, yM: 0 },
        { xM: 4, yM: 0.9 },
        { xM: 4.4, yM: 1.8 },
        { xM: 0, yM: 1.8 },
      ],
    });
    expect([undoDepth(desk), desk.getState().outlineOf]).toEqual([1, null]);
    undo(desk);
    expect(desk.getState().plan).toEqual(examplePlan());
  });

  it('changes the vehicle on every sheet that shows it, in one step, and says before and after that it does', async () => {
    const plan = examplePlan();
    const [whole] = plan.sheets as [Sheet];
    const bay = newSheet({ id: 'bay', name: '', outline: whole.outline, mirrored: whole.mirrored, part: 'bay' });
    const other = newSheet({ id: 'other', name: '', outline: DEFAULT_OUTLINES.pickup, mirrored: false });
    const { desk } = renderPanel(
      <>
        <MessageBar />
        <OutlineEditor sheetId="bay" templates={NO_TEMPLATES} />
      </>,
      { ...plan, sheets: [whole, bay, other] },
    );
    const followed = 'The outline was changed on every sheet of this vehicle.';
    expect(screen.queryByText(followed)).toBeNull();
    set('Width', '1.7 m');
    press('Use on all 2 sheets of this vehicle');
    const widths = () => desk.getState().plan.sheets.map(({ outline }) => outline.widthM);
    expect([widths(), undoDepth(desk)]).toEqual([[1.7, 1.7, DEFAULT_OUTLINES.pickup.widthM], 1]);
    expect((await screen.findByText(followed)).closest('[role="status"]')).not.toBeNull();
    act(() => undo(desk));
    expect(screen.queryByText(followed)).toBeNull();
    expect(widths()).toEqual([1.8, 1.8, DEFAULT_OUTLINES.pickup.widthM]);
  });

  it('removes corners down to three', () => {
    show();
    press('Remove this corner');
    expect(corner()).toBe('Corner 1 of 3');
    expect(button('Remove this corner').disabled).toBe(true);
  });

  it.each([
    ['twelve', 'this is not a length'],
    ['9 m', 'at most 4.4 m'],
    ['-1', 'a length is not below zero'],
  ])('says what is wrong with %s, keeps what was typed and the corner as it was', (typed, said) => {
    const { outline } = show();
    set('Corner, from the nose', typed);
    expect(screen.getByRole('alert').textContent).toContain(said);
    expect(field('Corner, from the nose').value).toBe(typed);
    expect(button('Undo in the outline').disabled).toBe(true);
    expect(outline()).toEqual(examplePlan().sheets[0]?.outline);
  });

  it('neither uses nor keeps an edge that crosses itself, and undo leads out of it', () => {
    show();
    set('Corner, from the nose', '4.4 m');
    set('Corner, from the right side', '1.8 m');
    expect(screen.getByRole('alert').textContent).toContain('The edge crosses or touches itself');
    expect([button('Use for this sheet').disabled, button('Keep as template').disabled]).toEqual([true, true]);
    press('Undo in the outline');
    press('Undo in the outline');
    expect(screen.queryByRole('alert')).toBeNull();
    expect(button('Use for this sheet').disabled).toBe(false);
    press('Redo in the outline');
    expect(field('Corner, from the nose').value).toBe('4.4 m');
  });

  it('leaves the plan as it was when it is cancelled, and makes no step where nothing changed', () => {
    const { desk } = show();
    set('Corner, from the nose', '40 cm');
    press('Cancel');
    expect(desk.getState()).toMatchObject({ outlineOf: null, plan: examplePlan() });
    expect(undoDepth(desk)).toBe(0);
  });

  it('keeps the outline as a template by the name told, without a step of history', async () => {
    const { desk, templates } = show();
    set('Width', '1.7 m');
    set('Name of the template', 'High roof');
    press('Keep as template');
    await screen.findByText('High roof is kept as a template.');
    expect(templates.keep).toHaveBeenCalledWith(
      'High roof',
      expect.objectContaining({ kind: 'own', widthM: 1.7 }),
      false,
    );
    expect(undoDepth(desk)).toBe(0);
  });

  it('says where a template could not be kept', async () => {
    show(false);
    press('Keep as template');
    await screen.findByText('This browser does not keep templates.');
  });
});
