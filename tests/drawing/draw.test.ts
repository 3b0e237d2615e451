import { describe, expect, it } from 'vitest';
import { drawSheet } from '../../src/drawing/draw.ts';
import { drawFitting, halfPlatePx } from '../../src/drawing/fittings.ts';
import { drawOutline } from '../../src/drawing/outline.ts';
import type { Shape } from '../../src/drawing/shapes.ts';
import { blockSymbol, LOCK, SYMBOLS } from '../../src/drawing/symbols.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import type { FittingKind, Plan, Sheet } from '../../src/plan/schema.ts';
import { answerWith, runAnswer, sourceAnswer } from '../support/answers.ts';
import { words } from './support/labelWords.ts';
import { BENCH, emptyPlan, feedPlan, VAN, withFittings, withRun } from './support/plans.ts';

function sheetOf(plan: Plan): Sheet {
  const [sheet] = plan.sheets;
  if (sheet === undefined) throw new Error('no sheet');
  return sheet;
}

const draw = (plan: Plan, answer = answerWith()) => drawSheet(plan, sheetOf(plan), answer, words);

const isWhole = (shape: Shape): boolean =>
  shape.kind === 'circle'
    ? [shape.x, shape.y, shape.radius].every(Number.isFinite)
    : shape.points.every(Number.isFinite);

const widthOf = (shape: Shape): number => {
  if (shape.kind === 'circle') return 2 * shape.radius;
  const xs = shape.points.filter((_, index) => index % 2 === 0);
  return Math.max(...xs) - Math.min(...xs);
};

describe('outlines', () => {
  it('draw the van from nose to tail in its own size', () => {
    const { shapes, bounds, bayBounds } = drawOutline(sheetOf(emptyPlan(VAN)));
    expect(shapes.every(isWhole)).toBe(true);
    expect(Math.max(...shapes.map(widthOf))).toBeCloseTo(4.4, 6);
    expect(bounds.maxXM).toBeGreaterThan(4.4);
    expect(bayBounds?.maxXM).toBeGreaterThan(1);
    expect(bayBounds?.maxXM).toBeLessThan(1.5);
  });

  it('draw the firewall as a line across at the end of the bay', () => {
    const { shapes } = drawOutline(sheetOf(emptyPlan(VAN)));
    const wall = shapes.find(
      (shape) => shape.kind === 'line' && shape.points.length === 4 && shape.points[0] === 1 && shape.points[2] === 1,
    );
    expect(wall?.stroke?.widthPx).toBeGreaterThan(2);
  });

  /** The steering wheel is the only large ring of the outline. */
  const wheelY = (mirrored: boolean) =>
    drawOutline(sheetOf(emptyPlan(VAN, mirrored))).shapes.flatMap((shape) =>
      shape.kind === 'circle' && shape.radius > 0.15 ? [shape.y] : [],
    );

  it('put the steering wheel on the left of the vehicle, which is the lower half, and mirrored on the right', () => {
    expect(wheelY(false)).toHaveLength(1);
    expect(wheelY(false)[0]).toBeGreaterThan(0.9);
    expect(wheelY(true)[0]).toBeLessThan(0.9);
    expect((wheelY(false)[0] ?? 0) + (wheelY(true)[0] ?? 0)).toBeCloseTo(1.8, 9);
  });

  it('draw the board without a bay', () => {
    const { shapes, bayBounds } = drawOutline(sheetOf(emptyPlan(BENCH)));
    expect(shapes.every(isWhole)).toBe(true);
    expect(Math.max(...shapes.map(widthOf))).toBeCloseTo(2.4, 6);
    expect(bayBounds).toBeNull();
  });
});

describe('fittings', () => {
  const kinds = Object.keys(SYMBOLS) as FittingKind[];

  it.each(kinds)('%s: a symbol that stays on its plate', (kind) => {
    const parts = SYMBOLS[kind];
    expect(parts.length).toBeGreaterThan(1);
    for (const part of parts) {
      const reach =
        part.kind === 'circle'
          ? [Math.abs(part.x) + part.radius, Math.abs(part.y) + part.radius]
          : part.points.map(Math.abs);
      expect(Math.max(...reach)).toBeLessThanOrEqual(0.9);
    }
  });

  it('have unlike symbols', () => {
    expect(new Set(kinds.map((kind) => JSON.stringify(SYMBOLS[kind]))).size).toBe(kinds.length);
  });

  it('draw a battery with a longer line for the positive plate than for the negative (IEC 60617)', () => {
    const upright = SYMBOLS.battery.flatMap((part) =>
      part.kind === 'line' &&
      part.points.length === 4 &&
      part.points[0] === part.points[2] &&
      (part.points[0] ?? 0) > -0.5
        ? [Math.abs((part.points[3] ?? 0) - (part.points[1] ?? 0))]
        : [],
    );
    expect(new Set(upright).size).toBe(2);
  });

  it('draw a tap for each output of a block', () => {
    const dots = (outputs: number) => blockSymbol(outputs).filter((part) => part.kind === 'circle').length;
    expect(dots(2)).toBe(2);
    expect(dots(4)).toBe(4);
  });

  it('show a switch as it stands: open or closed', () => {
    const place = { id: 's', name: '', sheetId: 'sheet-1', at: { xM: 1, yM: 1 } };
    const closed = newFitting('switch', place);
    const blades = [closed, { ...closed, closed: false }].map((fitting) => drawFitting(fitting).parts);
    expect(blades[0]).not.toEqual(blades[1]);
    expect(blades[0]?.slice(1)).toEqual(SYMBOLS.switch);
  });

  it('carry a padlock while they are locked, and only then', () => {
    const fuse = newFitting('fuse', { id: 'f', name: '', sheetId: 'sheet-1', at: { xM: 1, yM: 1 } });
    const [open, locked] = [fuse, { ...fuse, locked: true }].map((fitting) => drawFitting(fitting).parts);
    expect(open).toEqual(locked?.slice(0, open?.length));
    expect((locked?.length ?? 0) - (open?.length ?? 0)).toBe(LOCK.length);
  });

  it('keep their plates between 22 and 52 px, 200 mm in between', () => {
    expect(halfPlatePx(20) * 2).toBe(22);
    expect(halfPlatePx(200) * 2).toBeCloseTo(40, 9);
    expect(halfPlatePx(4000) * 2).toBe(52);
  });
});

describe('runs', () => {
  it('go from terminal to terminal by their bends', () => {
    expect(draw(feedPlan()).runs.find(({ runId }) => runId === 'run3')?.points).toEqual([1, 1, 2, 0.4, 3, 1]);
  });

  it('are as thick as their conductor, and told apart by dash as well as by colour', () => {
    const ground = withRun(
      withFittings(feedPlan(), [['bolt', 'ground', 3.5, 1]]),
      'run4',
      'amp.ground',
      'bolt.body',
      [],
      'ground',
    );
    const answer = answerWith({ runs: [runAnswer('run1', { areaMm2: 50 }), runAnswer('run2', { areaMm2: 8 })] });
    const runs = new Map(draw(ground, answer).runs.map((run) => [run.runId, run]));
    expect(runs.get('run1')?.stroke.widthPx).toBeGreaterThan(runs.get('run2')?.stroke.widthPx ?? 0);
    expect(runs.get('run4')?.stroke.colour).not.toBe(runs.get('run1')?.stroke.colour);
    expect(runs.get('run4')?.stroke.dashPx).not.toEqual(runs.get('run1')?.stroke.dashPx);
    for (const { casing, stroke } of runs.values()) expect(casing.widthPx).toBeGreaterThan(stroke.widthPx);
  });
});

describe('labels', () => {
  const answer = answerWith({
    runs: [
      runAnswer('run1', { unprotectedM: 0.3 }),
      runAnswer('run2', { length: { lengthM: 0.5, origin: 'drawn', plusMinusM: 0.1 } }),
    ],
    sources: [sourceAnswer('battery', { unprotectedM: 0.3, runIds: ['run1'] })],
    fuses: [
      {
        fittingId: 'fuse',
        terminal: null,
        ratingA: 150,
        family: null,
        chosen: true,
        neededA: null,
        ceilingA: null,
        fullA: null,
        heatingA: null,
        why: null,
      },
    ],
  });
  const labels = new Map(draw(feedPlan(), answer).labels.map((label) => [label.key, label]));

  it('say the name and the rating of a fuse', () => {
    expect(labels.get('fitting.fuse')).toMatchObject({ title: 'fuse', figures: '150 A' });
  });

  it('say the unprotected length once, in the middle of the stretch, in place of the run it is on', () => {
    const hazard = labels.get('hazard.battery');
    expect(hazard?.figures).toBe('!0.3 m');
    expect(hazard?.at.xM).toBeCloseTo(0.35, 9);
    expect(labels.has('run.run1')).toBe(false);
  });

  it('say when a length was taped', () => {
    const taped = answerWith({
      runs: [runAnswer('run2', { length: { lengthM: 0.7, origin: 'taped', plusMinusM: 0 } })],
    });
    expect(draw(feedPlan(), taped).labels.find(({ key }) => key === 'run.run2')?.figures).toBe('taped 0.7 m');
  });

  it('say the length of a protected run', () => {
    expect(labels.get('run.run2')?.figures).toBe('0.5 m');
  });
});
