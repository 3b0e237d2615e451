import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { type OpenedPage, VIEWPORTS } from '../support/browser.ts';
import { middleOf } from '../support/finger.ts';
import { layoutFaults } from '../support/layout.ts';
import { drawn, untilText } from '../support/reading.ts';
import { openForAll } from './support/opening.ts';
import { TouchUser } from './support/touch.ts';

/** Languages, chosen by touch in the view dialog on the example; its names stay as they were given. */
let opened: OpenedPage;
let user: TouchUser;

openForAll(
  async (shared) => {
    opened = shared;
    user = new TouchUser(opened);
    await untilText(opened.page, '1 to stop for');
  },
  'tablet',
  { locale: 'en-US' },
);

const pageText = () => user.page.evaluate(() => document.body.innerText);
const language = () => user.page.evaluate(() => document.documentElement.lang);

describe('German', () => {
  it('is spoken from when it is chosen: bar, verdict, findings, figures', async () => {
    await user.tap(user.button('Work view'));
    await user.choose(user.page.getByRole('dialog', { name: 'View' }).getByLabel('Language'), 'Deutsch');
    const dialog = user.page.getByRole('dialog', { name: 'Ansicht' });
    await dialog.waitFor();
    await user.tap(dialog.getByRole('button', { name: 'Schließen', exact: true }));
    await untilText(user.page, 'Stopp: 1 Befund');
    expect(await language()).toBe('de');
    const text = await pageText();
    for (const part of ['Arbeitsansicht', 'Einstellungen', 'Leitung', 'Die erste Sicherung kommt nach']) {
      expect(text).toContain(part);
    }
    expect(text).toMatch(/\d,\d{2} V\b/);
    expect(text).not.toMatch(/\d\.\d{2} V\b/);
  });

  it('is accessible, and neither cut off nor overlapping at any size', async () => {
    expect(await axe(user.page)).toEqual([]);
    const faults: Record<string, string[]> = {};
    for (const screen of ['tabletPortrait', 'phone', 'projector', 'tablet'] as const) {
      await user.page.setViewportSize(VIEWPORTS[screen]);
      await drawn(user.page);
      faults[screen] = await layoutFaults(user.page);
    }
    expect(faults).toEqual({ tabletPortrait: [], phone: [], projector: [], tablet: [] });
  });

  it('is spoken in what opens on demand: settings and a why', async () => {
    await user.tap(user.button('Einstellungen'));
    const settings = user.page.getByRole('dialog', { name: 'Einstellungen' });
    await settings.getByText('Regelsatz für die ungesicherte Länge').waitFor();
    await user.tap(settings.getByRole('button', { name: 'Schließen', exact: true }).first());
    await user.tap(user.page.getByRole('list', { name: 'Werte' }).getByRole('button', { name: /^Max. Spannungsfall/ }));
    const why = user.page.getByRole('dialog', { name: /: warum$/ });
    await why.getByRole('table').first().waitFor();
    expect(await why.innerText()).toMatch(/\d,\d/);
    await user.tap(why.getByRole('button', { name: 'Schließen', exact: true }).first());
  });

  it('is still spoken on the next visit', async () => {
    await user.page.reload();
    await untilText(user.page, 'Stopp: 1 Befund');
    expect(await language()).toBe('de');
  });
});

describe('each language', () => {
  const caution = () =>
    user.page
      .getByRole('region', { name: /^(Ausgewählt|Selected)$/ })
      .locator('.caution')
      .innerText();

  async function speak(choice: string): Promise<void> {
    await user.tap(user.button(/^(Arbeitsansicht|Work view)$/));
    const dialog = user.page.getByRole('dialog');
    await user.choose(dialog.getByLabel(/^(Sprache|Language)$/), choice);
    await user.tap(dialog.getByRole('button', { name: /^(Schließen|Close)$/ }));
    await dialog.waitFor({ state: 'detached' });
  }

  /** The dialog for a new plan, with the sizes of the vehicle unfolded. */
  async function newPlan(): Promise<Locator> {
    await user.tap(user.button('New plan'));
    const dialog = user.page.getByRole('dialog');
    await user.tap(dialog.getByText('Sizes', { exact: true }));
    return dialog;
  }

  it('has its own words for what stands in the way of a cable, and its own measures for a new plan', async () => {
    await user.tap(user.button('Liste'));
    await user.tap(user.button('Durchführung bearbeiten'));
    expect(await caution()).toMatch(/Motorhaube/);
    await user.tap(user.button('Liste schließen'));

    await speak('English (UK)');
    expect(await language()).toBe('en-GB');
    expect(await caution()).toMatch(/bonnet/);
    const british = await newPlan();
    await british.getByLabel('Nose to bulkhead', { exact: true }).waitFor();
    await user.tap(british.getByRole('button', { name: 'Close', exact: true }));

    await speak('As the browser asks');
    expect(await language()).toBe('en');
    expect(await caution()).toMatch(/hood/);
    await (await newPlan()).getByLabel('Nose to firewall', { exact: true }).waitFor();
    await user.tap(user.button('Start this plan'));
    await untilText(user.page, 'Nothing drawn yet');
    await user.take('Battery', 'Fittings');
    await opened.finger.tap(await middleOf(user.pane('Whole vehicle')));
    expect(await user.field('From the nose').inputValue()).toMatch(/^\d+ ft\b/);
    await user.tap(user.button('Settings'));
    const chosen = (label: string) =>
      user.page
        .getByRole('dialog')
        .getByLabel(label, { exact: true })
        .evaluate((list) => (list instanceof HTMLSelectElement ? list.selectedOptions[0]?.text : undefined));
    expect([await chosen('Lengths in'), await chosen('Cable sizes')]).toEqual(['Feet and inches', 'SAE gauge']);
    opened.expectClean();
  });
});
