import { addBend } from '../../plan/edits/addBend.ts';
import { runPoints } from '../../plan/runs.ts';
import { MAX_BENDS, type Plan, type Point, type Run } from '../../plan/schema.ts';
import type { DeskState } from '../desk.ts';
import { commit } from '../edit.ts';
import { wholePlan } from '../whole.ts';
import type { Act } from './act.ts';

function runOf({ selection, ...state }: DeskState): Run | undefined {
  if (selection === null || selection.kind === 'fitting') return undefined;
  return wholePlan(state).runs.find(({ id }) => id === selection.id);
}

/** Where a new bend bears most: the middle of the longest straight piece, and its index among the bends. */
function middleOfLongest(plan: Plan, run: Run): { index: number; at: Point } | null {
  const points = runPoints(plan, run);
  let longest: { index: number; at: Point; lengthM: number } | null = null;
  for (const [index, start] of points.entries()) {
    const end = points[index + 1];
    if (end === undefined) break;
    const lengthM = Math.hypot(end.xM - start.xM, end.yM - start.yM);
    const at = { xM: (start.xM + end.xM) / 2, yM: (start.yM + end.yM) / 2 };
    if (longest === null || lengthM > longest.lengthM) longest = { index, at, lengthM };
  }
  return longest;
}

/** Adds a bend to the selected run, in the middle of its longest straight piece, and selects it to be moved. */
export const addBendAct: Act = {
  id: 'addBend',
  keys: ['Insert'],
  allowed: (state) => {
    const run = runOf(state);
    return run !== undefined && !run.locked && run.bends.length < MAX_BENDS;
  },
  run: (desk) => {
    const run = runOf(desk.getState());
    if (run === undefined) return;
    const place = middleOfLongest(wholePlan(desk.getState()), run);
    if (place === null) return;
    const selection = { kind: 'bend', id: run.id, index: place.index } as const;
    commit(desk, 'addBend', (before) => addBend(before, run.id, place.index, place.at), { selection });
  },
};
