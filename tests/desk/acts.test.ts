import { describe, expect, it } from 'vitest';
import type { Act } from '../../src/desk/acts/act.ts';
import { ACTS } from '../../src/desk/acts/all.ts';
import { runAct } from '../../src/desk/acts/index.ts';
import { startPlan } from '../../src/desk/acts/startPlan.ts';
import { createDesk, type Desk } from '../../src/desk/desk.ts';
import { beginGesture, commit, draftGesture, undoDepth } from '../../src/desk/edit.ts';
import { select } from '../../src/desk/selection.ts';
import { changeFitting } from '../../src/plan/edits/changeFitting.ts';
import { changeRun } from '../../src/plan/edits/changeRun.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { splitRun } from '../../src/plan/edits/splitRun.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import { savePlan } from '../../src/plan/save.ts';
import { emptyVan, vanWithFeed } from './plans.ts';

const newDesk = () => createDesk(vanWithFeed(), { isExample: false, bigFingers: false });

function actOf(id: string): Act {
  const act = ACTS.find((candidate) => candidate.id === id);
  if (act === undefined) throw new Error(`no act ${id}`);
  return act;
}

const run = (desk: Desk, id: string) => runAct(desk, actOf(id));
const ampAt = (desk: Desk) => desk.getState().plan.fittings.find(({ id }) => id === 'amp')?.at;

describe('moving by arrow keys', () => {
  it.each([
    ['nudge:ArrowLeft', 3.49, 1],
    ['nudge:ArrowRight', 3.51, 1],
    ['nudge:ArrowUp', 3.5, 0.99],
    ['nudge:ArrowDown', 3.5, 1.01],
    ['nudge:Shift+ArrowLeft', 3.4, 1],
    ['nudge:Alt+ArrowDown', 3.5, 1.001],
  ])('%s moves the selected fitting to %d, %d', (id, xM, yM) => {
    const desk = newDesk();
    select(desk, { kind: 'fitting', id: 'amp' });
    expect(run(desk, id)).toBe(true);
    expect(ampAt(desk)).toEqual({ xM, yM });
    expect(undoDepth(desk)).toBe(1);
  });

  it('moves a selected bend, each press a step', () => {
    const desk = newDesk();
    select(desk, { kind: 'bend', id: 'feed', index: 0 });
    for (let n = 0; n < 3; n += 1) run(desk, 'nudge:ArrowDown');
    expect(desk.getState().plan.runs[0]?.bends).toEqual([{ xM: 2, yM: 0.53 }]);
    expect(undoDepth(desk)).toBe(3);
  });

  it('may not run with nothing, a whole run or something locked selected', () => {
    const desk = newDesk();
    expect(run(desk, 'nudge:ArrowLeft')).toBe(false);
    select(desk, { kind: 'run', id: 'feed' });
    expect(run(desk, 'nudge:ArrowLeft')).toBe(false);
    commit(desk, 'lock', (plan) => changeFitting(plan, 'amp', { locked: true }));
    select(desk, { kind: 'fitting', id: 'amp' });
    expect(run(desk, 'nudge:ArrowLeft')).toBe(false);
  });
});

describe('deleting', () => {
  it('takes a fitting away at once and offers to take that back', () => {
    const desk = newDesk();
    const { plan } = desk.getState();
    const before = savePlan(plan);
    select(desk, { kind: 'fitting', id: 'amp' });
    expect(run(desk, 'remove')).toBe(true);
    expect(desk.getState().plan.fittings.map(({ id }) => id)).toEqual(['battery']);
    expect(desk.getState().message).toEqual({ id: 'removed', params: {}, of: { plan, id: 'amp' }, undo: true });
    run(desk, 'undo');
    expect(savePlan(desk.getState().plan)).toBe(before);
    expect(desk.getState().message).toBeNull();
  });

  it('says what one cable becomes of two unlike ones', () => {
    const desk = newDesk();
    const where = { id: 'reducer', name: 'Reducer', sheetId: 'sheet-1', at: { xM: 2, yM: 0.5 } };
    commit(desk, 'split', (plan) => splitRun(plan, 'feed', where.at, newFitting('reducer', where), 'thin'));
    const size = (id: string, gauge: string) =>
      commit(desk, 'size', (plan) => {
        const conductor = plan.runs.find((one) => one.id === id)?.conductor;
        return conductor === undefined ? plan : changeRun(plan, id, { conductor: { ...conductor, size: gauge } });
      });
    size('feed', 'sae:1/0');
    size('thin', 'sae:8');
    const { plan } = desk.getState();
    select(desk, { kind: 'fitting', id: 'reducer' });
    run(desk, 'remove');
    expect(desk.getState().plan.runs.map(({ conductor }) => conductor.size)).toEqual(['sae:1/0']);
    const { message } = desk.getState();
    expect(message).toEqual({ id: 'joined', params: { size: 'sae:1/0' }, of: { plan, id: 'reducer' }, undo: true });
  });

  it('takes a bend away and leaves its run selected', () => {
    const desk = newDesk();
    select(desk, { kind: 'bend', id: 'feed', index: 0 });
    run(desk, 'remove');
    expect(desk.getState().plan.runs[0]?.bends).toEqual([]);
    expect(desk.getState().selection).toEqual({ kind: 'run', id: 'feed' });
  });

  it('takes a run away', () => {
    const desk = newDesk();
    const { plan } = desk.getState();
    select(desk, { kind: 'run', id: 'feed' });
    run(desk, 'remove');
    expect(desk.getState().plan.runs).toEqual([]);
    expect(desk.getState().message?.of).toEqual({ plan, id: 'feed' });
  });

  it('leaves what is locked', () => {
    const desk = newDesk();
    select(desk, { kind: 'run', id: 'feed' });
    run(desk, 'lock');
    expect(run(desk, 'remove')).toBe(false);
    run(desk, 'lock');
    expect(run(desk, 'remove')).toBe(true);
  });
});

describe('locking', () => {
  it('goes by what is selected, and a bend by its run', () => {
    const desk = newDesk();
    select(desk, { kind: 'bend', id: 'feed', index: 0 });
    run(desk, 'lock');
    expect(desk.getState().plan.runs[0]?.locked).toBe(true);
    select(desk, { kind: 'fitting', id: 'amp' });
    run(desk, 'lock');
    expect(desk.getState().plan.fittings.find(({ id }) => id === 'amp')?.locked).toBe(true);
  });
});

describe('adding a bend', () => {
  it('puts it in the middle of the longest straight piece and selects it', () => {
    const desk = newDesk();
    select(desk, { kind: 'run', id: 'feed' });
    // battery (0.5, 1), bend (2, 0.5), amplifier (3.5, 1): two pieces of one length, the first is taken
    run(desk, 'addBend');
    expect(desk.getState().plan.runs[0]?.bends).toEqual([
      { xM: 1.25, yM: 0.75 },
      { xM: 2, yM: 0.5 },
    ]);
    expect(desk.getState().selection).toEqual({ kind: 'bend', id: 'feed', index: 0 });
    // now the piece from the old bend to the amplifier is the longest
    run(desk, 'addBend');
    expect(desk.getState().plan.runs[0]?.bends[2]).toEqual({ xM: 2.75, yM: 0.75 });
    expect(desk.getState().selection).toEqual({ kind: 'bend', id: 'feed', index: 2 });
  });

  it('may not run on a fitting, nor on a locked run', () => {
    const desk = newDesk();
    select(desk, { kind: 'fitting', id: 'amp' });
    expect(run(desk, 'addBend')).toBe(false);
    select(desk, { kind: 'run', id: 'feed' });
    run(desk, 'lock');
    expect(run(desk, 'addBend')).toBe(false);
  });
});

describe('selecting by keys', () => {
  it('goes round fittings, then runs, and is no step of history', () => {
    const desk = newDesk();
    const seen = ['selectNext', 'selectNext', 'selectNext', 'selectNext', 'selectPrevious'].map((id) => {
      run(desk, id);
      return desk.getState().selection?.id;
    });
    expect(seen).toEqual(['battery', 'amp', 'feed', 'battery', 'feed']);
    expect(undoDepth(desk)).toBe(0);
  });

  it('begins at the end when it goes backwards', () => {
    const desk = newDesk();
    run(desk, 'selectPrevious');
    expect(desk.getState().selection).toEqual({ kind: 'run', id: 'feed' });
  });
});

describe('the hand', () => {
  it('is taken up by its acts, one for each kind of fitting', () => {
    const desk = newDesk();
    run(desk, 'handRun');
    expect(desk.getState().hand).toEqual({ way: 'run' });
    run(desk, 'place:ground');
    expect(desk.getState().hand).toEqual({ way: 'place', fitting: 'ground' });
    run(desk, 'handMove');
    expect(desk.getState().hand).toEqual({ way: 'move' });
  });

  it('changing drops a gesture', () => {
    const desk = newDesk();
    beginGesture(desk, 'move');
    run(desk, 'handRun');
    expect(desk.getState().gesture).toBeNull();
  });

  it('steps back by Escape: out of a gesture, then to moving, then out of the selection', () => {
    const desk = newDesk();
    select(desk, { kind: 'fitting', id: 'amp' });
    desk.setState({ hand: { way: 'run' } });
    beginGesture(desk, 'connect');
    draftGesture(desk, (plan) => moveFitting(plan, 'amp', { xM: 1, yM: 1 }));
    run(desk, 'stepBack');
    expect(desk.getState()).toMatchObject({ gesture: null, draft: null, hand: { way: 'run' } });
    run(desk, 'stepBack');
    expect(desk.getState()).toMatchObject({ hand: { way: 'move' }, selection: { id: 'amp' } });
    run(desk, 'stepBack');
    expect(desk.getState().selection).toBeNull();
    expect(run(desk, 'stepBack')).toBe(false);
  });
});

describe('the view', () => {
  const camera = { sheetId: 'sheet-1', centreXM: 2, centreYM: 1, pxPerM: 100 };

  it('is zoomed in the pane last worked in, and fitted anew', () => {
    const desk = newDesk();
    expect(run(desk, 'zoomIn')).toBe(false);
    desk.setState({ cameras: { whole: camera, bay: camera } });
    run(desk, 'swapPane');
    run(desk, 'zoomIn');
    expect(desk.getState().cameras.bay?.pxPerM).toBeCloseTo(140, 9);
    expect(desk.getState().cameras.whole).toEqual(camera);
    run(desk, 'zoomFit');
    expect(desk.getState().cameras).toEqual({ whole: camera, bay: null });
  });

  it('stops at the ends of the scale', () => {
    const desk = newDesk();
    desk.setState({ cameras: { whole: camera, bay: null } });
    let presses = 0;
    while (run(desk, 'zoomOut') && presses < 100) presses += 1;
    expect(desk.getState().cameras.whole?.pxPerM).toBe(10);
    while (run(desk, 'zoomIn') && presses < 200) presses += 1;
    expect(desk.getState().cameras.whole?.pxPerM).toBe(8000);
    expect(undoDepth(desk)).toBe(0);
  });

  it('switches snapping and big fingers', () => {
    const desk = newDesk();
    run(desk, 'toggleSnap');
    run(desk, 'toggleBigFingers');
    expect(desk.getState()).toMatchObject({ snap: false, bigFingers: true });
  });
});

describe('the plan', () => {
  it('mirrored twice is the same bytes', () => {
    const desk = newDesk();
    const before = savePlan(desk.getState().plan);
    run(desk, 'mirror');
    expect(desk.getState().plan.sheets[0]?.mirrored).toBe(true);
    expect(savePlan(desk.getState().plan)).not.toBe(before);
    run(desk, 'mirror');
    expect(savePlan(desk.getState().plan)).toBe(before);
  });

  it('started anew is empty, with ids of its own and no history', () => {
    const desk = createDesk(emptyVan(), { isExample: true, bigFingers: false });
    startPlan(desk, { name: 'Bench', outline: DEFAULT_OUTLINES.bench, mirrored: false });
    const { plan, isExample } = desk.getState();
    expect(plan).toMatchObject({ name: 'Bench', fittings: [], runs: [], sheets: [{ outline: { kind: 'bench' } }] });
    expect(plan.id).not.toBe('plan-1');
    expect(isExample).toBe(false);
    expect(undoDepth(desk)).toBe(0);
  });
});
