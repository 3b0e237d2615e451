/** The states of the page that are looked at as a whole, each reached by touch on every screen. */
import { drawn, untilText } from '../../support/reading.ts';
import { type FigureLabel, figureButton } from './reading.ts';
import type { TouchUser } from './touch.ts';

/** A button of the row at the top; on a phone it is behind the menu. */
async function fromTopbar(user: TouchUser, name: string): Promise<void> {
  await user.page.getByRole('region', { name: 'Answer' }).waitFor();
  if (!(await user.button(name).isVisible())) await user.tap(user.button('Menu'));
  await user.tap(user.button(name));
}

/** On a small screen the answer is a sheet that is pulled up. */
async function pullUp(user: TouchUser): Promise<void> {
  await user.page.getByRole('region', { name: 'Answer' }).waitFor();
  const pull = user.button('Show the whole answer');
  if (await pull.isVisible()) await user.tap(pull);
}

export async function openDialog(
  user: TouchUser,
  button: 'New plan' | 'Plans' | 'Settings' | 'Legend' | 'Work view',
  title: string = button,
): Promise<void> {
  await fromTopbar(user, button);
  await user.page.getByRole('dialog', { name: title }).waitFor();
  await drawn(user.page);
}

export async function openList(user: TouchUser): Promise<void> {
  await fromTopbar(user, 'List');
  await untilText(user.page, 'The plan as a list');
}

/** Closes what was opened last: a dialog, or the list. */
export async function close(user: TouchUser, name: 'Close' | 'Close the list'): Promise<void> {
  const dialog = user.page.getByRole('dialog');
  const place = (await dialog.count()) > 0 ? dialog : user.page;
  await user.tap(place.getByRole('button', { name, exact: true }));
}

export async function openWhy(user: TouchUser, label: FigureLabel): Promise<void> {
  await pullUp(user);
  await user.tap(figureButton(user.page, label));
  await user.page
    .getByRole('dialog', { name: `${label}: why` })
    .getByRole('table')
    .first()
    .waitFor();
  await drawn(user.page);
}

/** Selects what the first row of a table of the answer is about: a fitting, or a run. */
export async function selectFirst(user: TouchUser, table: 'Fuses' | 'Amplifiers' | 'Runs'): Promise<void> {
  await pullUp(user);
  await user.tap(user.page.getByRole('table', { name: table }).getByRole('rowheader').first().getByRole('button'));
  await user.page.getByRole('region', { name: 'Selected' }).getByLabel('Name', { exact: true }).waitFor();
  await drawn(user.page);
}

/** Opens a plan file through the page's own dialog. */
export async function openFile(user: TouchUser, name: string, text: string): Promise<void> {
  await openDialog(user, 'Plans');
  const chooser = user.page.waitForEvent('filechooser');
  await user.tap(user.page.getByText('Open a file', { exact: true }));
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
  await drawn(user.page);
}

/** The sheet of fittings that do not stand on the shelf; on a phone the shelf's own drawer comes first. */
export async function openMore(user: TouchUser): Promise<void> {
  await user.page.getByRole('region', { name: 'Answer' }).waitFor();
  const tools = user.button('Tools');
  if (await tools.isVisible()) await user.tap(tools);
  await user.tap(user.button('More fittings'));
  await user.page.getByRole('region', { name: 'More fittings' }).waitFor();
  await drawn(user.page);
}

/** Selects a thing by its name in the list, which is then closed again. */
export async function selectInList(user: TouchUser, name: string): Promise<void> {
  await openList(user);
  await user.tap(user.button(`Edit ${name}`));
  await user.page.getByRole('region', { name: 'Selected' }).getByLabel('Name', { exact: true }).waitFor();
  const close = user.button('Close the list');
  if (await close.isVisible()) await user.tap(close);
  await drawn(user.page);
}
