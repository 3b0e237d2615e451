/** A run that goes on on another sheet is one cable: what is answered must not depend on how many sheets it is drawn on. */
import { describe, expect, it } from 'vitest';
import { assess } from '../../src/assess/assess.ts';
import { newRun, newSheet } from '../../src/plan/create.ts';
import { addFitting } from '../../src/plan/edits/addFitting.ts';
import { addRun } from '../../src/plan/edits/addRun.ts';
import { removeRun } from '../../src/plan/edits/removeRun.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import type { Plan, Point } from '../../src/plan/schema.ts';
import { sampleVan } from '../plan/support/samplePlan.ts';
import { terminalRef } from '../support/terminal.ts';

const at = (xM: number, yM: number): Point => ({ xM, yM });

/** The sample with its run to the block cut at a point: on a second sheet of the same van from there to another point. */
function goingOn(cut: Point, goesOnAt: Point): Plan {
  const van = sampleVan();
  const long = van.runs.find(({ id }) => id === 'long');
  const outline = van.sheets[0]?.outline;
  if (long === undefined || outline === undefined) throw new Error('The sample has them');
  let plan: Plan = { ...removeRun(van, 'long'), sheets: [...van.sheets] };
  plan = { ...plan, sheets: [...plan.sheets, newSheet({ id: 'second', name: '', outline, mirrored: false })] };
  const point = newFitting('continuation', { id: 'on', name: '', sheetId: 'sheet', at: cut });
  plan = addFitting(plan, { ...point, other: { sheetId: 'second', at: goesOnAt } });
  const back = newFitting('continuation', { id: 'back', name: '', sheetId: 'sheet', at: at(3, 1.7) });
  plan = addFitting(plan, { ...back, other: { sheetId: 'second', at: at(3, 1.7) } });
  const ends = (from: string, to: string) => ({ from: terminalRef(from), to: terminalRef(to) });
  const run = { ...long, riseM: 0 };
  plan = addRun(plan, {
    ...newRun({ ...run, ...ends('wall.through', 'on.through'), bends: [at(1, 1.7)] }),
    riseM: 0.4,
  });
  plan = addRun(
    plan,
    newRun({ ...run, id: 'mid', sheetId: 'second', ...ends('on.through', 'back.through'), bends: [] }),
  );
  return addRun(plan, newRun({ ...run, id: 'end', ...ends('back.through', 'block.bus'), bends: [] }));
}

describe('a feed drawn over two sheets', () => {
  const [one, two] = [assess(sampleVan()), assess(goingOn(at(2, 1.7), at(2, 1.7)))];

  it('has the figures it has on one: its lengths add up, it cuts nothing, and is one size all the way', () => {
    expect(two.figures.feed.value).toBe(one.figures.feed.value);
    expect(two.figures.mainFuse.value).toBe(one.figures.mainFuse.value);
    expect(Number(two.figures.worstDrop.value)).toBeCloseTo(Number(one.figures.worstDrop.value), 9);
    expect(two.figures.unprotected.value).toBe(one.figures.unprotected.value);
    const lengthOf = (id: string) => two.runs.find(({ runId }) => runId === id)?.length.lengthM ?? Number.NaN;
    const whole = one.runs.find(({ runId }) => runId === 'long')?.length.lengthM ?? Number.NaN;
    expect(lengthOf('long') + lengthOf('mid') + lengthOf('end')).toBeCloseTo(whole, 9);
  });

  it('has the findings it has on one', () => {
    const said = (answer: typeof one) => answer.findings.map(({ rule, severity }) => `${severity} ${rule}`).sort();
    expect(said(two)).toEqual(said(one));
  });

  it('that leaves one sheet before the firewall and goes on behind it has crossed without a pass-through', () => {
    const crossing = (plan: Plan) =>
      assess(plan).findings.flatMap(({ rule, places }) =>
        rule === 'firewall-no-grommet' ? places.map(({ id }) => id) : [],
      );
    const van = sampleVan();
    const [outline] = van.sheets.map((sheet) => sheet.outline);
    if (outline === undefined) throw new Error('The sample has a sheet');
    const bay = newSheet({ id: 'bay', name: '', outline, mirrored: false, part: 'bay' });
    const withPoint = (goesOnAt: Point): Plan => {
      let plan: Plan = { ...removeRun(van, 'feed'), sheets: [...van.sheets, bay] };
      const point = newFitting('continuation', { id: 'on', name: '', sheetId: 'bay', at: at(0.7, 0.9) });
      plan = addFitting(plan, { ...point, other: { sheetId: 'sheet', at: goesOnAt } });
      plan = addFitting(plan, newFitting('fuse', { id: 'second', name: '', sheetId: 'bay', at: at(0.5, 0.9) }));
      return addRun(
        plan,
        newRun({
          ...{ id: 'bayRun', name: '', kind: 'power', sheetId: 'bay', bends: [] },
          ...{ from: terminalRef('second.out'), to: terminalRef('on.through') },
        }),
      );
    };
    expect(crossing(withPoint(at(0.7, 0.9)))).not.toContain('bayRun');
    expect(crossing(withPoint(at(1.4, 0.9)))).toContain('bayRun');
  });
});
