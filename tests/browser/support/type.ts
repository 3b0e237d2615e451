/** Typing the plan of `route.ts` into the list beside the sketch, from 'New plan' on. */
import { untilText } from '../../support/reading.ts';
import { PLAN_NAME } from './draw.ts';
import type { KeyboardUser } from './keyboard.ts';
import { untilSaved } from './reading.ts';
import { AMPLIFIERS, type At, type End, FITTINGS, type Joined, type Placed, RUNS } from './route.ts';

const ADD = 'Add a fitting';
const CONNECT = 'Connect two terminals';
const SELECTED = 'Selected';

async function startPlan(user: KeyboardUser): Promise<void> {
  await user.tabTo({ name: 'New plan' });
  await user.press('Enter');
  await untilText(user.page, 'Start this plan');
  await user.tabTo({ name: 'Name', part: 'New plan' });
  await user.write(PLAN_NAME);
  await user.tabTo({ name: 'Start this plan' });
  await user.press('Enter');
  await untilText(user.page, 'Nothing drawn yet');
}

/** Adds one fitting; the focus is somewhere before the form, or on its button after the fitting before. */
async function add(user: KeyboardUser, { kind, name, at }: Placed, isFirst: boolean): Promise<void> {
  const goal = { name: 'Kind', part: ADD };
  await (isFirst ? user.tabTo(goal) : user.tabBackTo(goal));
  await user.choose(kind);
  await user.tabTo({ name: 'From the nose', part: ADD });
  await user.write(`${at.xM} m`);
  await user.tabTo({ name: 'From the right side', part: ADD });
  await user.write(`${at.yM} m`);
  await user.tabTo({ name: 'Add it', part: ADD });
  await user.press('Enter');
  await untilText(user.page, `${name} added.`);
}

const terminal = ({ fitting, terminal }: End): string => `${fitting}, ${terminal}`;
const bend = ({ xM, yM }: At): string => `${xM} m; ${yM} m`;

async function connect(user: KeyboardUser, { from, to, bends }: Joined, isFirst: boolean): Promise<void> {
  const goal = { name: 'From terminal', part: CONNECT };
  await (isFirst ? user.tabTo(goal) : user.tabBackTo(goal));
  await user.choose(terminal(from));
  await user.tabTo({ name: 'To terminal', part: CONNECT });
  await user.choose(terminal(to));
  await user.tabTo({ name: 'Bends, from first to last', part: CONNECT });
  await user.page.keyboard.type(bends.map(bend).join('\n'));
  await user.tabTo({ name: 'Connect', part: CONNECT });
  await user.press('Enter');
  await untilText(user.page, ' connected.');
}

async function tell(user: KeyboardUser, { name, ratedW, ampClass }: (typeof AMPLIFIERS)[number]): Promise<void> {
  await user.tabBackTo({ name: `Edit ${name}` });
  await user.press('Enter');
  await user.untilFocus({ name: /^Rated output/, part: SELECTED });
  await user.write(String(ratedW));
  await user.tabTo({ name: /^Class/, part: SELECTED });
  await user.choose(`Class ${ampClass}`);
}

/** Types it all, and answers the text in which the browser keeps it. */
export async function typeRoute(user: KeyboardUser): Promise<string> {
  await startPlan(user);
  await user.tabTo({ name: 'List' });
  await user.press('Enter');
  await untilText(user.page, 'The plan as a list');
  for (const [index, fitting] of FITTINGS.entries()) await add(user, fitting, index === 0);
  for (const [index, run] of RUNS.entries()) await connect(user, run, index === 0);
  for (const amplifier of AMPLIFIERS) await tell(user, amplifier);
  return untilSaved(
    user.page,
    (text) => text.includes(`"value": ${AMPLIFIERS.at(-1)?.ratedW ?? 0}`) && text.includes('"AB"'),
  );
}
