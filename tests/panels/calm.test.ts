import { describe, expect, it } from 'vitest';
import { createDesk, type DeskState } from '../../src/desk/desk.ts';
import { beginGesture, commitGesture, draftGesture } from '../../src/desk/edit.ts';
import { calmOf } from '../../src/panels/calm.ts';
import { renamePlan } from '../../src/plan/edits/renamePlan.ts';
import { examplePlan } from './fixture.ts';

describe('the desk as panels hear of it', () => {
  function bench() {
    const desk = createDesk(examplePlan(), { isExample: false, bigFingers: false });
    const heard: DeskState[] = [];
    const leave = calmOf(desk).subscribe((state) => heard.push(state));
    const draft = (name: string) => draftGesture(desk, (plan) => renamePlan(plan, name));
    return { desk, heard, leave, draft };
  }

  it('tells of no frame for which there is no answer yet, and of everything else', () => {
    const { desk, heard, draft } = bench();
    beginGesture(desk, 'renamePlan');
    draft('One');
    desk.setState({ answered: desk.getState().draft });
    const before = heard.length;
    draft('Two');
    draft('Three');
    expect(heard).toHaveLength(before);
    expect(calmOf(desk).getState().draft?.name).toBe('Three');
    desk.setState({ answered: desk.getState().draft });
    expect(heard).toHaveLength(before + 1);
    desk.setState({ isBehind: true });
    expect(heard).toHaveLength(before + 2);
    commitGesture(desk);
    expect(heard.at(-1)).toMatchObject({ draft: null, plan: { name: 'Three' } });
  });

  it('tells of each frame where the page answers by itself, and of none to whoever has left', () => {
    const { desk, heard, leave, draft } = bench();
    beginGesture(desk, 'renamePlan');
    draft('One');
    const before = heard.length;
    draft('Two');
    expect(heard).toHaveLength(before + 1);
    leave();
    draft('Three');
    expect(heard).toHaveLength(before + 1);
  });

  it('is one for each desk', () => {
    const { desk } = bench();
    expect(calmOf(desk)).toBe(calmOf(desk));
    expect(calmOf(desk)).not.toBe(calmOf(bench().desk));
  });
});
