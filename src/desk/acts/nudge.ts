import { fittingById } from '../../plan/byId.ts';
import { moveBend } from '../../plan/edits/moveBend.ts';
import { moveFitting } from '../../plan/edits/moveFitting.ts';
import { placeOn } from '../../plan/runs.ts';
import type { Plan, Point } from '../../plan/schema.ts';
import type { Desk, DeskState } from '../desk.ts';
import { commit } from '../edit.ts';
import { openSheet } from '../openSheet.ts';
import { isLocked } from '../selection.ts';
import { wholePlan } from '../whole.ts';
import type { Act } from './act.ts';

const DIRECTIONS = [
  { key: 'ArrowLeft', dx: -1, dy: 0 },
  { key: 'ArrowRight', dx: 1, dy: 0 },
  { key: 'ArrowUp', dx: 0, dy: -1 },
  { key: 'ArrowDown', dx: 0, dy: 1 },
] as const;

/** Metres per press: a centimetre, a hand's breadth, a hair. */
const STEPS = [
  { prefix: '', stepM: 0.01 },
  { prefix: 'Shift+', stepM: 0.1 },
  { prefix: 'Alt+', stepM: 0.001 },
] as const;

function placeOfFitting(plan: Plan, id: string, sheetId: string): Point | null {
  const fitting = fittingById(plan, id);
  // what is on another sheet is not seen, and not moved unseen
  return fitting === undefined ? null : placeOn(fitting, sheetId);
}

/** The fitting or bend that arrow keys would move; a run as a whole has no place of its own. */
function movable({ selection, ...state }: DeskState): Point | null {
  const plan = wholePlan(state);
  if (selection === null || isLocked(plan, selection)) return null;
  if (selection.kind === 'fitting') return placeOfFitting(plan, selection.id, openSheet(state).id);
  if (selection.kind === 'run') return null;
  return plan.runs.find(({ id }) => id === selection.id)?.bends[selection.index] ?? null;
}

/** Moves the selected fitting or bend; every press is a step of history. */
function nudgeBy(desk: Desk, dxM: number, dyM: number): void {
  const state = desk.getState();
  const { selection } = state;
  const at = movable(state);
  if (at === null || selection === null) return;
  const to = { xM: at.xM + dxM, yM: at.yM + dyM };
  commit(desk, 'nudge', (before) =>
    selection.kind === 'bend'
      ? moveBend(before, selection.id, selection.index, to)
      : moveFitting(before, selection.id, to, openSheet(state).id),
  );
}

export const nudges: readonly Act[] = STEPS.flatMap(({ prefix, stepM }) =>
  DIRECTIONS.map(({ key, dx, dy }) => ({
    id: `nudge:${prefix}${key}`,
    keys: [`${prefix}${key}`],
    repeats: true,
    allowed: (state) => movable(state) !== null,
    run: (desk) => nudgeBy(desk, dx * stepM, dy * stepM),
  })),
);
