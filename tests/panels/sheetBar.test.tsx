import { fireEvent, screen } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { redo, undo, undoDepth } from '../../src/desk/edit.ts';
import { openSheet } from '../../src/desk/openSheet.ts';
import SheetBar from '../../src/panels/sheets/SheetBar.tsx';
import { newSheet } from '../../src/plan/create.ts';
import type { Plan, Sheet } from '../../src/plan/schema.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

/** The van from above with all that is on it, and its bay alone, empty. */
function twoSheets(): Plan {
  const plan = examplePlan();
  const [whole] = plan.sheets as [Sheet];
  const bay = newSheet({ id: 'bay', name: '', outline: whole.outline, mirrored: false, part: 'bay' });
  return { ...plan, sheets: [{ ...whole, name: 'Whole van' }, bay] };
}

const show = (plan: Plan = twoSheets(), isWork = true) => renderPanel(<SheetBar isWork={isWork} />, plan).desk;
const tabs = () => [...document.querySelectorAll('.sheets-tabs button')].map((tab) => tab.textContent);
const here = () => document.querySelector('[aria-current="page"]')?.textContent;
const press = (name: string) => fireEvent.click(screen.getByRole('button', { name }));

describe('the row of sheets', () => {
  it('shows each sheet, and opens one without a step of history', () => {
    const desk = show();
    const [first = '', second = ''] = tabs();
    expect([tabs().length, first, here()]).toEqual([2, 'Whole van', 'Whole van']);
    press(second);
    expect(here()).toBe(second);
    expect(openSheet(desk.getState()).id).toBe('bay');
    expect(undoDepth(desk)).toBe(0);
  });

  it('brings the tab of the open sheet wholly into view, and shows on which side more follow', () => {
    const seen: (string | null)[] = [];
    vi.spyOn(Element.prototype, 'scrollIntoView').mockImplementation(function (this: Element) {
      seen.push(this.textContent);
    });
    vi.spyOn(HTMLElement.prototype, 'scrollWidth', 'get').mockReturnValue(300);
    vi.spyOn(HTMLElement.prototype, 'clientWidth', 'get').mockReturnValue(200);
    show();
    const [first = '', second = ''] = tabs();
    const strip = document.querySelector<HTMLElement>('.sheets-tabs');
    expect([seen.at(-1), strip?.dataset.more]).toEqual([first, 'after']);
    press(second);
    expect(seen.at(-1)).toBe(second);
    for (const [scrollLeft, more] of [
      [40, 'both'],
      [100, 'before'],
    ] as const) {
      if (strip !== null) strip.scrollLeft = scrollLeft;
      fireEvent.scroll(strip ?? document.body);
      expect(strip?.dataset.more).toBe(more);
    }
    vi.restoreAllMocks();
  });

  it('only shows and opens where the screen is turned to somebody else', () => {
    show(twoSheets(), false);
    expect(screen.getAllByRole('button')).toHaveLength(2);
  });

  it('renames the open sheet in one step of history', () => {
    const desk = show();
    press('Change Whole van');
    const field = screen.getByLabelText('Name of the sheet');
    fireEvent.change(field, { target: { value: '  Blue van ' } });
    fireEvent.blur(field);
    expect(tabs()[0]).toBe('Blue van');
    expect(undoDepth(desk)).toBe(1);
    undo(desk);
    expect(desk.getState().plan.sheets[0]?.name).toBe('Whole van');
  });

  it('deletes a sheet with all that is on it, says so, and has it back with undo', () => {
    const desk = show();
    press('Change Whole van');
    press('Delete the sheet');
    const { plan, message } = desk.getState();
    expect([plan.sheets.map(({ id }) => id), plan.fittings, plan.runs]).toEqual([['bay'], [], []]);
    expect(message).toMatchObject({ id: 'removed', params: { name: 'Whole van' }, undo: true });
    undo(desk);
    expect(desk.getState().plan).toEqual(twoSheets());
    redo(desk);
    expect(desk.getState().plan.sheets).toHaveLength(1);
  });

  it('does not delete what holds something locked, and says what to do', () => {
    const plan = twoSheets();
    show({ ...plan, fittings: plan.fittings.map((one) => (one.id === 'bat' ? { ...one, locked: true } : one)) });
    press('Change Whole van');
    expect(screen.getByRole('button', { name: 'Delete the sheet' })).toHaveProperty('disabled', true);
    expect(screen.getByText(/locked\. Unlock it first/)).toBeTruthy();
  });

  it('adds a view of the same vehicle and opens it; a second of the same gets a number', () => {
    const desk = show();
    const bay = tabs()[1] ?? '';
    press('+ Sheet');
    const offered = [...document.querySelectorAll('.sheets-add button')].map((button) => button.textContent);
    expect(offered).toContain(bay);
    fireEvent.click(document.querySelector('.sheets-add button') as HTMLElement);
    expect(here()).toBe(`${bay} 2`);
    const { sheets } = desk.getState().plan;
    expect(sheets[2]).toMatchObject({ part: 'bay', view: 'above', outline: sheets[0]?.outline });
    expect(document.querySelector('.sheets-add')).toBeNull();
    expect(undoDepth(desk)).toBe(1);
  });

  it('leads to the drawing of the open sheet’s outline', () => {
    const desk = show();
    press('+ Sheet');
    press('Draw its outline');
    expect(desk.getState().outlineOf).toBe('sheet');
  });
});

describe('the only sheet', () => {
  it('cannot be deleted', () => {
    const plan = twoSheets();
    show({ ...plan, sheets: plan.sheets.slice(0, 1) });
    press('Change Whole van');
    expect(screen.getByRole('button', { name: 'Delete the sheet' })).toHaveProperty('disabled', true);
  });
});
