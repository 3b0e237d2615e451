import { describe, expect, it } from 'vitest';
import { drawHazards, seenStretch } from '../../src/drawing/hazard.ts';
import { pointsOfFlat } from '../../src/drawing/runs.ts';
import { polylineLength } from '../../src/geom/polyline.ts';
import { answerWith, runAnswer, sourceAnswer } from '../support/answers.ts';
import { emptyPlan, feedPlan, withFittings, withRun } from './support/plans.ts';

const drawnM = (flat: readonly number[]): number => polylineLength(pointsOfFlat(flat));

describe('the unprotected stretch', () => {
  it('is striped over the whole run when all of it is unprotected, and says that length', () => {
    const answer = answerWith({
      runs: [runAnswer('run1', { length: { lengthM: 0.3, origin: 'drawn', plusMinusM: 0.1 }, unprotectedM: 0.3 })],
      sources: [sourceAnswer('battery', { unprotectedM: 0.3, runIds: ['run1'] })],
    });
    const [hazard, ...others] = drawHazards(feedPlan(), 'sheet', answer);
    expect(others).toEqual([]);
    expect(hazard?.runId).toBe('run1');
    expect(hazard?.lengthM).toBe(0.3);
    expect(drawnM(hazard?.points ?? [])).toBeCloseTo(0.3, 9);
  });

  it('is striped over the same share of the drawn line as of the cable, when the tape says more', () => {
    // drawn 0.3 m, taped 0.6 m, 0.2 m of it unprotected: a third of the line, 0.1 m
    const answer = answerWith({
      runs: [runAnswer('run1', { length: { lengthM: 0.6, origin: 'taped', plusMinusM: 0 }, unprotectedM: 0.2 })],
      sources: [sourceAnswer('battery', { unprotectedM: 0.2, runIds: ['run1'] })],
    });
    const [hazard] = drawHazards(feedPlan(), 'sheet', answer);
    expect(drawnM(hazard?.points ?? [])).toBeCloseTo(0.1, 9);
    expect(hazard?.points.slice(0, 2)).toEqual([0.2, 1]);
    expect(hazard?.lengthM).toBe(0.2);
  });

  it('begins at the source also when the run was drawn the other way', () => {
    const plan = withRun(
      withFittings(emptyPlan(), [
        ['battery', 'battery', 0, 0],
        ['fuse', 'fuse', 1, 0],
      ]),
      'run',
      'fuse.in',
      'battery.positive',
    );
    const answer = answerWith({
      runs: [runAnswer('run', { unprotectedM: 0.25 })],
      sources: [sourceAnswer('battery', { unprotectedM: 0.25, runIds: ['run'] })],
    });
    expect(drawHazards(plan, 'sheet', answer)[0]?.points).toEqual([0, 0, 0.25, 0]);
  });

  it('is not drawn where a device protects the whole run', () => {
    expect(drawHazards(feedPlan(), 'sheet', answerWith({ runs: [runAnswer('run2')] }))).toEqual([]);
  });

  it('is never thinner than 10 px and stands out beside the cable', () => {
    const widthOf = (areaMm2: number | null) =>
      drawHazards(feedPlan(), 'sheet', answerWith({ runs: [runAnswer('run1', { areaMm2, unprotectedM: 1 })] }))[0]
        ?.widthPx ?? 0;
    expect(widthOf(null)).toBeGreaterThanOrEqual(10);
    expect(widthOf(107)).toBeGreaterThan(12 + 2);
  });

  it('shows between the plates from near, and still at least 22 px of itself from afar', () => {
    const hazard = { runId: 'run', points: [0, 0, 0.3, 0], lengthM: 0.3, widthPx: 12 };
    // 1000 px/m: 300 px of line between plates of 52 px that lie over its ends
    expect(seenStretch(hazard, 1000)).toEqual({ hazard, isCramped: false });
    // 80 px/m: 24 px of line, plates of 22 px would leave 2 px
    const near = seenStretch(hazard, 80);
    expect(near.isCramped).toBe(true);
    expect(drawnM(near.hazard.points) * 80).toBeCloseTo(22, 6);
    // 40 px/m: 12 px in all; nothing is hidden
    expect(seenStretch(hazard, 40)).toEqual({ hazard, isCramped: true });
  });
});
