import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { act, fireEvent, screen } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import type { Desk } from '../../src/desk/desk.ts';
import Inspector from '../../src/panels/inspector/Inspector.tsx';
import { newFitting } from '../../src/plan/newFitting.ts';
import { openPlan } from '../../src/plan/open.ts';
import type { Fitting, FittingKind, FittingOf, Plan, Run } from '../../src/plan/schema.ts';
import { words } from '../../src/words/full.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', async () => {
  const { exampleAnswer } = await import('./fixture.ts');
  return { answerOf: exampleAnswer };
});

/** A continuation point needs a second sheet, and has each place under that sheet's name. */
const KINDS = (Object.keys(words.fittings.kinds) as FittingKind[]).filter((kind) => kind !== 'continuation');

/** The example with one more fitting of that kind, selected. */
function inspectNew<K extends FittingKind>(kind: K, patch: Partial<FittingOf<K>> = {}) {
  const fitting: Fitting = newFitting(kind, { id: 'new', name: 'New', sheetId: 'sheet', at: { xM: 1, yM: 1 } });
  return inspect(
    { ...examplePlan(), fittings: [...examplePlan().fittings, { ...fitting, ...patch } as Fitting] },
    'fitting',
    'new',
  );
}

function inspect(plan: Plan, kind: 'fitting' | 'run', id: string): Desk {
  const { desk } = renderPanel(<Inspector />, plan);
  act(() => desk.setState({ selection: { kind, id } }));
  return desk;
}

function type(label: string | RegExp, text: string): void {
  const field = screen.getByLabelText(label);
  fireEvent.change(field, { target: { value: text } });
  fireEvent.blur(field);
}

const choose = (label: string | RegExp, value: string) =>
  fireEvent.change(screen.getByLabelText(label), { target: { value } });
const fitting = (desk: Desk) => desk.getState().plan.fittings.find(({ id }) => id === 'new');
const run = (desk: Desk, id: string): Run | undefined => desk.getState().plan.runs.find((one) => one.id === id);

describe('every kind of fitting', () => {
  it.each(KINDS)('%s: every field has a label of its own', (kind) => {
    inspectNew(kind);
    const fields = [...document.querySelectorAll<HTMLElement>('.inspector input, .inspector select')];
    const labels = fields.map((field) => document.querySelector(`label[for="${field.id}"]`)?.textContent ?? '');
    expect(labels.every((label) => label !== '')).toBe(true);
    expect(new Set(labels).size).toBe(labels.length);
  });

  it('a continuation point: both places under the names of their sheets, and a way to the other one', () => {
    const file = readFileSync(join(import.meta.dirname, '../fixtures/plans/v4/sheets.json'), 'utf8');
    const opened = openPlan(file);
    if (!opened.ok) throw new Error(opened.reason.code);
    const desk = inspect(opened.plan, 'fitting', 'on');
    const places = screen
      .getAllByRole('group')
      .map((group) => [
        group.querySelector('legend')?.textContent,
        [...group.querySelectorAll('label')].map(({ textContent }) => textContent),
      ]);
    const axes = ['From the nose', 'From the right side'];
    expect(places).toEqual([
      ['On Bay', axes],
      ['On Whole', axes],
    ]);
    expect(desk.getState().sheetId).not.toBe('bay');
    fireEvent.click(screen.getByRole('button', { name: 'Go to Bay' }));
    expect(desk.getState().sheetId).toBe('bay');
  });

  it.each(['alternator', 'jumpPost', 'takeOff', 'charger', 'relay', 'switch', 'capacitor', 'breaker'] as const)(
    '%s: its caution stands there',
    (kind) => {
      inspectNew(kind);
      const caution = words.fittingCautions[kind] ?? '';
      expect(caution).not.toBe('');
      expect(screen.getByText(caution)).toBeTruthy();
    },
  );

  it('may say the largest cable its terminals take', () => {
    const desk = inspectNew('load');
    choose('Largest cable its terminals take', 'sae:4');
    expect(fitting(desk)?.takes).toBe('sae:4');
    choose('Largest cable its terminals take', '');
    expect(fitting(desk)?.takes).toBeNull();
  });
});

describe('told values', () => {
  it('an alternator: the mark turns from assumed to told, idle may be left out again', () => {
    const desk = inspectNew('alternator');
    expect(screen.getByLabelText('Rated output, A (assumed)')).toBeTruthy();
    type(/^Rated output/, '150');
    expect(screen.getByLabelText('Rated output, A (told)')).toBeTruthy();
    type(/^Output at idle/, '60');
    expect(fitting(desk)).toMatchObject({
      ratedA: { value: 150, origin: 'told' },
      idleA: { value: 60, origin: 'told' },
    });
    type(/^Output at idle/, '');
    expect(fitting(desk)).toMatchObject({ idleA: null });
  });

  it('milliohms are kept as ohms, without a stray digit', () => {
    const desk = inspectNew('capacitor');
    type(/^Series resistance/, '0,7');
    expect(fitting(desk)).toMatchObject({ esrOhm: { value: 0.0007, origin: 'told' } });
    expect(screen.getByLabelText<HTMLInputElement>(/^Series resistance/).value).toBe('0.7');
    fireEvent.click(screen.getByLabelText('Filled through a resistor before it is joined'));
    expect(fitting(desk)).toMatchObject({ precharged: true });
  });

  it('a figure out of the bounds of the plan is refused with them', () => {
    const desk = inspectNew('charger');
    type(/^Efficiency/, '1.2');
    expect(screen.getByRole('alert').textContent).toContain('at most 0.99');
    expect(fitting(desk)).toMatchObject({ efficiency: { origin: 'assumed' } });
  });

  it('a take-off: the factory fuse told and not told', () => {
    const desk = inspectNew('takeOff');
    type(/^Rating of the factory fuse/, '80');
    type(/^Length of the factory cable/, '2.5 m');
    expect(fitting(desk)).toMatchObject({ fuseA: 80, cable: { lengthM: { value: 2.5, origin: 'told' } } });
    type(/^Rating of the factory fuse/, '');
    expect(fitting(desk)).toMatchObject({ fuseA: null });
  });

  it('a switch is opened, a relay has nothing to open', () => {
    const desk = inspectNew('switch');
    fireEvent.click(screen.getByLabelText('Closed'));
    expect(fitting(desk)).toMatchObject({ closed: false });
  });

  it('a reducer: its length; a pass-through: its grommet', () => {
    const desk = inspectNew('reducer');
    type(/^Length of the thin end/, '80 mm');
    expect(fitting(desk)).toMatchObject({ lengthM: { value: 0.08, origin: 'told' } });
  });
});

describe('a battery', () => {
  it('is known by its cranking current when it is lead-acid, by its resistance otherwise', () => {
    const desk = inspectNew('battery');
    choose('Counted after', 'en');
    choose('Kind of battery', 'lithium');
    expect(screen.queryByLabelText(/^Cold cranking current/)).toBeNull();
    type(/resistance, mΩ/, '1.5');
    expect(fitting(desk)).toMatchObject({
      chemistry: 'lithium',
      ccaStandard: 'en',
      internalOhm: { value: 0.0015, origin: 'told' },
    });
  });

  it('may carry a link on its post, of its own family, and a sensor on the other', () => {
    const desk = inspectNew('battery');
    fireEvent.click(screen.getByLabelText('A fuse on the positive post'));
    choose('Post: rating, A', 'fixed');
    type('Post: fixed at, A', '200');
    const families = [...screen.getByLabelText<HTMLSelectElement>('Post: family').options].map(({ value }) => value);
    expect(families).toEqual(['auto', 'post-link']);
    choose('A sensor on the negative post', 'yes');
    expect(fitting(desk)).toMatchObject({ postLink: { ratingA: 200, family: 'auto' }, sensedNegative: true });
    fireEvent.click(screen.getByLabelText('A fuse on the positive post'));
    expect(fitting(desk)).toMatchObject({ postLink: null });
  });
});

describe('an amplifier', () => {
  it('gets a second pair of terminals, and keeps it while a run is on it', () => {
    const desk = inspectNew('amplifier');
    choose('Power inputs', 'two');
    expect(fitting(desk)).toMatchObject({ supplyInputs: 'two' });
    act(() => {
      const { plan } = desk.getState();
      const runs = plan.runs.map((one) =>
        one.id === 'toRear' ? { ...one, to: { fittingId: 'new', terminal: 'supply2' } } : one,
      );
      desk.setState({ plan: { ...plan, runs } });
    });
    choose('Power inputs', 'one');
    expect(screen.getByRole('alert').textContent).toContain('Delete that run first.');
    expect(fitting(desk)).toMatchObject({ supplyInputs: 'two' });
  });

  it('plays with a duty of its own, or with that of the plan', () => {
    const desk = inspectNew('amplifier');
    type(/^Duty of its own/, '1/8');
    type(/^Current when on and silent/, '2');
    expect(fitting(desk)).toMatchObject({ duty: 0.125, idleA: { value: 2, origin: 'told' } });
    type(/^Duty of its own/, '');
    expect(fitting(desk)).toMatchObject({ duty: null });
  });
});

describe('a cable that is there already', () => {
  it('196 strands of 0.40 mm are 24.6 mm2, and are taken as SAE 3 at a press', () => {
    const desk = inspect(examplePlan(), 'run', 'toRear');
    type('Strands', '196');
    expect(run(desk, 'toRear')?.conductor.strands).toBeNull();
    type('Width of one, mm', '0,4');
    expect(run(desk, 'toRear')?.conductor.strands).toEqual({ count: 196, diameterMm: 0.4 });
    expect(document.querySelector('[data-strands-area]')?.textContent).toBe('Gives 24.6 mm² of metal.');
    // 24.63 mm2 proves SAE 3 (ISO and SAE areas: tests/calc/conductor/dimensions.test.ts)
    fireEvent.click(screen.getByRole('button', { name: 'Take it as SAE 3' }));
    expect(run(desk, 'toRear')?.conductor.size).toBe('sae:3');
    expect(screen.queryByRole('button', { name: /^Take it as/ })).toBeNull();
    type('Strands', '');
    expect(run(desk, 'toRear')?.conductor.strands).toBeNull();
  });

  it('scraped, bundled, bent, its joints measured', () => {
    const desk = inspect(examplePlan(), 'run', 'toRear');
    choose('Copper all through', 'no');
    type('Cables in the bundle, this one too', '3');
    type(/^Tightest bend/, '60');
    type(/^Joint at Distribution block, output 2/, '0.25');
    type(/^Joint at Rear amplifier, supply/, '1.5');
    expect(run(desk, 'toRear')).toMatchObject({
      conductor: { copperThrough: false },
      bundled: 3,
      bendRadiusMm: 60,
      fromJointOhm: 0.00025,
      toJointOhm: 0.0015,
    });
  });

  it("may be the vehicle's own, and what that means is said", () => {
    const desk = inspect(examplePlan(), 'run', 'toRear');
    choose('Kind', 'factory');
    expect(run(desk, 'toRear')?.kind).toBe('factory');
    expect(screen.getByText(/^Laid by the vehicle's maker/)).toBeTruthy();
  });
});
