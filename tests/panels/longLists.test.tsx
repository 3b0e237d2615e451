/** Long lists begin with their first thirty, and hide nothing that is dangerous or picked out. */
import { act, fireEvent, screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { FittingItems } from '../../src/panels/list/FittingItems.tsx';
import { RunTable } from '../../src/panels/summary/RunTable.tsx';
import { newPlan } from '../../src/plan/create.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { runAnswer } from '../support/answers.ts';
import { renderPanel } from './render.tsx';

const outline = DEFAULT_OUTLINES.bench;
const planOf = (grounds: number): Plan => ({
  ...newPlan({ id: 'p', name: 'P', sheetId: 's', outline, mirrored: false }),
  fittings: Array.from({ length: grounds }, (_, index) =>
    newFitting('ground', { id: `g${index}`, name: `G${index}`, sheetId: 's', at: { xM: 1, yM: 0.5 } }),
  ),
});

const listed = (): (string | null)[] =>
  [...document.querySelectorAll('[data-fitting]')].map((item) => item.getAttribute('data-fitting'));
const ids = (count: number): string[] => Array.from({ length: count }, (_, index) => `g${index}`);
const showList = (plan: Plan) =>
  renderPanel(<FittingItems plan={plan} onSaid={() => undefined} onEdit={() => undefined} />, plan);

describe('a list of more than thirty', () => {
  it('shows the first, all when asked for, and the first again, with the focus where it was', () => {
    showList(planOf(40));
    expect(listed()).toEqual(ids(30));
    const more = screen.getByRole('button', { name: 'Show all 40', expanded: false });
    more.focus();
    fireEvent.click(more);
    expect(listed()).toEqual(ids(40));
    const fewer = screen.getByRole('button', { name: 'Show the first 30', expanded: true });
    expect(document.activeElement).toBe(fewer);
    fireEvent.click(fewer);
    expect(listed()).toEqual(ids(30));
  });

  it('shows what is picked out wherever it stands', () => {
    const { desk } = showList(planOf(40));
    act(() => desk.setState({ selection: { kind: 'fitting', id: 'g35' } }));
    expect(listed()).toEqual([...ids(30), 'g35']);
  });

  it('has nothing to ask for where there are thirty', () => {
    showList(planOf(30));
    expect(listed()).toEqual(ids(30));
    expect(screen.queryByRole('button', { name: /^Show/ })).toBeNull();
  });
});

it('a table of many runs shows one that nothing protects wherever it stands', () => {
  const runs = Array.from({ length: 50 }, (_, index) =>
    runAnswer(`r${index}`, index === 44 ? { unprotectedM: 0.4 } : {}),
  );
  renderPanel(<RunTable runs={runs} plan={planOf(0)} />, planOf(0));
  const rows = [...document.querySelectorAll('[data-run]')].map((row) => row.getAttribute('data-run'));
  expect(rows).toHaveLength(31);
  expect(rows.at(-1)).toBe('r44');
});
