/** Small plans for tests of what is drawn and done: ids are chosen, everything else is what a new plan has. */

import { newPlan, newRun } from '../../../src/plan/create.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import { newFittingIn } from '../../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../../src/plan/outline.ts';
import type { FittingKind, Outline, Plan, RunKind } from '../../../src/plan/schema.ts';
import { terminalRef } from '../../support/terminal.ts';

export const SHEET = 'sheet';

type Spot = readonly [xM: number, yM: number];

export const VAN = { ...DEFAULT_OUTLINES.panelVan, lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 } as const;
export const BENCH = { kind: 'bench', lengthM: 2.4, widthM: 0.8 } as const;

export const emptyPlan = (outline: Outline = VAN, mirrored = false): Plan =>
  newPlan({ id: 'plan', name: 'Test plan', sheetId: SHEET, outline, mirrored });

/** A plan with fittings: [id, kind, x, y]. */
export function withFittings(plan: Plan, fittings: readonly (readonly [string, FittingKind, number, number])[]): Plan {
  return fittings.reduce(
    (made, [id, kind, xM, yM]) =>
      addFitting(made, newFittingIn(made, kind, { id, name: id, sheetId: SHEET, at: { xM, yM } })),
    plan,
  );
}

/** A plan with one run more: ends as 'fitting.terminal'. */
export function withRun(
  plan: Plan,
  id: string,
  from: string,
  to: string,
  bends: readonly Spot[] = [],
  kind: RunKind = 'power',
): Plan {
  const points = bends.map(([xM, yM]) => ({ xM, yM }));
  const ends = { from: terminalRef(from), to: terminalRef(to) };
  return addRun(plan, newRun({ id, name: '', kind, sheetId: SHEET, ...ends, bends: points }));
}

/** Battery, fuse and pass-through in a row along y = 1, 0.3 m and 0.5 m apart; then an amplifier. */
export function feedPlan(): Plan {
  const plan = withFittings(emptyPlan(), [
    ['battery', 'battery', 0.2, 1],
    ['fuse', 'fuse', 0.5, 1],
    ['grommet', 'passThrough', 1, 1],
    ['amp', 'amplifier', 3, 1],
  ]);
  const toFuse = withRun(plan, 'run1', 'battery.positive', 'fuse.in');
  const toGrommet = withRun(toFuse, 'run2', 'fuse.out', 'grommet.through');
  return withRun(toGrommet, 'run3', 'grommet.through', 'amp.supply', [[2, 0.4]]);
}
