import { describe, expect, it } from 'vitest';
import { liveFigures } from '../../src/sketch/liveFigures.ts';
import type { HandState } from '../../src/sketch/tools/state.ts';
import { unitsFor } from '../../src/words/index.ts';
import { emptyPlan, feedPlan, withFittings } from '../drawing/support/plans.ts';
import { answerWith, runAnswer, sourceAnswer } from '../support/answers.ts';

const length = (lengthM: number) => ({ lengthM, origin: 'drawn', plusMinusM: 0.1 }) as const;
const answer = answerWith({
  runs: [
    runAnswer('run1', { length: length(0.3) }),
    runAnswer('run2', { length: length(1.25) }),
    runAnswer('run3', { length: length(2) }),
  ],
  sources: [sourceAnswer('battery', { unprotectedM: 0.3, runIds: ['run1'] })],
  figures: {
    ...answerWith().figures,
    worstDrop: { value: 0.34, unit: 'V', places: [], governs: null, provisional: false, why: null },
  },
});
const plan = feedPlan();
const say = (state: HandState, of = plan) =>
  liveFigures(state, of, answer, unitsFor(of)).map(({ name, value }) => `${name}: ${value}`);

const dragging = (fittingId: string): HandState => ({
  name: 'move.draggingFitting',
  fittingId,
  home: { xM: 0, yM: 0 },
  gripPx: { xPx: 0, yPx: 0 },
  act: 'moveFitting',
  splits: null,
  newRunId: 'new',
});

describe('figures beside the finger', () => {
  it('say both lengths at a fuse, the unprotected length and the worst drop', () => {
    expect(say(dragging('fuse'))).toEqual(['Length: 30 cm + 1.25 m', 'Unprotected: 30 cm', 'Worst drop: 0.34 V']);
  });

  it('mark the unprotected length alone as the dangerous one', () => {
    const rows = liveFigures(dragging('fuse'), plan, answer, unitsFor(plan));
    expect(rows.filter(({ isHazard }) => isHazard).map(({ name }) => name)).toEqual(['Unprotected']);
  });

  it('say the length so far of a run being drawn, free-hand part included, in true metres', () => {
    const two = withFittings(emptyPlan(), [['a', 'passThrough', 0, 0]]);
    const [sheet] = two.sheets;
    if (sheet === undefined) throw new Error('no sheet');
    const scaled = { ...two, sheets: [{ ...sheet, scale: { value: 2, origin: 'told' as const } }] };
    const state: HandState = {
      name: 'run.drawing',
      trace: {
        sheetId: 'sheet',
        from: { fittingId: 'a', terminal: 'through' },
        start: { xM: 0, yM: 0 },
        bends: [{ xM: 3, yM: 0 }],
      },
      stroke: [{ xM: 3, yM: 4 }],
    };
    // 3 m + 4 m on the sheet, 2 true metres to each
    expect(say(state, scaled)).toEqual(['Length: 14 m']);
  });

  it('say nothing while nothing changes', () => {
    expect(say({ name: 'move.idle' })).toEqual([]);
    expect(say({ name: 'panning', pane: 'whole', last: { xPx: 0, yPx: 0 }, back: { name: 'move.idle' } })).toEqual([]);
  });
});
