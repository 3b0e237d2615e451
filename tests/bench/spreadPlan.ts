import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { planOfRuns } from './planOfRuns.ts';

/** The board, m. */
export const BOARD = { lengthM: 12, widthM: 5 } as const;

/** Rows above and below the middle of the board, from a share of them all, m: nothing lies over what is dragged. */
const clearOfMiddle = (share: number): number =>
  Math.round((share < 0.5 ? 3.4 * share : 1.6 + 3.4 * share) * 1e4) / 1e4;

/** A bench board of the largest size with the fittings in rows, and the main fuse in the very middle: where the pane's is. */
export function spreadPlan(fittings: number): Plan {
  const plan = planOfRuns(fittings - 1, 'auto');
  const outline = { ...DEFAULT_OUTLINES.bench, ...BOARD };
  const columns = Math.ceil(Math.sqrt((plan.fittings.length * BOARD.lengthM) / BOARD.widthM));
  const rows = Math.ceil(plan.fittings.length / columns);
  const at = (index: number) => ({
    xM: Math.round((((index % columns) + 0.5) * BOARD.lengthM * 10_000) / columns) / 10_000,
    yM: clearOfMiddle((Math.floor(index / columns) + 0.5) / rows),
  });
  return {
    ...plan,
    sheets: plan.sheets.map((sheet) => ({ ...sheet, outline })),
    fittings: plan.fittings.map((one, index) => ({ ...one, at: one.id === 'main' ? { xM: 6, yM: 2.5 } : at(index) })),
    // as drawn: with the fuse move the unprotected length, every current and every drop
    runs: plan.runs.map((run) =>
      [run.from.fittingId, run.to.fittingId].includes('main') ? { ...run, tapedM: null } : run,
    ),
  };
}
