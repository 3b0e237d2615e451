import { describe, expect, it } from 'vitest';
import { drawOutline } from '../../src/drawing/outline.ts';
import { newFitting, newPlan } from '../../src/plan/create.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Body, Plan } from '../../src/plan/schema.ts';
import { fittedCamera } from '../../src/sketch/cameras.ts';
import { closeUpOf, looksAlike } from '../../src/sketch/closeUp.ts';

const BODIES = ['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus'] as const satisfies readonly Body[];
const SIZE = { widthPx: 600, heightPx: 400 };

function withBattery(body: Body, share: number): Plan {
  const outline = DEFAULT_OUTLINES[body];
  const plan = newPlan({ id: 'plan', name: 'Plan', sheetId: 'sheet', outline, mirrored: false });
  const at = { xM: share * outline.lengthM, yM: outline.widthM / 2 };
  return { ...plan, fittings: [newFitting('battery', { id: 'battery', name: 'Battery', sheetId: 'sheet', at })] };
}

function closeUp(plan: Plan) {
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  const outline = drawOutline(sheet);
  return { sheet, outline, found: closeUpOf(plan, sheet, outline) };
}

describe.each(BODIES)('the nearer pane of a %s', (body) => {
  it('looks at the engine bay while the battery is there, or not placed', () => {
    const { outline, found } = closeUp(withBattery(body, 0.08));
    expect(found).toEqual({ of: 'bay', bounds: outline.bayBounds });
    const empty = closeUp({ ...withBattery(body, 0.08), fittings: [] });
    expect(empty.found?.of).toBe('bay');
  });

  it.each([0.5, 0.75, 0.97])('looks round a battery at %f of the length, as near as it looks at the bay', (share) => {
    const plan = withBattery(body, share);
    const { sheet, outline, found } = closeUp(plan);
    if (found === null || outline.bayBounds === null) throw new Error('nothing to look at');
    expect(found.of).toBe('source');
    expect(found.bounds.maxXM - found.bounds.minXM).toBeCloseTo(outline.bayBounds.maxXM - outline.bayBounds.minXM, 9);
    const camera = fittedCamera(sheet, 'bay', SIZE, found);
    const x = ((plan.fittings[0]?.at.xM ?? 0) - camera.centreXM) * camera.pxPerM + SIZE.widthPx / 2;
    // clear of the edges by a finger
    expect(x).toBeGreaterThan(44);
    expect(x).toBeLessThan(SIZE.widthPx - 44);
    const whole = fittedCamera(sheet, 'whole', SIZE, found);
    expect(camera.pxPerM).toBeGreaterThan(1.2 * whole.pxPerM);
  });
});

it('stays where it looks while the battery is moved a little', () => {
  const plan = withBattery('saloon', 0.9);
  const at = plan.fittings[0]?.at ?? { xM: 0, yM: 0 };
  const aside = moveFitting(plan, 'battery', { xM: at.xM, yM: at.yM + 0.2 });
  expect(looksAlike(closeUp(plan).found, closeUp(aside).found)).toBe(true);
});
