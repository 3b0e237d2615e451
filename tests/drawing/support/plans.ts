/** Small plans for tests of what is drawn and done: ids are chosen, everything else is what a new plan has. */
import type { Assessment, RunAnswer, SourceAnswer } from '../../../src/assess/answer.ts';
import { newFittingIn, newPlan, newRun } from '../../../src/plan/create.ts';
import { addFitting } from '../../../src/plan/edits/addFitting.ts';
import { addRun } from '../../../src/plan/edits/addRun.ts';
import type { FittingKind, Plan, RunKind } from '../../../src/plan/schema.ts';

export const SHEET = 'sheet';

type Spot = readonly [xM: number, yM: number];

export const VAN = { kind: 'panelVan', lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 } as const;
export const BENCH = { kind: 'bench', lengthM: 2.4, widthM: 0.8 } as const;

export const emptyPlan = (outline: typeof VAN | typeof BENCH = VAN, mirrored = false): Plan =>
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
  const ref = (text: string) => {
    const [fittingId = '', terminal = ''] = text.split('.');
    return { fittingId, terminal };
  };
  const points = bends.map(([xM, yM]) => ({ xM, yM }));
  return addRun(plan, newRun({ id, name: '', kind, sheetId: SHEET, from: ref(from), to: ref(to), bends: points }));
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

export function runAnswer(runId: string, patch: Partial<RunAnswer> = {}): RunAnswer {
  return {
    runId,
    length: { lengthM: 1, origin: 'drawn', plusMinusM: 0.1 },
    gauge: null,
    chosen: true,
    governs: null,
    smallest: null,
    areaMm2: null,
    fullA: null,
    heatingA: null,
    ampacityA: null,
    conductorC: null,
    dropV: null,
    dropPercent: null,
    limitA: null,
    unprotectedM: 0,
    whyLength: '',
    whySize: null,
    whyDrop: null,
    whyAmpacity: null,
    ...patch,
  };
}

export function sourceAnswer(fittingId: string, patch: Partial<SourceAnswer> = {}): SourceAnswer {
  return {
    fittingId,
    unprotectedM: 0,
    plusMinusM: 0,
    runIds: [],
    totalUnprotectedM: 0,
    endsAt: null,
    why: '',
    ...patch,
  };
}

const figure = (unit: 'gauge' | 'A' | 'V' | 'm') => ({
  value: null,
  unit,
  places: [],
  governs: null,
  provisional: false,
  why: null,
});

/** An answer that says only what a test of the drawing needs. */
export function answerWith(patch: Partial<Assessment> = {}): Assessment {
  return {
    planId: 'plan',
    ruleSet: 'vehicle',
    headline: { kind: 'nothing', count: 0 },
    notTold: [],
    figures: { feed: figure('gauge'), mainFuse: figure('A'), worstDrop: figure('V'), unprotected: figure('m') },
    findings: [],
    runs: [],
    fuses: [],
    amplifiers: [],
    sources: [],
    supply: {
      amplifiers: [],
      meanOffA: null,
      meanRunningA: null,
      alternators: [],
      deficitIdleA: null,
      deficitCruiseA: null,
      groups: [],
      postsV: { off: null, idle: null, cruise: null },
    },
    shorts: [],
    sizingState: 'rest',
    leastCopperProven: true,
    assumptions: [],
    rulesChecked: [],
    rulesNotChecked: [],
    whys: {},
    strictest: { ruleSet: 'boatCfr', severity: null, limitM: 0.178 },
    zones: {},
    ...patch,
  };
}
