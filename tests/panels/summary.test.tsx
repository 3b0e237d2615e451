import { act, fireEvent, screen, waitFor, within } from '@testing-library/react';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Assessment, Finding } from '../../src/assess/answer.ts';
import { beginGesture, draftGesture } from '../../src/desk/edit.ts';
import { Findings } from '../../src/panels/summary/Findings.tsx';
import { Headline } from '../../src/panels/summary/Headline.tsx';
import { governsOf, valueSaid } from '../../src/panels/summary/largeFigures.ts';
import { Summary } from '../../src/panels/summary/Summary.tsx';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { words } from '../../src/words/answer.ts';
import { exampleAnswer, examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', async () => {
  const { exampleAnswer } = await import('./fixture.ts');
  return { answerOf: exampleAnswer };
});

const plan = examplePlan();

function figure(id: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(`[data-figure="${id}"]`);
  if (found === null) throw new Error(`no figure ${id}`);
  return found;
}

describe('the headline', () => {
  beforeEach(() => renderPanel(<Headline />, plan));

  it('says the verdict, and under it what was not told and not checked', () => {
    expect(screen.getByRole('heading').textContent).toBe('1 to stop for');
    expect(screen.getByText(/7 lengths not taped/)).toBeTruthy();
    const unchecked = screen.getByText('Not checked yet:').parentElement?.textContent ?? '';
    for (const { rule } of exampleAnswer(examplePlan()).rulesNotChecked) {
      expect(unchecked).toContain(words.headline.unchecked[rule]);
    }
  });
});

it('announces the verdict only while the hand is still', () => {
  const { desk } = renderPanel(<Headline />, plan);
  expect(screen.getByRole('status').textContent).toBe('1 to stop for');
  act(() => {
    beginGesture(desk, 'move');
    draftGesture(desk, (before) => ({ ...before, fittings: [] }));
  });
  expect(screen.getByRole('heading').textContent).toBe('Nothing drawn yet');
  expect(screen.getByRole('status').textContent).toBe('1 to stop for');
});

it('an area is not said twice where sizes go by it', () => {
  const answer = exampleAnswer(plan);
  const id = 'batToFuse';
  const sized = (value: string): Assessment => ({
    ...answer,
    figures: { ...answer.figures, feed: { ...answer.figures.feed, value, places: [{ kind: 'run', id }] } },
    runs: answer.runs.map((run) => (run.runId === id ? { ...run, areaMm2: 50.2 } : run)),
  });
  const said = (value: string) => [valueSaid, governsOf].map((say) => say('feed', sized(value), plan));
  const [byNumber, byArea] = [said('sae:1/0'), said('mm2:50')];
  expect(byNumber).toEqual(['SAE 1/0', expect.stringContaining('50.2 mm²')]);
  expect(byArea).toEqual(['50 mm²', expect.not.stringContaining('mm²')]);
});

it('says which fuse is meant where there are several', () => {
  const answer = exampleAnswer(plan);
  const [main] = plan.fittings.filter(({ kind }) => kind === 'fuse');
  if (main === undefined) throw new Error('the example has a fuse');
  const other = { ...main, id: 'other', name: 'Rear fuse' };
  const figures = {
    ...answer.figures,
    mainFuse: { ...answer.figures.mainFuse, places: [{ kind: 'fitting' as const, id: 'other' }] },
  };
  const alone = governsOf('mainFuse', answer, plan);
  expect(alone).not.toContain(main.name);
  expect(governsOf('mainFuse', { ...answer, figures }, { ...plan, fittings: [...plan.fittings, other] })).toBe(
    `Rear fuse, ${alone}`,
  );
});

describe('the summary', () => {
  it('shows the four figures with their units and what governs them', () => {
    renderPanel(<Summary />, plan);
    expect(['feed', 'mainFuse', 'worstDrop', 'unprotected'].map((id) => figure(id).textContent)).toEqual([
      'SAE 1/0',
      '125 A',
      '0.41 V',
      '76 cm',
    ]);
    expect(figure('feed').parentElement?.textContent).toContain('set by voltage drop');
    expect(figure('worstDrop').parentElement?.textContent).toContain('3.4 %');
    expect(figure('unprotected').parentElement?.textContent).toContain('provisional');
  });

  it('asks why of a figure', () => {
    const { openWhy } = renderPanel(<Summary />, plan);
    fireEvent.click(figure('unprotected'));
    expect(openWhy).toHaveBeenCalledWith('why.body', 'Longest unprotected');
  });

  it('shows stops and fixes open, and folds notes to a count', () => {
    renderPanel(<Summary />, plan);
    const open = document.querySelectorAll('.findings > ul > [data-finding]');
    expect([...open].map((item) => item.getAttribute('data-severity'))).toEqual(['stop', 'fix']);
    const folded = screen.getByText('1 note').closest('details');
    expect(folded?.open).toBe(false);
    expect(folded?.querySelectorAll('[data-finding]').length).toBe(1);
  });

  it('shows the first of very many findings, with one further down that is looked at, and all when asked to', () => {
    const answer = exampleAnswer(plan);
    const [stop] = answer.findings;
    if (stop === undefined) throw new Error('no finding');
    const many = Array.from({ length: 47 }, (_, place): Finding => ({ ...stop, id: `stop.${place}` }));
    const items = () => document.querySelectorAll('.findings > ul > [data-finding]').length;
    const { desk } = renderPanel(<Findings findings={many} plan={plan} />, plan);
    expect(items()).toBe(30);
    act(() => desk.setState({ findingId: 'stop.46' }));
    expect(items()).toBe(31);
    expect(document.querySelectorAll('.finding-press[aria-pressed="true"]')).toHaveLength(1);
    act(() => desk.setState({ findingId: null }));
    expect(items()).toBe(30);
    fireEvent.click(screen.getByRole('button', { name: 'Show all 47' }));
    expect(items()).toBe(47);
    expect(screen.queryByRole('button', { name: /Show all/ })).toBeNull();
  });

  it('a finding marks its place on the desk, and lets go when pressed again', () => {
    const { desk } = renderPanel(<Summary />, plan);
    const press = screen.getByRole('button', { name: /The first fuse is 76 cm/ });
    fireEvent.click(press);
    expect(desk.getState().findingId).toBe('unprotected-length.bat');
    expect(desk.getState().selection).toEqual({ kind: 'run', id: 'batToFuse' });
    expect(press.getAttribute('aria-pressed')).toBe('true');
    fireEvent.click(press);
    expect(desk.getState().findingId).toBeNull();
  });

  it('what is selected on the sketch is marked among the findings', () => {
    const { desk } = renderPanel(<Summary />, plan);
    act(() => desk.setState({ selection: { kind: 'fitting', id: 'rear' } }));
    const here = document.querySelectorAll('.finding-here');
    expect([...here].map((item) => item.getAttribute('data-finding'))).toEqual(['drop-cables']);
  });

  it('has a row for each run, fuse and amplifier', async () => {
    renderPanel(<Summary />, plan);
    await screen.findByRole('table', { name: 'Runs' });
    expect(document.querySelectorAll('[data-run]').length).toBe(plan.runs.length);
    expect(document.querySelectorAll('[data-fuse]').length).toBe(3);
    const rear = document.querySelector<HTMLElement>('[data-amplifier="rear"]');
    expect(rear?.querySelector('[data-field="cables"]')?.textContent).toBe('0.41 V3.4 %');
    expect(within(screen.getByRole('table', { name: 'Runs' })).getByText('Battery to main fuse')).toBeTruthy();
  });

  it('lists what was checked by topic, folded, every check once', async () => {
    renderPanel(<Summary />, plan);
    const fold = (await screen.findByText('What was checked')).closest('details');
    expect(fold?.open).toBe(false);
    const topics = [...(fold?.querySelectorAll('dt') ?? [])].map(({ textContent }) => textContent);
    expect(topics).toEqual(['Fuses and what they protect', 'Cables']);
    const checks = [...(fold?.querySelectorAll('dd li') ?? [])].map(({ textContent }) => textContent);
    expect(checks).toEqual(['unprotected length', 'voltage drop of the cables']);
  });

  it('lists each assumption in use with its unit and its source', async () => {
    renderPanel(<Summary />, plan);
    await screen.findByText(/^Assumptions in use/);
    const body = document.querySelector('[data-assumption="settings.bodyOhm"]');
    expect(body?.textContent).toBe('body resistance1 mΩCommon practice (from memory)');
    const efficiency = document.querySelector('[data-assumption="rear.efficiency"]');
    expect(efficiency?.textContent).toContain('efficiency of Rear amplifier80.0 %');
  });

  it('follows the plan as the hand would leave it', async () => {
    const { desk } = renderPanel(<Summary />, plan);
    await screen.findByRole('table', { name: 'Runs' });
    act(() => {
      beginGesture(desk, 'rename');
      draftGesture(desk, (before) => ({ ...renamePlan(before, 'Other'), runs: before.runs.slice(0, 2) }));
    });
    // long tables wait for the finger to rest
    await waitFor(() => expect(document.querySelectorAll('[data-run]').length).toBe(2));
  });
});
