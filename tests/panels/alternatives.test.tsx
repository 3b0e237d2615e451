/** Alternatives over the real answer: what the table says is what each whole plan is assessed at. */
import { fireEvent, screen, within } from '@testing-library/react';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { answerOf, loadAssess } from '../../src/desk/answer.ts';
import { undo } from '../../src/desk/edit.ts';
import Alternatives from '../../src/panels/alternatives/Alternatives.tsx';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { emptyVan, sampleVan } from '../plan/support/samplePlan.ts';
import { renderPanel } from './render.tsx';

const twoRated = (): Plan =>
  (['front', 'rear'] as const).reduce(
    (plan, id) => changeFitting(plan, id, { ratedW: { value: id === 'rear' ? 500 : 300, origin: 'told' } }),
    sampleVan(),
  );

const cell = (row: string, column: string): string => {
  const heads = screen.getAllByRole('columnheader').map(({ textContent }) => textContent ?? '');
  const place = heads.findIndex((head) => head.startsWith(column));
  const cells = within(screen.getByRole('row', { name: new RegExp(`^${row}`) })).getAllByRole('cell');
  return cells[place - 1]?.textContent ?? '';
};

beforeAll(loadAssess);

describe('alternatives side by side', () => {
  it('give each whole plan its own figures, and the plan itself the figures it has', () => {
    const plan = twoRated();
    renderPanel(<Alternatives onClose={() => undefined} />, plan);
    const feed = answerOf(plan).figures.feed.value;
    expect(cell('Feed conductor', 'As it is')).toBe(String(feed).replace('sae:', 'SAE '));
    // clad aluminium conducts less: it never asks for a thinner cable
    const bySize = ['SAE 8', 'SAE 4', 'SAE 2', 'SAE 1/0', 'SAE 2/0', 'SAE 4/0'];
    const sizeOf = (column: string) => bySize.indexOf(cell('Feed conductor', column));
    expect(sizeOf('Copper-clad')).toBeGreaterThanOrEqual(sizeOf('As it is'));
    expect(sizeOf('Thicker feed')).toBe(sizeOf('As it is') + 1);
    // a cable that is yet to be bought is no unmarked cable, which would be a stop
    expect(cell('Newly found', 'Thicker feed')).not.toContain('Stop');
    const terminal = (column: string) => Number.parseFloat(cell('Name of rear, at its terminals', column));
    expect(terminal('Thicker feed')).toBeGreaterThan(terminal('As it is'));
    expect(terminal('Second battery')).toBeGreaterThan(terminal('As it is'));
    expect(terminal('Other amplifier')).toBeLessThan(terminal('Thicker feed'));
  });

  it('change nothing until one is accepted, in one step that can be taken back', () => {
    const onClose = vi.fn();
    const plan = twoRated();
    const { desk } = renderPanel(<Alternatives onClose={onClose} />, plan);
    expect(desk.getState().plan).toBe(plan);
    fireEvent.click(screen.getByRole('button', { name: 'Accept: Copper-clad aluminum' }));
    expect(onClose).toHaveBeenCalled();
    expect(desk.getState().plan.runs.every(({ conductor }) => conductor.material.value === 'cca10')).toBe(true);
    undo(desk);
    expect(desk.getState().plan).toBe(plan);
  });

  it('call the fuse beside a second battery a main fuse', () => {
    const { desk } = renderPanel(<Alternatives onClose={() => undefined} />, twoRated());
    fireEvent.click(screen.getByRole('button', { name: 'Accept: Second battery' }));
    const fuse = desk.getState().plan.fittings.findLast(({ kind }) => kind === 'fuse');
    expect(fuse?.name).toBe('Main fuse');
  });

  it('take another output, and say what is wrong with one that is none', () => {
    renderPanel(<Alternatives onClose={() => undefined} />, twoRated());
    const before = cell('Main fuse', 'Other amplifier');
    const field = screen.getByLabelText('Output of the other one, W');
    fireEvent.change(field, { target: { value: '1500' } });
    fireEvent.blur(field);
    expect(cell('Main fuse', 'Other amplifier')).not.toBe(before);
    fireEvent.change(field, { target: { value: 'much' } });
    fireEvent.blur(field);
    expect(field.getAttribute('aria-invalid')).toBe('true');
  });

  it('tell better and worse apart in a word, and mark the gravity of each verdict', () => {
    const plan = twoRated();
    renderPanel(<Alternatives onClose={() => undefined} />, plan);
    const drop = (column: string) => Number.parseFloat(cell('Worst drop', column));
    expect(drop('Thicker feed')).toBeLessThan(drop('As it is'));
    expect(cell('Worst drop', 'Thicker feed')).toMatch(/V ?better$/);
    expect(cell('Name of rear, at its terminals', 'Thicker feed')).toMatch(/V ?better$/);
    const field = screen.getByLabelText('Output of the other one, W');
    fireEvent.change(field, { target: { value: '1500' } });
    fireEvent.blur(field);
    const terminal = (column: string) => Number.parseFloat(cell('Name of rear, at its terminals', column));
    expect(terminal('Other amplifier')).toBeLessThan(terminal('As it is'));
    expect(cell('Name of rear, at its terminals', 'Other amplifier')).toMatch(/V ?worse$/);
    // neither a size nor a rating is good or bad by itself, and what is equal is neither
    expect(cell('Feed conductor', 'Thicker feed')).not.toMatch(/better|worse/);
    expect(cell('Worst drop', 'As it is')).not.toMatch(/better|worse/);

    const verdicts = within(screen.getByRole('row', { name: /^Verdict/ })).getAllByRole('cell');
    const graver = verdicts.filter((one) => /to stop for/.test(one.textContent ?? ''));
    expect(graver.length).toBeGreaterThan(0);
    for (const one of graver) {
      expect(one.querySelector('.severity-stop')).not.toBeNull();
      expect(one.className).not.toContain('better');
    }
    for (const one of verdicts) {
      if (/Provisional/.test(one.textContent ?? '')) expect(one.querySelector('.severity-note')).not.toBeNull();
    }
  });

  it('say why there is none', () => {
    renderPanel(<Alternatives onClose={() => undefined} />, emptyVan());
    expect(screen.getByText('No added cable is of copper.')).toBeTruthy();
    expect(screen.getByText('No amplifier is rated yet, or the sheet has no room.')).toBeTruthy();
    expect(screen.queryByRole('button', { name: /^Accept:/ })).toBeNull();
  });
});
