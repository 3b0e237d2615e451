import { act, fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import { type Desk, shownPlan } from '../../src/desk/desk.ts';
import { nameProposedBy, proposeFeed } from '../../src/desk/proposing.ts';
import List from '../../src/panels/list/List.tsx';
import { newPlan } from '../../src/plan/create.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { defaultName } from '../../src/words/index.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', async () => {
  const { exampleAnswer } = await import('./fixture.ts');
  return { answerOf: exampleAnswer };
});

const OUTLINE = { ...DEFAULT_OUTLINES.panelVan, lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 } as const;
const empty = () => newPlan({ id: 'p', name: 'P', sheetId: 's', outline: OUTLINE, mirrored: false });

const form = (name: string) => within(screen.getByRole('form', { name }));

function set(within_: ReturnType<typeof form>, label: string, value: string): void {
  const field = within_.getByLabelText(label);
  fireEvent.change(field, { target: { value } });
  fireEvent.blur(field);
}

function add(kind: string, x: string, y: string): void {
  const add_ = form('Add a fitting');
  set(add_, 'Kind', kind);
  set(add_, 'From the nose', x);
  set(add_, 'From the right side', y);
  fireEvent.click(add_.getByRole('button', { name: 'Add it' }));
}

function connect(from: string, to: string, bends = ''): void {
  const connect_ = form('Connect two terminals');
  const value = (label: string, text: string) =>
    within(connect_.getByLabelText(label)).getByRole<HTMLOptionElement>('option', { name: text }).value;
  set(connect_, 'From terminal', value('From terminal', from));
  set(connect_, 'To terminal', value('To terminal', to));
  if (bends !== '') set(connect_, 'Bends, from first to last', bends);
  fireEvent.click(connect_.getByRole('button', { name: 'Connect' }));
}

const plan = (desk: Desk) => desk.getState().plan;
const said = () => document.querySelector('.list-said')?.textContent;

describe('the plan as a list', () => {
  it('builds a feed by form fields alone: fittings, a run with bends, a fuse at a length along it', () => {
    const { desk } = renderPanel(<List onClose={() => undefined} onEdit={() => undefined} />, empty());
    add('battery', '55 cm', '1.4 m');
    expect(said()).toBe('Battery added.');
    add('amplifier', '3.7 m', '1.2 m');
    connect('Battery, positive', 'Amplifier, supply', '1 m; 1.4 m\n3 m; 1,4 m');
    expect(said()).toBe('Battery to amplifier connected.');
    expect(plan(desk).runs[0]).toMatchObject({
      kind: 'power',
      bends: [
        { xM: 1, yM: 1.4 },
        { xM: 3, yM: 1.4 },
      ],
    });

    const split = form('Put a fitting into a run');
    set(split, 'Run', plan(desk).runs[0]?.id ?? '');
    set(split, 'Length along the run', '25 cm');
    fireEvent.click(split.getByRole('button', { name: 'Put it in' }));
    expect(said()).toBe('Main fuse put into Battery to amplifier.');
    expect(plan(desk).fittings.map(({ name, at }) => [name, at.xM, at.yM])).toEqual([
      ['Battery', 0.55, 1.4],
      ['Amplifier', 3.7, 1.2],
      ['Main fuse', 0.8, 1.4],
    ]);
    expect(plan(desk).runs.length).toBe(2);
    expect(screen.getByText('Battery to main fuse', { selector: '.list-name' })).toBeTruthy();
    expect(screen.getByText('Main fuse to amplifier', { selector: '.list-name' })).toBeTruthy();
  });

  it('refuses what cannot be joined, and says what to do', () => {
    const { desk } = renderPanel(<List onClose={() => undefined} onEdit={() => undefined} />, examplePlan());
    const before = plan(desk);
    connect('Battery, positive', 'Main fuse, in');
    expect(screen.getByRole('alert').textContent).toContain('These two terminals are joined already.');
    connect('Battery, positive', 'Rear amplifier, supply', '1 m; nonsense');
    expect(screen.getByRole('alert').textContent).toContain('Bend 1: write two lengths');
    expect(plan(desk)).toBe(before);
  });

  it('a form with an unreadable length is not sent: the field is focused, and what was typed stays', () => {
    const { desk } = renderPanel(<List onClose={() => undefined} onEdit={() => undefined} />, empty());
    add('battery', 'here', '1 m');
    expect(plan(desk).fittings).toEqual([]);
    expect(document.activeElement).toBe(form('Add a fitting').getByLabelText('From the nose'));
    expect(form('Add a fitting').getByLabelText<HTMLInputElement>('From the nose').value).toBe('here');
  });

  it('a length beyond the end of the run is refused with its length', () => {
    const { desk } = renderPanel(<List onClose={() => undefined} onEdit={() => undefined} />, examplePlan());
    const split = form('Put a fitting into a run');
    set(split, 'Run', 'batToFuse');
    set(split, 'Length along the run', '2 m');
    fireEvent.click(split.getByRole('button', { name: 'Put it in' }));
    expect(screen.getByRole('alert').textContent).toBe('The run is 76.2 cm long. Enter less than that.');
    expect(plan(desk).fittings.length).toBe(8);
  });

  it('deletes, and says so', () => {
    const { desk } = renderPanel(<List onClose={() => undefined} onEdit={() => undefined} />, examplePlan());
    fireEvent.click(screen.getByRole('button', { name: 'Delete Main fuse' }));
    expect(plan(desk).fittings.some(({ id }) => id === 'mainFuse')).toBe(false);
    expect(said()).toBe('Main fuse deleted.');
    expect(screen.getByText('Battery to pass-through', { selector: '.list-name' })).toBeTruthy();
  });

  it('marks what is proposed; accepted it is part of the plan, refused it is gone', async () => {
    const { desk } = renderPanel(<List onClose={() => undefined} onEdit={() => undefined} />, empty());
    add('battery', '55 cm', '1.4 m');
    add('amplifier', '3.6 m', '1 m');
    expect(document.querySelectorAll('.list-proposed')).toHaveLength(0);
    nameProposedBy(desk, defaultName);
    await act(() => proposeFeed(desk));
    const { proposal } = desk.getState();
    expect(proposal.length).toBeGreaterThan(2);
    expect(document.querySelectorAll('.list-proposed')).toHaveLength(proposal.length);
    const proposed = (kind: 'fitting' | 'run') => proposal.filter((part) => part.kind === kind).length;
    const headings = () => screen.getAllByRole('heading', { level: 3 }).map(({ textContent }) => textContent);
    expect(headings().slice(0, 2)).toEqual([
      `2 fittings, ${proposed('fitting')} proposed`,
      `0 runs, ${proposed('run')} proposed`,
    ]);

    const ground = proposal.find((part) => part.kind === 'fitting' && part.fitting.kind === 'ground');
    fireEvent.click(screen.getAllByRole('button', { name: /^Refuse Ground/ })[0] as HTMLElement);
    expect(shownPlan(desk.getState()).fittings.some(({ id }) => id === ground?.id)).toBe(false);
    expect(said()).toMatch(/^Ground.* is put away\.$/);
    expect(plan(desk).fittings).toHaveLength(2);

    fireEvent.click(screen.getByRole('button', { name: 'Accept Main fuse' }));
    expect(plan(desk).fittings.map(({ kind }) => kind)).toEqual(['battery', 'amplifier', 'fuse']);
    expect(said()).toBe('Main fuse is part of the plan now.');
    const row = screen.getByText('Main fuse', { selector: '.list-name' });
    expect(row.querySelector('.list-proposed')).toBeNull();
  });
});
