import { describe, expect, it } from 'vitest';
import { axe } from '../support/axe.ts';
import { untilText } from '../support/reading.ts';
import { openForTest } from './support/opening.ts';
import { close, openDialog, openList, openWhy, selectFirst } from './support/screens.ts';
import { TouchUser } from './support/touch.ts';

/** The page as the accessibility checker sees it, in every state that a visitor can bring it to. */
describe.each(['tablet', 'phone'] as const)('the accessibility checker finds nothing: %s', (screen) => {
  const dialog = (button: Parameters<typeof openDialog>[1], title?: string) => async (user: TouchUser) => {
    if ((await user.page.getByRole('dialog').count()) > 0) await close(user, 'Close');
    await openDialog(user, button, title);
  };
  const STATES: readonly (readonly [string, (user: TouchUser) => Promise<void>])[] = [
    ['the first page', async () => undefined],
    ['the dialog for a new plan', dialog('New plan')],
    ['the settings', dialog('Settings')],
    ['opening a plan', dialog('Plans')],
    ['the legend', dialog('Legend')],
    [
      'the list',
      async (user) => {
        await close(user, 'Close');
        await openList(user);
      },
    ],
    [
      'a reason',
      async (user) => {
        await close(user, 'Close the list');
        await openWhy(user, 'Main fuse');
      },
    ],
    [
      'the inspector of a fitting',
      async (user) => {
        await close(user, 'Close');
        await selectFirst(user, 'Amplifiers');
      },
    ],
    ['the inspector of a run', (user) => selectFirst(user, 'Runs')],
  ];

  it('in any state of the page', async () => {
    const opened = await openForTest(screen);
    await untilText(opened.page, /\d to stop for/);
    const user = new TouchUser(opened);
    const found: Record<string, string[]> = {};
    for (const [state, bring] of STATES) {
      await bring(user);
      found[state] = await axe(opened.page);
    }
    expect(found).toEqual(Object.fromEntries(STATES.map(([state]) => [state, []])));
    opened.expectClean();
  });
});
