/** A walk through the states of the work face, by touch, in either language. */
import type { Locator } from 'playwright-core';
import { drawn, untilText } from '../../support/reading.ts';
import type { Said } from './said.ts';
import type { TouchUser } from './touch.ts';

/** One state after another: its name, how to come to it from the one before, and what of it lies over the rest. */
type Walk = readonly (readonly [state: string, bring: () => Promise<void>, within?: string])[];

interface PlanFile {
  readonly name: string;
  readonly buffer: Buffer;
}

class Walker {
  constructor(
    private readonly user: TouchUser,
    private readonly said: Said,
  ) {}

  list = async (): Promise<void> => {
    await this.user.tap(this.user.button(this.said.topbar.list));
    await untilText(this.user.page, this.said.listTitle);
  };

  closeList = (): Promise<void> => this.user.tap(this.user.button(this.said.closeList));

  dialog = async (button: keyof Said['topbar'], title?: string): Promise<void> => {
    const { user, said } = this;
    await user.tap(user.button(said.topbar[button]));
    await user.page.getByRole('dialog', { name: title ?? said.topbar[button] }).waitFor();
    await drawn(user.page);
  };

  closeDialog = async (): Promise<void> => {
    const dialog = this.user.page.getByRole('dialog');
    await this.user.tap(dialog.getByRole('button', { name: this.said.close, exact: true }).first());
    await dialog.waitFor({ state: 'detached' });
  };

  why = async (): Promise<void> => {
    const { user, said } = this;
    const figures = user.page.getByRole('list', { name: said.figures });
    await user.tap(figures.getByRole('button', { name: new RegExp(`^${said.worstDrop}`) }));
    const dialog = user.page.getByRole('dialog', { name: said.why(said.worstDrop) });
    await dialog.getByRole('table').first().waitFor();
  };

  /** The fittings that do not stand on the shelf, and what else is behind that. */
  more = async (): Promise<Locator> => {
    const { user, said } = this;
    await user.tap(user.button(said.moreFittings));
    const region = user.page.getByRole('region', { name: said.moreFittings });
    await region.waitFor();
    await drawn(user.page);
    return region;
  };

  /** Draws an outline, so far that a step of it can be taken back. */
  outline = async (): Promise<void> => {
    const { user, said } = this;
    const more = user.page.getByRole('region', { name: said.moreFittings });
    await user.tap(more.getByRole('button', { name: said.drawOutline, exact: true }));
    await user.tap(user.button(said.addCorner));
    await drawn(user.page);
  };

  /** A second sheet, and the row with what it offers for adding a third. */
  sheets = async (): Promise<void> => {
    const { user, said } = this;
    await user.tap(user.button(said.cancel));
    const more = await this.more();
    await user.tap(more.getByRole('button', { name: said.cargoSide, exact: true }));
    await user.tap(user.button(said.addSheet));
    await drawn(user.page);
  };

  changeSheet = async (): Promise<void> => {
    const { user, said } = this;
    await user.tap(user.button(said.change(said.cargoSide)));
    await user.page.getByLabel(said.sheetName, { exact: true }).waitFor();
    await drawn(user.page);
  };

  open = async (file: PlanFile): Promise<void> => {
    const { user, said } = this;
    await this.dialog('plans');
    const chooser = user.page.waitForEvent('filechooser');
    await user.tap(user.page.getByText(said.openFile, { exact: true }));
    await (await chooser).setFiles({ ...file, mimeType: 'application/json' });
    await user.tap(user.button(said.dismiss));
  };

  propose = async (): Promise<void> => {
    const { user, said } = this;
    // a tap that comes at once was meant for what stood there before
    const settled = user.page.locator('.sketch-propose:not([data-quiet])');
    await settled.getByRole('button', { name: said.propose, exact: true }).waitFor();
    await user.tap(user.button(said.propose));
    await settled.getByRole('button', { name: said.acceptAll, exact: true }).waitFor();
    await drawn(user.page);
  };

  /** The plans kept, one of them being renamed. */
  renamePlan = async (): Promise<void> => {
    const { user, said } = this;
    await this.dialog('plans');
    const dialog = user.page.getByRole('dialog');
    await user.tap(dialog.getByRole('button', { name: said.rename }).first());
    await dialog.getByLabel(said.newName, { exact: true }).waitFor();
    await drawn(user.page);
  };

  alternatives = async (): Promise<void> => {
    const { user, said } = this;
    await user.tap(user.button(said.topbar.alternatives));
    await user.page.getByRole('region', { name: said.topbar.alternatives }).getByRole('table').waitFor();
    await drawn(user.page);
  };

  /** Selects what the first row of a table of the answer is about. */
  select = async (table: keyof Said['tables']): Promise<void> => {
    const { user, said } = this;
    const rows = user.page.getByRole('table', { name: said.tables[table] }).getByRole('rowheader');
    await user.tap(rows.first().getByRole('button'));
    const fields = user.page.getByRole('region', { name: said.selected });
    await fields.getByLabel(said.name, { exact: true }).waitFor();
    await drawn(user.page);
  };
}

/** The plan with nothing in its way, its list, a fitting and a run selected, and the list beside that. */
export function shortWalk(user: TouchUser, said: Said): Walk {
  const go = new Walker(user, said);
  return [
    ['nothing selected', async () => undefined],
    ['the list open', go.list],
    [
      'a fitting selected',
      async () => {
        await go.closeList();
        await go.select('amplifiers');
      },
    ],
    ['a run selected', () => go.select('runs')],
    ['the list open beside it', go.list],
  ];
}

/** All that opens from the row at the top and from the answer, then the short walk. */
export function longWalk(user: TouchUser, said: Said): Walk {
  const go = new Walker(user, said);
  const after = (leave: () => Promise<void>, bring: () => Promise<void>) => async () => {
    await leave();
    await bring();
  };
  const { closeDialog } = go;
  const [first, , ...others] = shortWalk(user, said);
  if (first === undefined) throw new Error('The short walk is too short.');
  return [
    first,
    ['the dialog for a new plan', () => go.dialog('newPlan')],
    ['the plans', after(closeDialog, () => go.dialog('plans'))],
    ['the settings', after(closeDialog, () => go.dialog('settings'))],
    ['the legend', after(closeDialog, () => go.dialog('legend'))],
    ['the view', after(closeDialog, () => go.dialog('workView', said.view))],
    ['a reason', after(closeDialog, go.why)],
    ['the alternatives', after(closeDialog, go.alternatives)],
    [
      'the guided first plan',
      async () => {
        const open = user.page.getByRole('region', { name: said.topbar.alternatives });
        await user.tap(open.getByRole('button', { name: said.close, exact: true }));
        await user.tap(user.button(said.guide.show));
        await user.page.getByRole('complementary', { name: said.guide.label }).waitFor();
        await drawn(user.page);
      },
    ],
    [
      'the list open',
      async () => {
        const card = user.page.getByRole('complementary', { name: said.guide.label });
        await user.tap(card.getByRole('button', { name: said.guide.leave, exact: true }));
        await go.list();
      },
    ],
    ...others,
  ];
}

/** From the end of a walk on: what changes the plan, what lies in place of the sketch, and then a plan to propose for. */
export function ownWalk(user: TouchUser, said: Said, unfed: PlanFile): Walk {
  const go = new Walker(user, said);
  return [
    [
      'the other fittings',
      async () => {
        await go.closeList();
        await go.more();
      },
      '.more',
    ],
    ['an outline being drawn', go.outline],
    ['a sheet to add', go.sheets],
    ['a sheet to change', go.changeSheet],
    [
      'a proposal',
      async () => {
        await go.open(unfed);
        await go.propose();
      },
    ],
    ['the plans kept', go.renamePlan],
  ];
}
