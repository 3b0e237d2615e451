import { fireEvent, screen } from '@testing-library/react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { NO_TEMPLATES } from '../../src/app/templates.ts';
import { choose } from '../../src/look/choices.ts';
import NewPlanDialog from '../../src/panels/newplan/NewPlanDialog.tsx';
import { openPlan } from '../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import type { Outline } from '../../src/plan/schema.ts';
import { speakIn } from '../../src/words/language.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));
// English of no country, which has metres
beforeEach(() => void vi.spyOn(navigator, 'languages', 'get').mockReturnValue(['en']));
afterEach(async () => {
  vi.restoreAllMocks();
  choose('language', 'auto');
  await speakIn('en');
});

function show(open = examplePlan()) {
  const onClose = vi.fn();
  const { desk } = renderPanel(<NewPlanDialog onClose={onClose} />, open);
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
    pick('Sedan');
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
    ['Firewall to the end of the cabin', '3.4 m', 'longer than the vehicle'],
    ['Wheelbase', '3.74 m', 'behind the vehicle'],
  ])('is not started by Enter either: the message stands by the field, %s', (label, typed, said) => {
    const { plan, onClose } = show();
    const sizes = field(label).closest('details') as HTMLDetailsElement;
    const folded = () => {
      sizes.open = false;
      fireEvent(sizes, new Event('toggle'));
      return !sizes.open;
    };
    set(label, typed);
    (document.activeElement as HTMLElement | null)?.blur();
    start();
    expect(plan()).toEqual(examplePlan());
    expect(onClose).not.toHaveBeenCalled();
    expect(document.activeElement).toBe(field(label));
    expect(field(label).getAttribute('aria-invalid')).toBe('true');
    const about = field(label).getAttribute('aria-describedby') ?? '';
    expect(document.getElementById(about)?.textContent).toContain(said);
    expect(sizes.open).toBe(true);
    expect(folded()).toBe(false);
    // put right, it starts with what was typed
    set(label, '2 m');
    expect(screen.queryByRole('alert')).toBeNull();
    expect(folded()).toBe(true);
    start();
    expect(onClose).toHaveBeenCalledTimes(1);
    const told = label === 'Wheelbase' ? { wheelbaseM: 2 } : { cabM: 2 };
    expect(plan().sheets).toMatchObject([{ outline: { ...DEFAULT_OUTLINES.panelVan, ...told } }]);
  });

  it.each([
    ['de', 'm', ['ft-in', '4,4 m', '4,85', '4,85 m', 4.85]],
    ['en', 'ft-in', ['m', '14 ft 5 1/4 in', '180', '15 ft', 4.572]],
  ] as const)(
    'shows and takes lengths as the new plan will, not as the open one does: %s',
    async (language, unit, [open, before, typed, after, lengthM]) => {
      await speakIn(language);
      choose('language', language);
      const example = examplePlan();
      const { plan } = show({ ...example, settings: { ...example.settings, showLength: open } });
      const length = language === 'de' ? 'Länge' : 'Length';
      expect(field(length).value).toBe(before);
      set(length, typed);
      expect(field(length).value).toBe(after);
      start();
      expect(plan().settings.showLength).toBe(unit);
      expect(plan().sheets).toMatchObject([{ outline: { lengthM } }]);
    },
  );

  it('shows and takes lengths in German as German writes them, and says so too', async () => {
    await speakIn('de');
    choose('language', 'de');
    const { plan } = show();
    const shown = (label: string) => field(label).value;
    expect(['Länge', 'Breite', 'Höhe', 'Front bis Vorderachse', 'Radstand', 'Front bis Spritzwand'].map(shown)).toEqual(
      ['4,4 m', '1,8 m', '1,85 m', '0,66 m', '2,79 m', '1 m'],
    );
    expect(['Spritzwand bis Ende Innenraum', 'Breite eines Schwellers'].map(shown)).toEqual(['1,5 m', '0,12 m']);
    set('Länge', '1,5');
    expect(screen.getByRole('alert').textContent).toContain('Länge: mindestens 2 m.');
    set('Länge', '4,85');
    set('Breite', '192,5 cm');
    expect(['Länge', 'Breite'].map(shown)).toEqual(['4,85 m', '1,925 m']);
    set('Breite eines Schwellers', '60 cm');
    expect(screen.getByRole('alert').textContent).toContain('Breite eines Schwellers: höchstens 50 cm.');
    set('Breite eines Schwellers', '0,135 m');
    press('300 W hinzufügen');
    press('1500 W hinzufügen');
    expect(screen.getByRole('status').textContent).toBe('2 zu setzen: 300 W; 1500 W');
    start();
    expect(plan().settings).toMatchObject({ showLength: 'm', sizeSystem: 'mm2' });
    expect(plan().sheets).toMatchObject([{ outline: { lengthM: 4.85, widthM: 1.925, sillM: 0.135 } }]);
  });

  it.each([
    [false, null, false, false],
    [true, null, true, false],
    [true, 'Left-hand drive', false, true],
    [false, 'Right-hand drive', true, true],
    [true, 'Right-hand drive', true, false],
  ] as const)(
    'of a template kept with the wheel on the right (%s), told %s: on the right %s, its edge turned %s',
    async (kept, told, mirrored, isTurned) => {
      const outline: Outline = {
        ...{ kind: 'own', lengthM: 4, widthM: 2, heightM: 1.5, bayM: 1, cabM: 1.5 },
        edge: [
          { xM: 0, yM: 0.3 },
          { xM: 4, yM: 0 },
          { xM: 4, yM: 2 },
          { xM: 0, yM: 2 },
        ],
      };
      const templates = { ...NO_TEMPLATES, list: async () => [{ id: 't', name: 'Cart', outline, mirrored: kept }] };
      const { desk } = renderPanel(<NewPlanDialog templates={templates} onClose={vi.fn()} />, examplePlan());
      await screen.findByText('Cart');
      if (told === 'Left-hand drive') pick('Right-hand drive');
      if (told !== null) pick(told);
      pick('In the engine bay');
      fireEvent.click(screen.getByText('Cart'));
      const { sheets, fittings } = desk.getState().plan;
      expect(sheets[0]?.mirrored).toBe(mirrored);
      expect(sheets[0]?.outline).toMatchObject({
        edge: isTurned ? [{ yM: 1.7 }, { yM: 2 }, { yM: 0 }, { yM: 0 }] : outline.edge,
      });
      // the usual place of a battery is in front of the driver
      const battery = fittings.find(({ kind }) => kind === 'battery');
      expect((battery?.at.yM ?? 1) < 1).toBe(mirrored);
    },
  );

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
