/** Drawing the plan of `route.ts` by touch, from 'New plan' on. */
import { untilText } from '../../support/reading.ts';
import { untilSaved } from './reading.ts';
import { AMPLIFIERS, FIREWALL_X_M, FITTINGS, placeOf, RUNS } from './route.ts';
import type { PaneName, TouchUser } from './touch.ts';

export const PLAN_NAME = 'Parade van';

/** What lies ahead of the firewall or in it is easier to hit where the bay is large. */
const paneOf = (xM: number): PaneName => (xM <= FIREWALL_X_M ? 'Engine bay' : 'Whole vehicle');

async function startPlan(user: TouchUser): Promise<void> {
  const { page } = user;
  await user.tap(user.button('New plan'));
  const dialog = page.getByRole('dialog', { name: 'New plan' });
  await user.tap(dialog.getByText('Panel van', { exact: true }));
  await user.write(dialog.getByLabel('Name', { exact: true }), PLAN_NAME);
  await user.tap(dialog.getByRole('button', { name: 'Start this plan' }));
  await untilText(page, 'Nothing drawn yet');
}

/** Draws it all, and answers the text in which the browser keeps it. */
export async function drawRoute(user: TouchUser): Promise<string> {
  await startPlan(user);
  await user.learn('Engine bay');
  await user.learn('Whole vehicle');
  for (const fitting of FITTINGS) await user.place(fitting, paneOf(fitting.at.xM));
  await user.take('Run', 'The hand');
  for (const run of RUNS) {
    const ends = [placeOf(run.from.fitting), placeOf(run.to.fitting)] as const;
    await user.join(run, ends, [paneOf(ends[0].xM), paneOf(ends[1].xM)]);
  }
  await user.take('Move', 'The hand');
  // with the tool put away the bay is looked at from as near as its fuse asks for
  await user.learn('Engine bay');
  for (const { name, ratedW, ampClass } of AMPLIFIERS) {
    await user.opened.finger.tap(user.spot(placeOf(name), 'Whole vehicle'));
    await user.write(user.field(/^Rated output/), String(ratedW));
    if (ampClass !== 'D') await user.choose(user.field(/^Class/), `Class ${ampClass}`);
  }
  return untilSaved(
    user.page,
    (text) => text.includes(`"value": ${AMPLIFIERS.at(-1)?.ratedW ?? 0}`) && text.includes(`"AB"`),
  );
}
