import { act, fireEvent, screen } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { NO_TEMPLATES } from '../../src/app/templates.ts';
import { undo, undoDepth } from '../../src/desk/edit.ts';
import OutlineEditor from '../../src/panels/outline/OutlineEditor.tsx';
import type { TemplateFiles } from '../../src/panels/outline/templates.ts';
import SheetBar from '../../src/panels/sheets/SheetBar.tsx';
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

  it('changes the vehicle on every sheet that shows it, in one step, and says before and after that it does', () => {
    const plan = examplePlan();
    const [whole] = plan.sheets as [Sheet];
    const bay = newSheet({ id: 'bay', name: '', outline: whole.outline, mirrored: whole.mirrored, part: 'bay' });
    const other = newSheet({ id: 'other', name: '', outline: DEFAULT_OUTLINES.pickup, mirrored: false });
    const { desk } = renderPanel(
      <>
        <SheetBar isWork />
        <OutlineEditor sheetId="bay" templates={NO_TEMPLATES} />
      </>,
      { ...plan, sheets: [whole, bay, other] },
    );
    const status = () => document.querySelector('.sheets [role="status"]')?.textContent;
    expect(status()).toBe('');
    set('Width', '1.7 m');
    press('Use on all 2 sheets of this vehicle');
    const widths = () => desk.getState().plan.sheets.map(({ outline }) => outline.widthM);
    expect([widths(), undoDepth(desk)]).toEqual([[1.7, 1.7, DEFAULT_OUTLINES.pickup.widthM], 1]);
    expect(status()).toBe('The outline was changed on every sheet of this vehicle.');
    act(() => undo(desk));
    expect(status()).toBe('');
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
