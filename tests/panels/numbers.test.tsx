import { act, cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Desk } from '../../src/desk/desk.ts';
import Inspector from '../../src/panels/inspector/Inspector.tsx';
import { SettingInputs } from '../../src/panels/topbar/SettingInputs.tsx';
import { AssumptionField } from '../../src/panels/why/AssumptionField.tsx';
import { drawnLengthOf, drawnM } from '../../src/plan/drawnLength.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { speakIn } from '../../src/words/language.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', async () => {
  const { exampleAnswer } = await import('./fixture.ts');
  return { answerOf: exampleAnswer };
});

function inspect(kind: 'fitting' | 'run', id: string, plan: Plan = examplePlan()): Desk {
  const { desk } = renderPanel(<Inspector />, plan);
  act(() => desk.setState({ selection: { kind, id } }));
  return desk;
}
const type = (label: RegExp, text: string) => {
  const field = screen.getByLabelText(label);
  fireEvent.change(field, { target: { value: text } });
  fireEvent.blur(field);
};
const amplifier = (desk: Desk) => {
  const found = desk.getState().plan.fittings.find(({ id }) => id === 'front');
  return found?.kind === 'amplifier' ? found : undefined;
};
const runOf = (desk: Desk, id: string) => desk.getState().plan.runs.find((run) => run.id === id);

afterEach(() => speakIn('en'));

describe('a number is never taken a thousandfold too small', () => {
  const RATED = /^Rated output/;

  it('a thousand as English writes it, and in kilowatts', async () => {
    const desk = inspect('fitting', 'front');
    type(RATED, '1,000');
    expect(amplifier(desk)?.ratedW?.value).toBe(1000);
    type(RATED, '1.2 kW');
    expect(amplifier(desk)?.ratedW?.value).toBe(1200);
  });

  it('asks where a thousand and one are both possible, naming both', async () => {
    const desk = inspect('fitting', 'front');
    const before = amplifier(desk)?.ratedW?.value;
    type(RATED, '1.000');
    const said = screen.getByRole('alert').textContent;
    expect(said).toContain("is '1.000' meant as 1000 or as 1? Write it one of these two ways.");
    expect(said).toContain('The value before is kept.');
    expect(amplifier(desk)?.ratedW?.value).toBe(before);
  });

  it('says what does not fit the field', async () => {
    inspect('fitting', 'front');
    type(RATED, '60 A');
    expect(screen.getByRole('alert').textContent).toContain('W: that is another unit. Give the figure in W.');
  });

  it('knows the unit of a field whose label names none', () => {
    const desk = inspect('fitting', 'mainFuse');
    fireEvent.change(screen.getByLabelText('Rating, A'), { target: { value: 'fixed' } });
    type(/^Fixed at/, '0.15 kA');
    expect(desk.getState().plan.fittings.find(({ id }) => id === 'mainFuse')).toMatchObject({ link: { ratingA: 150 } });
    cleanup();
    const { desk: settings } = renderPanel(<SettingInputs legend="Temperatures, °C" names={['bayC']} />, examplePlan());
    type(/^Engine bay/, '85 °C');
    expect(settings.getState().plan.settings.bayC.value).toBe(85);
    cleanup();
    const { desk: assumed } = renderPanel(<AssumptionField path="settings.bodyOhm" value={0.001} />, examplePlan());
    type(/^body resistance/, '2 mΩ');
    expect(assumed.getState().plan.settings.bodyOhm.value).toBe(0.002);
    type(/^body resistance/, '2 V');
    expect(screen.getByRole('alert').textContent).toContain('Give the figure in Ω.');
  });

  it('speaks of no value before where there was none', async () => {
    inspect('fitting', 'front');
    type(RATED, '');
    type(RATED, 'a lot');
    expect(screen.getByRole('alert').textContent).toContain('this is not a number.');
    expect(screen.getByRole('alert').textContent).not.toContain('The value before');
  });

  it('in German a point groups, a comma is in doubt, and figures are shown with a comma', async () => {
    await speakIn('de');
    const desk = inspect('fitting', 'front');
    type(/^Nennleistung/, '1.000');
    expect(amplifier(desk)?.ratedW?.value).toBe(1000);
    type(/^Nennleistung/, '1,000');
    expect(screen.getByRole('alert').textContent).toContain('ist mit „1,000“ 1000 oder 1 gemeint?');
    type(/^Nennleistung/, '1 250,5');
    expect(screen.getByLabelText<HTMLInputElement>(/^Nennleistung/).value).toBe('1250,5');
    expect(amplifier(desk)?.ratedW?.value).toBe(1250.5);
  });

  it('ratings on the amplifier are no fractions', async () => {
    const desk = inspect('fitting', 'front');
    for (const text of ['30/30', '30,30', '30 + 30', '30 A, 30 A']) {
      type(/^Fuses on the amplifier/, '');
      type(/^Fuses on the amplifier/, text);
      expect(amplifier(desk)?.onboardFusesA).toEqual([30, 30]);
    }
    type(/^Fuses on the amplifier/, '30.30');
    expect(screen.getByRole('alert').textContent).toContain("is '30.30' meant as 30 + 30 or as 30.3?");
    expect(amplifier(desk)?.onboardFusesA).toEqual([30, 30]);
  });
});

describe('a tape a hundredfold too long, or tenfold too short', () => {
  const drawn = (plan: Plan) => {
    const run = plan.runs.find(({ id }) => id === 'toRear');
    if (run === undefined) throw new Error('the example has that run');
    return drawnM(drawnLengthOf(plan, run));
  };
  /** Taped at so many times the drawn length; m where lengths are in metres, else feet. */
  const taped = (times: number, showLength: 'm' | 'ft-in' = 'm') => {
    const plan = examplePlan();
    const shown = { ...plan, settings: { ...plan.settings, showLength } };
    return changeRun(shown, 'toRear', { tapedM: drawn(plan) * times });
  };

  it('asks whether centimetres were meant, and takes them with one tap', async () => {
    const plan = taped(110);
    const desk = inspect('run', 'toRear', plan);
    const meant = screen.getByRole('button', { name: /^Take .* cm$|^Take .* m$/ });
    expect(meant.closest('[role="status"]')?.textContent).toContain('Did you mean');
    fireEvent.click(meant);
    expect(runOf(desk, 'toRear')?.tapedM).toBeCloseTo(drawn(plan) * 1.1, 3);
    expect(screen.queryByRole('button', { name: /^Take / })).toBeNull();
  });

  it('asks the same of feet and inches', async () => {
    const plan = taped(12.5, 'ft-in');
    const desk = inspect('run', 'toRear', plan);
    fireEvent.click(screen.getByRole('button', { name: /^Take / }));
    expect(runOf(desk, 'toRear')?.tapedM).toBeCloseTo((drawn(plan) * 12.5) / 12, 3);
  });

  it.each([
    [0.11, 1.1, 'm'],
    [0.011, 1.1, 'm'],
    [1 / 12, 1, 'ft-in'],
  ] as const)('asks at %d times the drawn length whether %d times was meant, in %s', (times, meant, showLength) => {
    const plan = taped(times, showLength);
    const desk = inspect('run', 'toRear', plan);
    fireEvent.click(screen.getByRole('button', { name: /^Take / }));
    expect(runOf(desk, 'toRear')?.tapedM).toBeCloseTo(drawn(plan) * meant, 2);
    expect(screen.queryByRole('button', { name: /^Take / })).toBeNull();
  });

  // a hundredth of it, or a twelfth, would be far from what is drawn, or the tape is near it as it stands
  it.each([
    [0.21, 'm'],
    [0.03, 'm'],
    [1.5, 'm'],
    [4.9, 'm'],
    [20, 'm'],
    [210, 'm'],
    [49, 'm'],
    [4.9, 'ft-in'],
    [25, 'ft-in'],
  ] as const)('asks nothing at %d times the drawn length in %s', (times, showLength) => {
    inspect('run', 'toRear', taped(times, showLength));
    screen.getByLabelText(/^Taped length/);
    expect(screen.queryByRole('button', { name: /^Take / })).toBeNull();
  });
});
