import { describe, expect, it } from 'vitest';
import { drawOutline } from '../../src/drawing/outline.ts';
import { newPlan, newRun } from '../../src/plan/create.ts';
import { moveFitting } from '../../src/plan/edits/moveFitting.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Body, Plan, Point } from '../../src/plan/schema.ts';
import { fittedCamera, keptOrFitted } from '../../src/sketch/cameras.ts';
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
    expect(found).toEqual({ of: 'bay', bounds: outline.bayBounds, stretches: [] });
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

/** A fuse so far from the battery and joined to it, and where the feed goes on to. */
function withFuse(plan: Plan, fuseAt: Point, onAt?: Point): Plan {
  const at = (kind: 'fuse' | 'passThrough', place: Point) =>
    newFitting(kind, { id: kind, name: kind, sheetId: 'sheet', at: place });
  const lead = (id: string, from: [string, string], to: [string, string]) =>
    newRun({
      kind: 'power',
      bends: [],
      id,
      name: id,
      sheetId: 'sheet',
      from: { fittingId: from[0], terminal: from[1] },
      to: { fittingId: to[0], terminal: to[1] },
    });
  const fused: Plan = {
    ...plan,
    fittings: [...plan.fittings, at('fuse', fuseAt)],
    runs: [...plan.runs, lead('first', ['battery', 'positive'], ['fuse', 'in'])],
  };
  if (onAt === undefined) return fused;
  return {
    ...fused,
    fittings: [...fused.fittings, at('passThrough', onAt)],
    runs: [...fused.runs, lead('next', ['fuse', 'out'], ['passThrough', 'through'])],
  };
}

const batteryOf = (plan: Plan): Point => plan.fittings[0]?.at ?? { xM: Number.NaN, yM: Number.NaN };
const beside = ({ xM, yM }: Point, byXM: number, byYM: number): Point => ({ xM: xM + byXM, yM: yM + byYM });

/** The nearer pane beside or below the whole: of a tablet on its side, upright, and of a projector. */
const PANES = [
  { widthPx: 652, heightPx: 385 },
  { widthPx: 312, heightPx: 620 },
  { widthPx: 470, heightPx: 934 },
] as const;

function view(plan: Plan, size: { widthPx: number; heightPx: number }) {
  const { sheet, found } = closeUp(plan);
  const camera = fittedCamera(sheet, 'bay', size, found);
  const bare = fittedCamera(sheet, 'bay', size, found === null ? null : { ...found, stretches: [] });
  const inPane = ({ xM, yM }: Point) => ({
    x: (xM - camera.centreXM) * camera.pxPerM + size.widthPx / 2,
    y: (yM - camera.centreYM) * camera.pxPerM + size.heightPx / 2,
  });
  const isClear = (at: Point) => {
    const { x, y } = inPane(at);
    return x >= 55.9 && x <= size.widthPx - 55.9 && y >= 55.9 && y <= size.heightPx - 55.9;
  };
  return { sheet, found, camera, bare, inPane, isClear };
}

describe.each(PANES)('in $widthPx x $heightPx px the stretch from battery to fuse', (size) => {
  const cases = BODIES.flatMap((body) => [0.12, 0.45, 0.9].map((share) => ({ body, share })));

  it.each(cases)('has room for two thumbs in a $body with its battery at $share of the length', ({ body, share }) => {
    for (const [byXM, byYM] of [
      [0.26, 0],
      [0, -0.26],
      [-0.1, 0.24],
    ] as const) {
      const plan = withBattery(body, share);
      const fuseAt = beside(batteryOf(plan), byXM, byYM);
      const { camera, bare, isClear } = view(withFuse(plan, fuseAt), size);
      const lengthPx = Math.hypot(byXM, byYM) * camera.pxPerM;
      // 88: two fingertips; 112: two targets of 56, and no nearer than that
      expect(lengthPx).toBeGreaterThanOrEqual(87.9);
      expect(lengthPx <= 112.1 || camera.pxPerM === bare.pxPerM).toBe(true);
      expect([isClear(batteryOf(plan)), isClear(fuseAt)]).toEqual([true, true]);
    }
  });

  it('is two targets long where the firewall is seen with it, and the cable is seen to reach it', () => {
    const outline = DEFAULT_OUTLINES.hatchback;
    const plan = withBattery('hatchback', (outline.bayM - 0.5) / outline.lengthM);
    const fuseAt = beside(batteryOf(plan), 0.2, 0.15);
    const through = { xM: outline.bayM, yM: fuseAt.yM + 0.05 };
    const { camera, inPane } = view(withFuse(plan, fuseAt, through), size);
    expect(0.25 * camera.pxPerM).toBeGreaterThanOrEqual(size.widthPx < 400 ? 88 : 111.9);
    expect(inPane(through).x).toBeGreaterThan(0);
    // its plate is seen whole
    expect(inPane(through).x).toBeLessThan(size.widthPx - 26);
  });

  it('of 3 cm still leaves 70 cm of the vehicle to be seen', () => {
    const plan = withBattery('saloon', 0.12);
    const { camera } = view(withFuse(plan, beside(batteryOf(plan), 0.03, 0)), size);
    expect(Math.min(size.widthPx, size.heightPx) / camera.pxPerM).toBeGreaterThanOrEqual(0.7);
  });

  it('that is long enough in the bay leaves the bay as it is', () => {
    const plan = withBattery('panelVan', 0.12);
    const { camera, bare } = view(withFuse(plan, beside(batteryOf(plan), 0, -0.8)), size);
    expect(camera).toEqual(bare);
  });

  it('is looked at as before after a small move, and anew once it is too short or leaves the pane', () => {
    const plan = withBattery('saloon', 0.14);
    const moved = (byXM: number, byYM: number) => withFuse(plan, beside(batteryOf(plan), byXM, byYM));
    const before = view(moved(0, 0.26), size).camera;
    const next = (byXM: number, byYM: number) => {
      const { camera, found } = view(moved(byXM, byYM), size);
      return { kept: keptOrFitted(before, camera, size, found), fitted: camera };
    };
    expect(next(0.02, 0.3).kept).toBe(before);
    // seen from as near as may be already
    expect(next(0, 0.2).kept).toBe(before);
    const out = next(1.4, 0);
    expect(out.kept).toBe(out.fitted);
    // the bay, before there was a fuse
    const { camera, found } = view(moved(0, 0.26), size);
    const bay = view(plan, size).camera;
    expect(keptOrFitted(bay, camera, size, found)).toBe(camera);
    expect(keptOrFitted(before, bay, size, view(plan, size).found)).toBe(bay);
  });
});

describe('of several stretches', () => {
  const size = PANES[0];
  const second = (plan: Plan, at: Point): Plan => ({
    ...plan,
    fittings: [
      {
        ...newFitting('battery', { id: 'second', name: 'Second', sheetId: 'sheet', at }),
        strap: null,
      } as Plan['fittings'][number],
      ...plan.fittings,
      newFitting('breaker', { id: 'breaker', name: 'Breaker', sheetId: 'sheet', at: beside(at, 0, 0.25) }),
    ],
    runs: [
      newRun({
        kind: 'power',
        bends: [],
        id: 'other',
        name: 'Other',
        sheetId: 'sheet',
        from: { fittingId: 'breaker', terminal: 'in' },
        to: { fittingId: 'second', terminal: 'positive' },
      }),
      ...plan.runs,
    ],
  });

  it.each([
    [0.4, true],
    [2.5, false],
  ])("the vehicle's own comes first, and one %f m away is shown with it: %s", (byXM, isShown) => {
    const plan = withBattery('estate', 0.1);
    const [own, fuse] = [batteryOf(plan), beside(batteryOf(plan), 0, 0.25)];
    const both = second(withFuse(plan, fuse), beside(own, byXM, 0));
    const { found, isClear } = view(both, size);
    expect(found?.of).toBe('bay');
    expect(found?.stretches.map(({ from }) => from)).toEqual([own, beside(own, byXM, 0)]);
    expect([isClear(own), isClear(fuse)]).toEqual([true, true]);
    expect(isClear(beside(own, byXM, 0.25))).toBe(isShown);
  });
});

it('reaches the first fuse through a switch, and ends there', () => {
  const plan = withFuse(withBattery('saloon', 0.1), { xM: 0.9, yM: 0.9 }, { xM: 1.25, yM: 0.9 });
  const at = { xM: 0.7, yM: 0.9 };
  const ends = (from: [string, string], to: [string, string]) => ({
    from: { fittingId: from[0], terminal: from[1] },
    to: { fittingId: to[0], terminal: to[1] },
  });
  const switched: Plan = {
    ...plan,
    fittings: [...plan.fittings, newFitting('switch', { id: 'switch', name: 'Switch', sheetId: 'sheet', at })],
    runs: plan.runs.flatMap((run) =>
      run.id === 'first'
        ? [
            { ...run, id: 'a', ...ends(['battery', 'positive'], ['switch', 'in']) },
            { ...run, id: 'b', ...ends(['fuse', 'in'], ['switch', 'out']) },
          ]
        : [run],
    ),
  };
  expect(closeUp(switched).found?.stretches).toEqual([
    { from: batteryOf(plan), to: { xM: 0.9, yM: 0.9 }, on: { xM: 1.25, yM: 0.9 } },
  ]);
});
