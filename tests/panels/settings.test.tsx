import { fireEvent, screen, within } from '@testing-library/react';
import { describe, expect, it, vi } from 'vitest';
import type { Desk } from '../../src/desk/desk.ts';
import LegendDialog from '../../src/panels/topbar/LegendDialog.tsx';
import SettingsDialog from '../../src/panels/topbar/SettingsDialog.tsx';
import { newFitting } from '../../src/plan/newFitting.ts';
import { words } from '../../src/words/full.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', () => ({ answerOf: () => undefined }));

const settings = (desk: Desk) => desk.getState().plan.settings;

function openSettings(plan = examplePlan()): Desk {
  return renderPanel(<SettingsDialog onClose={() => undefined} />, plan).desk;
}

function type(place: ReturnType<typeof within>, label: string | RegExp, text: string): void {
  const field = place.getByLabelText(label);
  fireEvent.change(field, { target: { value: text } });
  fireEvent.blur(field);
}

const page = () => within(document.body);
const choose = (label: string, value: string) => fireEvent.change(page().getByLabelText(label), { target: { value } });

describe('the system voltage', () => {
  it('moves what is assumed with it, keeps what is told, and is one step', () => {
    const place = { id: 'charger', name: 'Charger', sheetId: 'sheet', at: { xM: 1, yM: 1 } };
    const plan = examplePlan();
    const desk = openSettings({ ...plan, fittings: [...plan.fittings, newFitting('charger', place)] });
    type(page(), /^Cut-out voltage/, '20');
    choose('System voltage', '24');
    expect(settings(desk)).toMatchObject({
      systemV: 24,
      restV: { value: 25.2, origin: 'assumed' },
      chargingV: { value: 28.8, origin: 'assumed' },
      cutOutV: { value: 20, origin: 'told' },
    });
    expect(desk.getState().plan.fittings.at(-1)).toMatchObject({ outputV: { value: 28.8, origin: 'assumed' } });
    expect(desk.temporal.getState().pastStates).toHaveLength(2);
    choose('System voltage', '12');
    expect(settings(desk)).toMatchObject({ restV: { value: 12.6 }, cutOutV: { value: 20 } });
  });
});

describe('batteries', () => {
  it('usable share and exponent can be told', () => {
    const desk = openSettings();
    type(page(), /^Usable share/, '0.8');
    type(page(), /^Peukert/, '1.1');
    expect(settings(desk)).toMatchObject({
      usableShare: { value: 0.8, origin: 'told' },
      peukert: { value: 1.1, origin: 'told' },
    });
  });
});

describe('links of the user’s own', () => {
  function add(name: string, ratings: string, volts: string) {
    const form = within(screen.getByText('A family of your own').closest('details') ?? document.body);
    type(form, 'Name', name);
    type(form, 'Ratings, A', ratings);
    type(form, 'Rated voltage, V', volts);
    fireEvent.click(form.getByRole('button', { name: 'Add this family' }));
  }

  it('are told with their ratings, stand in the list, are changed and removed', () => {
    const desk = openSettings();
    add('Shelf stock', '60 80 100', '32');
    expect(settings(desk).ownLinks).toEqual([
      { family: 'own1', name: 'Shelf stock', seat: 'holder', ratingsA: [60, 80, 100], breakingA: null, ratedV: 32 },
    ]);
    expect(settings(desk).linkFamilies).toContain('own1');
    expect(page().getByRole<HTMLInputElement>('checkbox', { name: 'Shelf stock' }).checked).toBe(true);
    const own = within(document.querySelector<HTMLElement>('[data-own="own1"]') ?? document.body);
    type(own, 'Breaks at most, A', '2000');
    expect(settings(desk).ownLinks[0]?.breakingA).toBe(2000);
    fireEvent.click(own.getByRole('button', { name: 'Remove Shelf stock' }));
    expect(settings(desk).ownLinks).toEqual([]);
    expect(settings(desk).linkFamilies).not.toContain('own1');
  });

  it('are not added before their figures are told', () => {
    const desk = openSettings();
    add('Shelf stock', '', '32');
    expect(screen.getByRole('alert').textContent).toMatch(/rating/);
    expect(settings(desk).ownLinks).toEqual([]);
  });

  it('stay while one is fitted', () => {
    const desk = openSettings();
    add('Shelf stock', '60 80', '32');
    const { plan } = desk.getState();
    const fittings = plan.fittings.map((one) =>
      one.kind === 'fuse' ? { ...one, link: { ratingA: 'auto', family: 'own1' } as const } : one,
    );
    desk.setState({ plan: { ...plan, fittings } });
    fireEvent.click(page().getByRole('button', { name: 'Remove Shelf stock' }));
    expect(screen.getByRole('alert').textContent).toContain('Shelf stock is fitted in this plan.');
    expect(settings(desk).ownLinks).toHaveLength(1);
  });
});

describe('the legend', () => {
  it('tells every kind of fitting and of run', () => {
    renderPanel(<LegendDialog onClose={() => undefined} />, examplePlan());
    for (const name of Object.values(words.fittings.kinds)) expect(screen.getByText(name)).toBeTruthy();
    for (const kind of ['power', 'ground', 'remote', 'factory'] as const) {
      expect(screen.getByText(words.legend[kind])).toBeTruthy();
    }
  });
});
