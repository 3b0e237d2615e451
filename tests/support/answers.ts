/** Answers made by hand, so that what shows them is tested apart from what works them out. */
import type { Assessment, RunAnswer, SourceAnswer } from '../../src/assess/answer.ts';

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

/** An answer that says nothing but what a test gives it to say. */
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
      whyDeficitIdle: null,
      whyDeficitCruise: null,
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
