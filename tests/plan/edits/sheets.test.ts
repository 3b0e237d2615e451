/** Sheets come and go with what is on them. */
import { describe, expect, it } from 'vitest';
import { newRun, newSheet } from '../../../src/plan/create.ts';
import { addContinuation } from '../../../src/plan/edits/addContinuation.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import { addSheet } from '../../../src/plan/edits/addSheet.ts';
import { changeFitting } from '../../../src/plan/edits/changeFitting.ts';
import { changeOutline, sheetsOfVehicle } from '../../../src/plan/edits/changeOutline.ts';
import { changeRun } from '../../../src/plan/edits/changeRun.ts';
import { changeSheet } from '../../../src/plan/edits/changeSheet.ts';
import { continueRun } from '../../../src/plan/edits/continueRun.ts';
import { removeSheet } from '../../../src/plan/edits/removeSheet.ts';
import { newFitting } from '../../../src/plan/newFitting.ts';
import { openPlan } from '../../../src/plan/open.ts';
import { DEFAULT_OUTLINES } from '../../../src/plan/outline.ts';
import { ownFrom } from '../../../src/plan/ownOutline.ts';
import { sharedSheet } from '../../../src/plan/runs.ts';
import { savePlan } from '../../../src/plan/save.ts';
import { MAX_BENDS, MAX_SHEETS, type Outline, type Plan, type Sheet } from '../../../src/plan/schema.ts';
import { terminalRef } from '../../support/terminal.ts';
import { at, emptyVan } from '../support/samplePlan.ts';

const outlineOf = (plan: Plan): Outline => {
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('A plan has a sheet');
  return sheet.outline;
};
const sideOf = (plan: Plan, id = 'side'): Sheet =>
  newSheet({ id, name: 'Side', outline: outlineOf(plan), mirrored: false, part: 'cargo', view: 'side' });

const FROM = { sheetId: 'sheet', at: at(1.5, 1.2) };
const TO = { sheetId: 'side', at: at(1.5, 0.9) };
const POINT = { id: 'on', name: 'On', from: FROM, to: TO };
const RUN = { id: 'first', name: '', kind: 'power', from: terminalRef('battery.positive'), bends: [at(1, 1)] } as const;

/** A battery on the first sheet, a second sheet from the side with an amplifier, nothing joined. */
function twoSheets(): Plan {
  let plan = addSheet(emptyVan(), sideOf(emptyVan()));
  plan = addFitting(plan, newFitting('battery', { id: 'battery', name: '', sheetId: 'sheet', at: at(0.5, 1.2) }));
  return addFitting(plan, newFitting('amplifier', { id: 'amp', name: '', sheetId: 'side', at: at(3.5, 1) }));
}
/** The same, with the feed going on from one to the other. */
function joined(): Plan {
  const ends = { from: terminalRef('on.through'), to: terminalRef('amp.supply') };
  const second = newRun({ id: 'second', name: '', kind: 'power', sheetId: 'side', bends: [], ...ends });
  return addRun(continueRun(twoSheets(), RUN, POINT), second);
}
const idsOf = (plan: Plan) => [...plan.sheets, ...plan.fittings, ...plan.runs].map(({ id }) => id);

describe('a sheet', () => {
  it('is added behind the others, and the plan opens again', () => {
    const plan = twoSheets();
    expect(plan.sheets.map(({ id, part, view }) => [id, part, view])).toEqual([
      ['sheet', 'whole', 'above'],
      ['side', 'cargo', 'side'],
    ]);
    expect(openPlan(savePlan(joined()))).toMatchObject({ ok: true, plan: joined() });
  });

  it('is refused with an id in use, with bad sizes, and beyond the most there may be', () => {
    const van = emptyVan();
    expect(addSheet(van, sideOf(van, 'sheet'))).toBe(van);
    expect(addSheet(van, { ...sideOf(van), outline: { kind: 'bench', lengthM: 99, widthM: 1 } })).toBe(van);
    const full = { ...van, sheets: Array.from({ length: MAX_SHEETS }, (_, i) => sideOf(van, `s${i}`)) };
    expect(addSheet(full, sideOf(van, 'more'))).toBe(full);
  });

  it('takes what is on it with it, and points that lead to it with their runs', () => {
    expect(idsOf(removeSheet(joined(), 'side'))).toEqual(['sheet', 'battery']);
    expect(idsOf(removeSheet(joined(), 'sheet'))).toEqual(['side', 'amp']);
    const { areas } = removeSheet(
      {
        ...joined(),
        areas: [{ id: 'area', name: '', sheetId: 'side', zone: 'hot', outline: [at(0, 0), at(1, 0), at(0, 1)] }],
      },
      'side',
    );
    expect(areas).toEqual([]);
    expect(openPlan(savePlan(removeSheet(joined(), 'side'))).ok).toBe(true);
  });

  it('stays when it is the last, not there, or would take something locked with it', () => {
    const van = emptyVan();
    expect(removeSheet(van, 'sheet')).toBe(van);
    const plan = joined();
    expect(removeSheet(plan, 'none')).toBe(plan);
    for (const locked of [
      changeFitting(plan, 'amp', { locked: true }),
      changeFitting(plan, 'on', { locked: true }),
      changeRun(plan, 'second', { locked: true }),
      // on the other sheet, but it ends at the point that would go
      changeRun(plan, 'first', { locked: true }),
    ]) {
      expect(locked).not.toBe(plan);
      expect(removeSheet(locked, 'side')).toBe(locked);
    }
    const battery = changeFitting(plan, 'battery', { locked: true });
    expect(idsOf(removeSheet(battery, 'side'))).toEqual(['sheet', 'battery']);
  });

  it('gets another name without anything else', () => {
    const plan = changeSheet(joined(), 'side', { name: 'Boot' });
    expect(plan.sheets.map(({ name }) => name)).toEqual(['', 'Boot']);
    expect({ ...plan, sheets: joined().sheets }).toEqual(joined());
  });
});

describe('the outline of a vehicle', () => {
  const van = { ...DEFAULT_OUTLINES.panelVan, lengthM: 5.2, cabM: 1.8 };
  const outlines = (plan: Plan) => plan.sheets.map(({ outline }) => outline);

  it('is changed on every sheet that shows the vehicle; nothing on them moves, and the plan opens again', () => {
    for (const from of ['sheet', 'side']) {
      const plan = changeOutline(joined(), from, van);
      expect(outlines(plan)).toEqual([van, van]);
      expect(plan.sheets.map(({ part, view }) => [part, view])).toEqual([
        ['whole', 'above'],
        ['cargo', 'side'],
      ]);
      expect({ ...plan, sheets: [] }).toEqual({ ...joined(), sheets: [] });
      expect(openPlan(savePlan(plan))).toMatchObject({ ok: true, plan });
    }
    const own = ownFrom(van);
    expect(outlines(changeOutline(joined(), 'side', own))).toEqual([own, own]);
  });

  it('leaves another vehicle as it is: one of other sizes, and one with the wheel on the other side', () => {
    const small = newSheet({ id: 'small', name: '', outline: DEFAULT_OUTLINES.hatchback, mirrored: false });
    const right = newSheet({ id: 'right', name: '', outline: outlineOf(emptyVan()), mirrored: true });
    const plan = addSheet(addSheet(joined(), small), right);
    expect(sheetsOfVehicle(plan, 'side').map(({ id }) => id)).toEqual(['sheet', 'side']);
    expect(sheetsOfVehicle(plan, 'right').map(({ id }) => id)).toEqual(['right']);
    expect(outlines(changeOutline(plan, 'sheet', van))).toEqual([van, van, small.outline, right.outline]);
  });

  it('is refused on all or taken on all, and the same one changes nothing', () => {
    const plan = joined();
    expect(changeOutline(plan, 'sheet', { ...van, lengthM: 99 })).toBe(plan);
    expect(changeOutline(plan, 'sheet', outlineOf(plan))).toBe(plan);
    expect(changeOutline(plan, 'none', van)).toBe(plan);
  });
});

describe('a run that goes on on another sheet', () => {
  it('ends in a new point there, and keeps its bends', () => {
    const plan = continueRun(twoSheets(), RUN, POINT);
    expect(plan.fittings.at(-1)).toMatchObject({ kind: 'continuation', sheetId: 'sheet', at: FROM.at, other: TO });
    expect(plan.runs).toMatchObject([
      { id: 'first', sheetId: 'sheet', to: terminalRef('on.through'), bends: [at(1, 1)] },
    ]);
  });

  it('leaves the plan as it was when the point or the run is refused', () => {
    const plan = twoSheets();
    expect(continueRun(plan, RUN, { ...POINT, to: FROM })).toBe(plan);
    expect(continueRun(plan, RUN, { ...POINT, to: { ...TO, sheetId: 'none' } })).toBe(plan);
    expect(continueRun(plan, { ...RUN, from: terminalRef('amp.supply') }, POINT)).toBe(plan);
    const bends = Array.from({ length: MAX_BENDS + 1 }, () => at(1, 1));
    expect(continueRun(plan, { ...RUN, bends }, POINT)).toBe(plan);
    expect(addContinuation(plan, { ...POINT, id: 'amp' })).toBe(plan);
  });

  it('is joined on the sheet where both of its ends stand', () => {
    const plan = joined();
    const find = (id: string) => {
      const found = plan.fittings.find((fitting) => fitting.id === id);
      if (found === undefined) throw new Error(`${id} is there`);
      return found;
    };
    expect(sharedSheet(find('on'), find('amp'))).toBe('side');
    expect(sharedSheet(find('battery'), find('on'))).toBe('sheet');
    expect(sharedSheet(find('battery'), find('amp'))).toBeNull();
  });
});
