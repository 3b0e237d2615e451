/** Small plans for tests of the desk: a battery and an amplifier in a van, joined by one run with one bend. */
import { newPlan, newRun } from '../../src/plan/create.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { addRun } from '../../src/plan/edits/addRun.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Plan } from '../../src/plan/schema.ts';

export const emptyVan = (): Plan =>
  newPlan({ id: 'plan-1', name: 'Van', sheetId: 'sheet-1', outline: DEFAULT_OUTLINES.panelVan, mirrored: false });

export function vanWithFeed(): Plan {
  const place = (id: string, name: string, xM: number, yM: number) => ({
    id,
    name,
    sheetId: 'sheet-1',
    at: { xM, yM },
  });
  const battery = newFitting('battery', place('battery', 'Battery', 0.5, 1));
  const amplifier = newFitting('amplifier', place('amp', 'Rear amplifier', 3.5, 1));
  const feed = newRun({
    id: 'feed',
    name: 'Feed',
    kind: 'power',
    sheetId: 'sheet-1',
    from: { fittingId: 'battery', terminal: 'positive' },
    to: { fittingId: 'amp', terminal: 'supply' },
    bends: [{ xM: 2, yM: 0.5 }],
  });
  return addRun(addFitting(addFitting(emptyVan(), battery), amplifier), feed);
}
