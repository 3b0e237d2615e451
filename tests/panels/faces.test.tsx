import { readFileSync } from 'node:fs';
import { act, cleanup, fireEvent, screen, waitFor } from '@testing-library/react';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { answerOf, loadAssess } from '../../src/desk/answer.ts';
import { choice, choose } from '../../src/look/choices.ts';
import ClassFace from '../../src/panels/faces/ClassFace.tsx';
import CustomerFace from '../../src/panels/faces/CustomerFace.tsx';
import FaceBar from '../../src/panels/faces/FaceBar.tsx';
import { topicsOf, toSettle } from '../../src/panels/faces/topics.ts';
import ViewDialog from '../../src/panels/faces/ViewDialog.tsx';
import { openPlan } from '../../src/plan/open.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { renderPanel } from './render.tsx';

const SLOW_MS = 20_000;

beforeAll(loadAssess);
afterEach(() => {
  for (const [name, value] of [
    ['face', 'work'],
    ['figures', 'shown'],
    ['theme', 'paper'],
    ['side', 'right'],
  ] as const)
    choose(name, value);
});

function example(): Plan {
  const opened = openPlan(readFileSync('public/demo.plan.json', 'utf8'));
  if (!opened.ok) throw new Error('the example does not open');
  return opened.plan;
}

/** The example with the fuse and the cable before it moved to the battery. */
function settled(): Plan {
  const plan = example();
  const fuse = plan.fittings.find(({ kind }) => kind === 'fuse');
  const battery = plan.fittings.find(({ kind }) => kind === 'battery');
  if (fuse === undefined || battery === undefined) throw new Error('the example has lost its fuse');
  return {
    ...plan,
    fittings: plan.fittings.map((fitting) =>
      fitting.id === fuse.id ? { ...fitting, at: { ...battery.at, yM: battery.at.yM - 0.1 } } : fitting,
    ),
    runs: plan.runs.map((run) => (run.to.fittingId === fuse.id ? { ...run, bends: [] } : run)),
  };
}

const verdict = () => screen.getByRole('heading', { level: 2 }).textContent ?? '';
const text = () => document.body.textContent ?? '';

describe('the customer face', () => {
  it('is never calmer than the truth: with a stop the plan is not finished, and what is open is told', () => {
    const plan = example();
    // 0.92 m of bare cable to the first fuse, over the 0.45 m of the vehicle rule set
    expect(answerOf(plan).headline).toEqual({ kind: 'stop', count: 1 });
    renderPanel(<CustomerFace />, plan);
    expect(verdict()).toBe('Not finished: 1 point to settle before building');
    expect(screen.getByText('1 point about fuses and what they protect')).toBeTruthy();
    expect(text()).toMatch(/Not told yet: 7 lengths not taped/);
    expect(text()).not.toMatch(/\bsafe/i);
  });

  it('with nothing to stop for still says that lengths are to be measured', () => {
    renderPanel(<CustomerFace />, settled());
    expect(verdict()).toBe('Not finished: 7 lengths to measure in the vehicle');
  });

  it('says what the system is and what protects the car, in words', () => {
    renderPanel(<CustomerFace />, example());
    expect(screen.getByRole('button', { name: 'Bass amplifier 1000 W' })).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Voice amplifier 300 W' })).toBeTruthy();
    expect(text()).toContain('1300 W in all');
    expect(screen.getByRole('heading', { level: 4, name: /^Main fuse/ }).textContent).toMatch(/\d+ A$/);
    expect(text()).toMatch(/In the engine bay, after 9\d(\.\d)? cm of cable from Battery\./);
    expect(text()).toContain('If the cable from Main fuse to Distribution block ever touches bare metal');
    expect(text()).toContain('If the cable from Distribution block to Bass amplifier ever touches bare metal');
  });

  it('promises nothing of a fuse that clears nothing, and names the cable that none protects', () => {
    const plan = example();
    const fittings = plan.fittings.map((fitting) =>
      fitting.kind === 'fuse' ? { ...fitting, link: { ...fitting.link, ratingA: 500 } } : fitting,
    );
    renderPanel(<CustomerFace />, { ...plan, fittings });
    expect(screen.getByRole('heading', { level: 4, name: /^Main fuse/ }).textContent).toBe('Main fuse500 A');
    expect(text()).toContain('Which cable it protects is still to be settled.');
    expect(text()).not.toContain('If the cable from Main fuse');
    expect(verdict()).toMatch(/^Not finished: [2-9] points/);
  });

  it('names the cable behind a fuse, and what the standard does not show of it', () => {
    const plan = example();
    // 300 W each: the limits let a link of 40 A open within a second, and the thin cable is damaged before that
    const fittings = plan.fittings.map((fitting) =>
      fitting.kind === 'amplifier' ? { ...fitting, ratedW: { value: 300, origin: 'told' } as const } : fitting,
    );
    const verdicts = answerOf({ ...plan, fittings }).shorts.map(({ verdict }) => verdict);
    expect(verdicts).toContain('cannotBeTold');
    renderPanel(<CustomerFace />, { ...plan, fittings });
    expect(text()).toContain(
      'It guards the cable from Distribution block to Bass amplifier. The limits of the fuse standard do not show that it always opens before that cable is damaged.',
    );
    expect(text()).not.toContain('If the cable from Distribution block to Bass amplifier');
    expect(text()).not.toContain('Which cable it protects is still to be settled.');
  });

  it('says that a fuse ahead may open first', () => {
    const plan = example();
    // far above the main fuse, the branches see too small a current to open as soon as it does
    const fittings = plan.fittings.map((fitting) => {
      if (fitting.kind === 'fuse') return { ...fitting, link: { ...fitting.link, ratingA: 100 } };
      if (fitting.kind !== 'block') return fitting;
      const outputs = fitting.outputs.map((output) => ({
        ...output,
        link: output.link === null ? null : { ...output.link, ratingA: 300 },
      }));
      return { ...fitting, outputs };
    });
    renderPanel(<CustomerFace />, { ...plan, fittings });
    expect(text()).toContain(
      'It guards the cable from Distribution block to Bass amplifier together with Main fuse: one of the two cuts the current off before the cable is damaged. The limits of the fuse standard do not show that this one opens first.',
    );
  });

  it('lists the fuse next to the battery first', () => {
    renderPanel(<CustomerFace />, settled());
    const fuses = screen.getAllByRole('heading', { level: 4 }).map(({ textContent }) => textContent);
    expect(fuses.length).toBeGreaterThan(1);
    expect(fuses[0]).toMatch(/^Main fuse/);
  });

  it(
    'keeps the fields folded until something is to be changed',
    async () => {
      renderPanel(<CustomerFace />, example());
      expect(document.querySelector('input, select')).toBeNull();
      fireEvent.click(screen.getByRole('button', { name: 'Bass amplifier 1000 W' }));
      fireEvent.click(screen.getByRole('button', { name: 'Change Bass amplifier' }));
      // the fields are loaded when they are first asked for
      await waitFor(() => expect(screen.getByLabelText(/^Rated output/)).toBeTruthy(), { timeout: SLOW_MS });
      fireEvent.click(screen.getByRole('button', { name: 'Done' }));
      expect(document.querySelector('input, select')).toBeNull();
    },
    SLOW_MS,
  );

  it('counts every point once, whatever it is about', () => {
    for (const plan of [example(), settled(), { ...example(), runs: [] }]) {
      const { findings } = answerOf(plan);
      const counted = topicsOf(findings).reduce((sum, { count }) => sum + count, 0);
      expect(counted).toBe(toSettle(findings).length);
    }
  });
});

describe('the class face', () => {
  it('hides verdict and values, not names, and shows them again', () => {
    choose('face', 'class');
    renderPanel(
      <>
        <FaceBar isViewOpen={false} onView={() => undefined} />
        <ClassFace />
      </>,
      example(),
    );
    expect(verdict()).toBe('1 to stop for');
    fireEvent.click(screen.getByRole('button', { name: 'Hide figures' }));
    expect(verdict()).toBe('Figures are hidden');
    expect(screen.getByText('Longest unprotected')).toBeTruthy();
    expect(text()).not.toMatch(/stop for|\d+(\.\d+)? (A|V|m|cm|mm²|%)/);
    fireEvent.click(screen.getByRole('button', { name: 'Show figures' }));
    expect(verdict()).toBe('1 to stop for');
  });

  it('with figures hidden deletes what is selected, as a lesson asks, and shows nothing else of it', () => {
    choose('face', 'class');
    choose('figures', 'hidden');
    const { desk } = renderPanel(<ClassFace />, example());
    expect(screen.queryByRole('button', { name: 'Delete' })).toBeNull();
    const fuse = desk.getState().plan.fittings.find(({ kind }) => kind === 'fuse');
    if (fuse === undefined) throw new Error('the example has a fuse');
    act(() => desk.setState({ selection: { kind: 'fitting', id: fuse.id } }));
    expect(screen.getByRole('region', { name: 'Selected' }).textContent).toBe(`${fuse.name}Delete`);
    fireEvent.click(screen.getByRole('button', { name: 'Delete' }));
    expect(desk.getState().plan.fittings.some(({ id }) => id === fuse.id)).toBe(false);
    expect(screen.queryByRole('region', { name: 'Selected' })).toBeNull();
  });

  it('is left with one press', () => {
    choose('face', 'class');
    renderPanel(<FaceBar isViewOpen={false} onView={() => undefined} />, example());
    fireEvent.click(screen.getByRole('button', { name: 'Back to work' }));
    expect(choice('face')).toBe('work');
  });
});

it('every face says what is missing of a plan that is begun', () => {
  const plan = example();
  const begun = plan.fittings.filter(({ kind }) => kind === 'battery' || kind === 'fuse');
  for (const [fittings, said] of [
    [[], 'Nothing drawn yet'],
    [begun, 'Nothing joined yet'],
  ] as const) {
    for (const Face of [ClassFace, CustomerFace]) {
      renderPanel(<Face />, { ...plan, fittings: [...fittings], runs: [] });
      expect(verdict()).toBe(said);
      cleanup();
    }
  }
});

it('the view dialog chooses face, light and hand at once, and turns nothing half done to a customer', () => {
  const { desk } = renderPanel(<ViewDialog onClose={() => undefined} />, example());
  act(() => desk.setState({ findingId: 'any', hand: { way: 'run' } }));
  fireEvent.click(screen.getByLabelText('Dark'));
  fireEvent.click(screen.getByLabelText('Left'));
  fireEvent.click(screen.getByLabelText('Customer'));
  expect([choice('theme'), choice('side'), choice('face')]).toEqual(['dark', 'left', 'customer']);
  expect(desk.getState()).toMatchObject({ findingId: null, selection: null, hand: { way: 'move' } });
});
