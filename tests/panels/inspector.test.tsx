import { act, fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Desk, Selection } from '../../src/desk/desk.ts';
import { undo } from '../../src/desk/edit.ts';
import Inspector from '../../src/panels/inspector/Inspector.tsx';
import type { Fitting, Run } from '../../src/plan/schema.ts';
import { speakIn } from '../../src/words/language.ts';
import { examplePlan } from './fixture.ts';
import { renderPanel } from './render.tsx';

vi.mock('../../src/desk/answer.ts', async () => {
  const { exampleAnswer } = await import('./fixture.ts');
  return { answerOf: exampleAnswer };
});

function inspect(selection: Selection): Desk {
  const { desk } = renderPanel(<Inspector />, examplePlan());
  act(() => desk.setState({ selection }));
  return desk;
}

function type(label: string | RegExp, text: string): void {
  const field = screen.getByLabelText(label);
  fireEvent.change(field, { target: { value: text } });
  fireEvent.blur(field);
}

const fitting = (desk: Desk, id: string): Fitting | undefined =>
  desk.getState().plan.fittings.find((one) => one.id === id);
const run = (desk: Desk, id: string): Run | undefined => desk.getState().plan.runs.find((one) => one.id === id);
const depth = (desk: Desk): number => desk.temporal.getState().pastStates.length;

afterEach(() => speakIn('en'));

describe('a run', () => {
  it('takes a taped length in any unit, shows that it wins, and gives it up again', () => {
    const desk = inspect({ kind: 'run', id: 'batToFuse' });
    expect(screen.getByText(/^Drawn .* until taped\.$/)).toBeTruthy();
    type('Taped length', '5 ft 3 1/2 in');
    expect(run(desk, 'batToFuse')?.tapedM).toBe(1.6129);
    expect(depth(desk)).toBe(1);
    expect(screen.getByText(/^Taped 1\.61 m counts, not the drawn/)).toBeTruthy();
    fireEvent.click(screen.getByRole('button', { name: 'Use the drawn length again' }));
    expect(run(desk, 'batToFuse')?.tapedM).toBeNull();
  });

  it('says what is wrong with a length, keeps what was typed, and leaves the plan alone', () => {
    const desk = inspect({ kind: 'run', id: 'batToFuse' });
    const before = desk.getState().plan;
    type('Taped length', '12 furlongs');
    expect(screen.getByRole('alert').textContent).toMatch(
      /^Taped length: this is not a length\. Write it like .* kept\.$/,
    );
    expect(screen.getByLabelText<HTMLInputElement>('Taped length').value).toBe('12 furlongs');
    expect(desk.getState().plan).toBe(before);
  });

  it('writes sheath, loom, zone, rise and slack', () => {
    const desk = inspect({ kind: 'run', id: 'batToFuse' });
    fireEvent.click(screen.getByLabelText('Sheathed for its whole unprotected length'));
    fireEvent.click(screen.getByLabelText('In a loom with others'));
    fireEvent.change(screen.getByLabelText('Surroundings'), { target: { value: 'wing' } });
    type('Rise and drop', '30 cm');
    type('Slack, %', '10');
    type('Why nearer is impossible', 'The post is boxed in.');
    expect(run(desk, 'batToFuse')).toMatchObject({
      sheathed: true,
      inLoom: true,
      zone: 'wing',
      riseM: 0.3,
      slackPercent: 10,
      nearerImpossible: 'The post is boxed in.',
    });
    expect(depth(desk)).toBe(6);
  });

  it('fixes a size by hand, and tells material and class', () => {
    const desk = inspect({ kind: 'run', id: 'batToFuse' });
    fireEvent.change(screen.getByLabelText('Size'), { target: { value: 'sae:4' } });
    fireEvent.change(screen.getByLabelText(/^Insulation class/), { target: { value: '60' } });
    expect(run(desk, 'batToFuse')?.conductor).toMatchObject({
      size: 'sae:4',
      insulationC: { value: 60, origin: 'told' },
    });
  });

  it('a name made from the ends stays made until another is given', () => {
    const desk = inspect({ kind: 'run', id: 'batToFuse' });
    type('Name', 'Battery to main fuse ');
    expect(run(desk, 'batToFuse')?.name).toBe('');
    type('Name', 'Feed');
    expect(run(desk, 'batToFuse')?.name).toBe('Feed');
  });

  it('ends are moved to other terminals, and never both onto one fitting', () => {
    const desk = inspect({ kind: 'run', id: 'toRear' });
    fireEvent.change(screen.getByLabelText('From'), { target: { value: 'block.bus' } });
    expect(run(desk, 'toRear')?.from).toEqual({ fittingId: 'block', terminal: 'bus' });
    fireEvent.change(screen.getByLabelText('To'), { target: { value: 'block.out1' } });
    expect(screen.getByRole('alert').textContent).toContain('Both terminals are on one fitting.');
    expect(run(desk, 'toRear')?.to.fittingId).toBe('rear');
  });

  it('bends are added, picked, moved and removed', () => {
    const desk = inspect({ kind: 'run', id: 'passToBlock' });
    fireEvent.click(screen.getByRole('button', { name: 'Add a bend' }));
    expect(desk.getState().selection).toEqual({ kind: 'bend', id: 'passToBlock', index: 0 });
    type('From the nose', '2 m');
    type('From the right side', '20 cm');
    expect(run(desk, 'passToBlock')?.bends).toEqual([{ xM: 2, yM: 0.2 }]);
    fireEvent.click(screen.getByRole('button', { name: 'Remove this bend' }));
    expect(run(desk, 'passToBlock')?.bends).toEqual([]);
  });
});

describe('a fitting', () => {
  it('an amplifier: output, load, on-board fuses, class', () => {
    const desk = inspect({ kind: 'fitting', id: 'front' });
    type(/^Rated output/, '750');
    type(/^Load wired/, '');
    type(/^Fuses on the amplifier/, '30 30');
    type(/^Maker's largest external fuse/, '60');
    expect(fitting(desk, 'front')).toMatchObject({
      ratedW: { value: 750, origin: 'told' },
      loadOhm: null,
      onboardFusesA: [30, 30],
      externalFuseMaxA: 60,
    });
    type(/^Fuses on the amplifier/, '0');
    expect(fitting(desk, 'front')).toMatchObject({ onboardFusesA: [] });
    type(/^Fuses on the amplifier/, '');
    expect(fitting(desk, 'front')).toMatchObject({ onboardFusesA: null });
  });

  it('a fuse: fixed by hand, and worked out again', () => {
    const desk = inspect({ kind: 'fitting', id: 'mainFuse' });
    fireEvent.change(screen.getByLabelText('Rating, A'), { target: { value: 'fixed' } });
    type('Fixed at, A', '0');
    expect(screen.getByText('Fixed at, A: at least 0.5. The value before is kept.')).toBeDefined();
    type('Fixed at, A', '150');
    expect(fitting(desk, 'mainFuse')).toMatchObject({ link: { ratingA: 150, family: 'auto' } });
    fireEvent.change(screen.getByLabelText('Rating, A'), { target: { value: 'auto' } });
    expect(fitting(desk, 'mainFuse')).toMatchObject({ link: { ratingA: 'auto' } });
  });

  it('a block: outputs added, fused or not, and only removed when nothing is on them', () => {
    const desk = inspect({ kind: 'fitting', id: 'block' });
    fireEvent.click(screen.getByRole('button', { name: 'Add an output' }));
    fireEvent.click(screen.getByLabelText('Output 3 has a fuse'));
    expect(fitting(desk, 'block')).toMatchObject({ outputs: [{}, {}, { terminal: 'out3', link: null }] });
    fireEvent.click(screen.getByRole('button', { name: 'Remove output 1' }));
    expect(screen.getByRole('alert').textContent).toContain('Output 1 has a run on it.');
    fireEvent.click(screen.getByRole('button', { name: 'Remove output 3' }));
    expect(fitting(desk, 'block')).toMatchObject({ outputs: [{ terminal: 'out1' }, { terminal: 'out2' }] });
  });

  it('a battery: current, capacity, strap', () => {
    const desk = inspect({ kind: 'fitting', id: 'bat' });
    type(/^Cold cranking current/, '720');
    type(/^Length of the strap/, '16 in');
    expect(fitting(desk, 'bat')).toMatchObject({
      ccaA: { value: 720, origin: 'told' },
      strap: { lengthM: { value: 0.4064, origin: 'told' } },
    });
    fireEvent.click(screen.getByLabelText('Factory strap to the body'));
    expect(fitting(desk, 'bat')).toMatchObject({ strap: null });
  });

  it('is moved by typed lengths, and not while it is locked', () => {
    const desk = inspect({ kind: 'fitting', id: 'mainFuse' });
    type('From the nose', '62 cm');
    expect(fitting(desk, 'mainFuse')?.at).toEqual({ xM: 0.62, yM: 0.7 });
    fireEvent.click(screen.getByLabelText('Lock'));
    type('From the nose', '10 cm');
    expect(fitting(desk, 'mainFuse')?.at.xM).toBe(0.62);
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Delete' }).disabled).toBe(true);
  });

  it('is deleted at once, with a message that takes it back', () => {
    const desk = inspect({ kind: 'fitting', id: 'rear' });
    fireEvent.click(screen.getByRole('button', { name: 'Delete' }));
    expect(fitting(desk, 'rear')).toBeUndefined();
    expect(desk.getState().message).toMatchObject({ id: 'removed', of: { id: 'rear' }, undo: true });
    act(() => undo(desk));
    expect(fitting(desk, 'rear')).toBeDefined();
  });

  it('shows a name that the page gave in the language spoken, and writes only one that is typed', async () => {
    await speakIn('de');
    const desk = inspect({ kind: 'fitting', id: 'mainFuse' });
    const before = desk.getState().plan;
    const field = screen.getByLabelText<HTMLInputElement>('Name');
    expect(field.value).toBe('Hauptsicherung');
    expect(screen.getByRole('heading', { name: 'Hauptsicherung' })).toBeTruthy();
    type('Name', 'Hauptsicherung');
    // typed over and back again, and left for another thing before the field was
    fireEvent.change(field, { target: { value: 'Haupt' } });
    fireEvent.change(field, { target: { value: 'Hauptsicherung' } });
    act(() => desk.setState({ selection: { kind: 'fitting', id: 'bat' } }));
    expect(desk.getState().plan).toBe(before);
    act(() => desk.setState({ selection: { kind: 'fitting', id: 'mainFuse' } }));
    type('Name', 'Vorn');
    expect(fitting(desk, 'mainFuse')?.name).toBe('Vorn');
  });

  it('what is half typed is taken over when another thing is selected', () => {
    const desk = inspect({ kind: 'fitting', id: 'mainFuse' });
    fireEvent.change(screen.getByLabelText('Name'), { target: { value: 'Fuse at the wing' } });
    act(() => desk.setState({ selection: { kind: 'fitting', id: 'bat' } }));
    expect(fitting(desk, 'mainFuse')?.name).toBe('Fuse at the wing');
  });
});
