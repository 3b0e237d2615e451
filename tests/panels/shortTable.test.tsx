import { screen, within } from '@testing-library/react';
import { afterAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { ShortTable } from '../../src/panels/summary/ShortTable.tsx';
import { SupplyList } from '../../src/panels/summary/SupplyList.tsx';
import type { Plan } from '../../src/plan/schema.ts';
import { speakIn } from '../../src/words/language.ts';
import { PlanOf } from '../assess/planOf.ts';
import { renderPanel } from './render.tsx';

const feed = (fuse: boolean): Plan => {
  const plan = new PlanOf().battery('battery').amplifier('amp').fitting('ground', 'g');
  if (fuse) plan.fuse('main', 125, { zone: 'bay' }).run('battery.positive', 'main.in', 0.15, { size: 'sae:1/0' });
  return plan
    .run(fuse ? 'main.out' : 'battery.positive', 'amp.supply', 4, { id: 'feed', name: 'Feed', size: 'sae:1/0' })
    .run('amp.ground', 'g.body', 0.6, { size: 'sae:1/0' })
    .done();
};

function show(plan: Plan): HTMLElement {
  renderPanel(<ShortTable shorts={assess(plan).shorts} plan={plan} />, plan);
  const rows = document.querySelector<HTMLElement>('tbody[data-short="feed"]');
  if (rows === null) throw new Error('no rows of the feed');
  return rows;
}

const field = (rows: HTMLElement, name: string) => rows.querySelector(`[data-field="${name}"]`)?.textContent ?? '';

afterAll(() => speakIn('en'));

describe('what a short would do', () => {
  it('behind a fuse: what flows, which fuse opens and when, and how hot the cable is by then', () => {
    const plan = feed(true);
    const short = assess(plan).shorts.find(({ runId }) => runId === 'feed');
    const rows = show(plan);
    // a bolt-in link of 125 A: at 6 times its rating no later than 1 s by the standard
    expect(short?.slowestS).toBeLessThanOrEqual(1);
    expect(field(rows, 'current')).toMatch(/^\d+ A to \d+ A$/);
    expect(field(rows, 'opens')).toMatch(/^within [\d.]+ smain$/);
    expect(field(rows, 'heat')).toMatch(/^\d+ °Cof 160 °C$/);
    expect(rows.textContent).toContain('opens before the insulation is damaged');
  });

  it('with no fuse ahead: nothing opens, said as plainly as that', () => {
    const rows = show(feed(false));
    expect(field(rows, 'opens')).toBe('not at all');
    expect(rows.textContent).toContain('No fuse lies ahead of it: nothing opens, whatever happens.');
    // there is no fuse that could have opened
    expect(rows.textContent).not.toContain('still feeds');
    expect(rows.querySelector('[data-harmed="true"]')).not.toBeNull();
  });

  it('speaks German, and asks why', async () => {
    await speakIn('de');
    const rows = show(feed(true));
    expect(rows.textContent).toContain('löst aus, bevor die Isolierung Schaden nimmt');
    expect(within(rows).getAllByRole('button').length).toBeGreaterThan(2);
    await speakIn('en');
  });
});

it('the supply: battery voltage, mean draw and minutes of play; without an alternator it says so', () => {
  const plan = feed(true);
  const { supply } = assess(plan);
  renderPanel(<SupplyList supply={supply} plan={plan} />, plan);
  expect(screen.getByText('Music draws in the mean, engine off')).toBeTruthy();
  expect(screen.getByText('Play with the engine off from battery')).toBeTruthy();
  expect(screen.getByText('No alternator is drawn: nothing is told of charging.')).toBeTruthy();
});
