/** A point of a cable that is on two sheets. */
import { describe, expect, it } from 'vitest';
import { newRun, newSheet } from '../../../src/plan/create.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import { mirrorSheet } from '../../../src/plan/edits/mirrorSheet.ts';
import { moveFitting } from '../../../src/plan/edits/moveFitting.ts';
import { removeFitting } from '../../../src/plan/edits/removeFitting.ts';
import { newFitting } from '../../../src/plan/newFitting.ts';
import { placeOn, runPoints } from '../../../src/plan/runs.ts';
import type { FittingOf, Plan } from '../../../src/plan/schema.ts';
import { terminalRef } from '../../support/terminal.ts';
import { at, emptyVan } from '../support/samplePlan.ts';

const lay = (plan: Plan, id: string, sheetId: string, from: string, to: string) =>
  addRun(
    plan,
    newRun({
      ...{ id, name: '', kind: 'power', sheetId, bends: [] },
      ...{ from: terminalRef(from), to: terminalRef(to) },
    }),
  );

const point = (other: FittingOf<'continuation'>['other']): FittingOf<'continuation'> => ({
  ...newFitting('continuation', { id: 'on', name: 'On', sheetId: 'sheet', at: at(1.5, 1.2) }),
  other,
});

/** A van whose cargo is a sheet of its own, seen from the side; the feed goes on there. */
function twoSheets(): Plan {
  const van = emptyVan();
  const [outline] = van.sheets.map((sheet) => sheet.outline);
  if (outline === undefined) throw new Error('A van has a sheet');
  const side = newSheet({ id: 'side', name: 'Side', outline, mirrored: false, part: 'cargo', view: 'side' });
  let plan: Plan = { ...van, sheets: [...van.sheets, side] };
  plan = addFitting(plan, newFitting('battery', { id: 'battery', name: '', sheetId: 'sheet', at: at(0.5, 1.2) }));
  plan = addFitting(plan, newFitting('amplifier', { id: 'amp', name: '', sheetId: 'side', at: at(3.5, 1) }));
  plan = addFitting(plan, point({ sheetId: 'side', at: at(2.5, 1) }));
  plan = lay(plan, 'first', 'sheet', 'battery.positive', 'on.through');
  return lay(plan, 'second', 'side', 'on.through', 'amp.supply');
}

describe('a continuation point', () => {
  it('stands on either sheet, and runs of both end at it', () => {
    const plan = twoSheets();
    const [on] = plan.fittings.filter(({ kind }) => kind === 'continuation');
    if (on === undefined) throw new Error('It is there');
    expect([placeOn(on, 'sheet'), placeOn(on, 'side'), placeOn(on, 'none')]).toEqual([at(1.5, 1.2), at(2.5, 1), null]);
    expect(plan.runs.map((run) => runPoints(plan, run))).toEqual([
      [at(0.5, 1.2), at(1.5, 1.2)],
      [at(2.5, 1), at(3.5, 1)],
    ]);
  });

  it('is refused on one sheet twice, and on a sheet that is not there', () => {
    const van = emptyVan();
    expect(addFitting(van, point({ sheetId: 'sheet', at: at(1, 1) }))).toBe(van);
    expect(addFitting(van, point({ sheetId: 'none', at: at(1, 1) }))).toBe(van);
  });

  it('moves on the sheet that is named, and stays where it is on the other', () => {
    const plan = twoSheets();
    const placesOf = (moved: Plan) =>
      moved.fittings.flatMap((one) => (one.kind === 'continuation' ? [one.at, one.other.at] : []));
    expect(placesOf(moveFitting(plan, 'on', at(1.7, 1), 'sheet'))).toEqual([at(1.7, 1), at(2.5, 1)]);
    expect(placesOf(moveFitting(plan, 'on', at(2.8, 0.7), 'side'))).toEqual([at(1.5, 1.2), at(2.8, 0.7)]);
  });

  it('changes sides with the sheet from above only: from the side heights stay', () => {
    const plan = twoSheets();
    const both = mirrorSheet(mirrorSheet(plan, 'sheet'), 'side');
    const [on] = both.fittings.filter(({ kind }) => kind === 'continuation');
    expect(on).toMatchObject({ at: at(1.5, 0.6), other: { at: at(2.5, 1) } });
    expect(both.sheets.every(({ mirrored }) => mirrored)).toBe(true);
    expect(mirrorSheet(mirrorSheet(both, 'sheet'), 'side')).toEqual(plan);
  });

  it('takes the runs of both sheets with it: there is no one run to be had', () => {
    expect(removeFitting(twoSheets(), 'on').runs).toEqual([]);
  });

  it('lets no run end at what is on another sheet only', () => {
    const plan = twoSheets();
    expect(lay(plan, 'third', 'sheet', 'battery.positive', 'amp.supply')).toBe(plan);
  });
});
