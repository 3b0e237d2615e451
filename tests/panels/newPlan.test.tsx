import { fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { choose } from '../../src/look/choices.ts';
import NewPlanDialog from '../../src/panels/newplan/NewPlanDialog.tsx';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));
afterEach(() => choose('language', 'auto'));

function show() {
  const onClose = vi.fn();
  const { desk } = renderPanel(<NewPlanDialog onClose={onClose} />, examplePlan());
  return { onClose, plan: () => desk.getState().plan };
}

const pick = (name: string) => fireEvent.click(screen.getByLabelText(name));
// by text: roles are slow to work out beside the pictures of seven vehicles
const button = (name: string) => screen.getByText<HTMLButtonElement>(name, { selector: 'button' });
const press = (name: string) => fireEvent.click(button(name));
const field = (label: string) => screen.getByLabelText<HTMLInputElement>(label);
function set(label: string, value: string): void {
  fireEvent.change(field(label), { target: { value } });
  fireEvent.blur(field(label));
}
const start = () => fireEvent.submit(document.querySelector('form') as HTMLFormElement);

describe('a new plan', () => {
  it('is an empty panel van, left-hand drive, unless told otherwise', () => {
    const { plan, onClose } = show();
    start();
    expect(plan().name).toBe('Panel van');
    expect(plan().sheets).toMatchObject([{ outline: DEFAULT_OUTLINES.panelVan, mirrored: false }]);
    expect([plan().fittings, plan().runs]).toEqual([[], []]);
    expect(onClose).toHaveBeenCalledTimes(1);
  });

  it.each([
    ['In the engine bay', 0, 1.25],
    ['Under a seat', 1.25, 3.5],
    ['At the rear', 3.5, 4.7],
  ])('has the body, drive, battery (%s) and amplifiers that were chosen, and opens again', (place, fromXM, toXM) => {
    const { plan } = show();
    pick('Saloon');
    pick('Right-hand drive');
    pick(place);
    press('Add 300 W');
    press('Add 1500 W');
    press('Add 800 W');
    press('Take the last one off');
    expect(screen.getByRole('status').textContent).toBe('2 to place: 300 W, 1500 W');
    set('Name', 'Blue saloon');
    start();
    expect(plan().name).toBe('Blue saloon');
    expect(plan().sheets).toMatchObject([{ outline: DEFAULT_OUTLINES.saloon, mirrored: true }]);
    const [battery, ...amplifiers] = plan().fittings;
    expect(battery?.kind).toBe('battery');
    expect(battery?.at.xM).toBeGreaterThan(fromXM);
    expect(battery?.at.xM).toBeLessThan(toXM);
    expect(amplifiers.map((one) => one.kind === 'amplifier' && one.ratedW)).toEqual([
      { value: 300, origin: 'told' },
      { value: 1500, origin: 'told' },
    ]);
    expect(openPlan(savePlan(plan()))).toEqual({ ok: true, plan: plan(), migratedFrom: null });
  });

  it('takes eight amplifiers and no more', () => {
    const { plan } = show();
    for (let count = 0; count < 9; count += 1) press('Add 500 W');
    expect(button('Add 500 W').disabled).toBe(true);
    start();
    expect(plan().fittings).toHaveLength(8);
  });

  it('asks a bench for no side of drive', () => {
    const { plan } = show();
    pick('Right-hand drive');
    pick('Bench board');
    expect(screen.queryByLabelText('Right-hand drive')).toBeNull();
    start();
    expect(plan().sheets).toMatchObject([{ outline: DEFAULT_OUTLINES.bench, mirrored: false }]);
  });

  it.each([
    ['long', 'Length: this is not a length'],
    ['1 m', 'Length: at least 2 m'],
    ['44 m', 'Length: at most 12 m'],
  ])('is not started with a length of %s: says why, goes there and loses nothing', (typed, said) => {
    const { plan, onClose } = show();
    press('Add 300 W');
    set('Length', typed);
    start();
    expect(screen.getByRole('alert').textContent).toContain(said);
    expect(document.activeElement).toBe(field('Length'));
    expect([field('Length').value, screen.getByRole('status').textContent]).toEqual([typed, '1 to place: 300 W']);
    expect(plan()).toEqual(examplePlan());
    expect(onClose).not.toHaveBeenCalled();
  });

  it.each([
    ['Firewall to the end of the cabin', '3.4 m', 'The bay and the cabin together are longer than the vehicle'],
    ['Wheelbase', '3.74 m', 'The rear axle would stand behind the vehicle'],
  ])('is not started with sizes that do not go together: %s', (label, typed, said) => {
    const { plan } = show();
    set(label, typed);
    expect(screen.getByRole('alert').textContent).toContain(said);
    expect(button('Start this plan').disabled).toBe(true);
    press('Start this plan');
    expect(plan()).toEqual(examplePlan());
  });

  it.each([
    ['en', 'ft-in', 'sae'],
    ['en-GB', 'm', 'mm2'],
  ] as const)(
    'shows lengths and sizes as people of that language want them: %s',
    (language, showLength, sizeSystem) => {
      choose('language', language);
      const { plan } = show();
      start();
      expect(plan().settings).toMatchObject({ showLength, sizeSystem });
    },
  );

  it('is none when it is cancelled', () => {
    const { plan, onClose } = show();
    press('Add 300 W');
    press('Cancel');
    expect(plan()).toEqual(examplePlan());
    expect(onClose).toHaveBeenCalledTimes(1);
  });
});
