import { describe, expect, it } from 'vitest';
import { createDesk, type DeskState } from '../../src/desk/desk.ts';
import { beginGesture, commitGesture, draftGesture } from '../../src/desk/edit.ts';
import { calm, calmOf } from '../../src/panels/calm.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { examplePlan } from './fixture.ts';

describe('the desk as panels hear of it', () => {
  function bench() {
    const desk = createDesk(examplePlan(), { isExample: false, bigFingers: false });
    const heard: DeskState[] = [];
    const jobs = new Set<() => void>();
    const panels = calm(desk, (job) => {
      jobs.add(job);
      return () => jobs.delete(job);
    });
    const leave = panels.subscribe((state, before) => {
      // what it heard last is what it is told from
      expect(before).toBe(heard.at(-1) ?? first);
      heard.push(state);
    });
    const first = desk.getState();
    const frame = () => {
      const due = [...jobs];
      jobs.clear();
      for (const job of due) job();
    };
    const draft = (name: string) => draftGesture(desk, (plan) => renamePlan(plan, name));
    return { desk, heard, panels, leave, draft, frame };
  }

  it('tells of no frame for which there is no answer yet, and of everything else with the next frame', () => {
    const { desk, heard, panels, draft, frame } = bench();
    beginGesture(desk, 'renamePlan');
    draft('One');
    desk.setState({ answered: desk.getState().draft });
    frame();
    const before = heard.length;
    draft('Two');
    draft('Three');
    frame();
    expect(heard).toHaveLength(before);
    expect(panels.getState().draft?.name).toBe('Three');
    desk.setState({ answered: desk.getState().draft });
    desk.setState({ isBehind: true });
    expect(heard).toHaveLength(before);
    frame();
    expect(heard).toHaveLength(before + 1);
    expect(heard.at(-1)).toBe(desk.getState());
    // what is done at once takes along what waited for the frame
    desk.setState({ isBehind: false });
    commitGesture(desk);
    expect(heard).toHaveLength(before + 2);
    frame();
    expect(heard).toHaveLength(before + 2);
    expect(heard.at(-1)).toMatchObject({ draft: null, plan: { name: 'Three' } });
  });

  it('tells of each frame where the page answers by itself, and of none to whoever has left', () => {
    const { desk, heard, leave, draft, frame } = bench();
    beginGesture(desk, 'renamePlan');
    draft('One');
    frame();
    const before = heard.length;
    draft('Two');
    frame();
    expect(heard).toHaveLength(before + 1);
    leave();
    draft('Three');
    frame();
    expect(heard).toHaveLength(before + 1);
  });

  it('is one for each desk', () => {
    const { desk } = bench();
    expect(calmOf(desk)).toBe(calmOf(desk));
    expect(calmOf(desk)).not.toBe(calmOf(bench().desk));
  });
});
