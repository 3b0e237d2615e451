/** A small van's plan and an answer for it made by hand, so that panels are tested apart from what works answers out. */

import type { Assessment, Finding, FuseAnswer, RunAnswer } from '../../src/assess/answer.ts';
import type { GaugeId } from '../../src/calc/conductor/gauge.ts';
import type { Why } from '../../src/calc/why.ts';
import { newPlan, newRun } from '../../src/plan/create.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import { DEFAULT_OUTLINES } from '../../src/plan/outline.ts';
import type { Fitting, FittingKind, Plan, Run, RunKind } from '../../src/plan/schema.ts';
import { answerWith, runAnswer, sourceAnswer } from '../support/answers.ts';
import { terminalRef } from '../support/terminal.ts';

const SHEET = 'sheet';

const PLACES: readonly (readonly [FittingKind, string, string, number, number])[] = [
  ['battery', 'bat', 'Battery', 0.55, 1.4],
  ['fuse', 'mainFuse', 'Main fuse', 0.85, 0.7],
  ['passThrough', 'pass', 'Pass-through', 1, 0.6],
  ['block', 'block', 'Distribution block', 3.2, 0.5],
  ['amplifier', 'front', 'Front amplifier', 3.7, 0.4],
  ['amplifier', 'rear', 'Rear amplifier', 3.7, 1.2],
  ['ground', 'frontGround', 'Ground point', 4, 0.3],
  ['ground', 'rearGround', 'Ground point 2', 4, 1.4],
];

const RUNS: readonly (readonly [string, RunKind, string, string])[] = [
  ['batToFuse', 'power', 'bat.positive', 'mainFuse.in'],
  ['fuseToPass', 'power', 'mainFuse.out', 'pass.through'],
  ['passToBlock', 'power', 'pass.through', 'block.bus'],
  ['toFront', 'power', 'block.out1', 'front.supply'],
  ['toRear', 'power', 'block.out2', 'rear.supply'],
  ['fromFront', 'ground', 'front.ground', 'frontGround.body'],
  ['fromRear', 'ground', 'rear.ground', 'rearGround.body'],
];

function fittingOf([kind, id, name, xM, yM]: (typeof PLACES)[number]): Fitting {
  const fitting: Fitting = newFitting(kind, { id, name, sheetId: SHEET, at: { xM, yM } });
  if (fitting.kind !== 'amplifier') return fitting;
  return {
    ...fitting,
    ratedW: { value: id === 'rear' ? 1000 : 400, origin: 'told' },
    loadOhm: 2,
    onboardFusesA: [40, 40],
  };
}

const runOf = ([id, kind, from, to]: (typeof RUNS)[number]): Run =>
  newRun({ id, name: '', kind, sheetId: SHEET, from: terminalRef(from), to: terminalRef(to), bends: [] });

/** Battery, main fuse, pass-through, block, two unlike amplifiers, two grounds. */
export function examplePlan(): Plan {
  const outline = { ...DEFAULT_OUTLINES.panelVan, lengthM: 4.4, widthM: 1.8, bayM: 1, cabM: 1.5 } as const;
  const plan = newPlan({ id: 'example', name: 'Carnival van', sheetId: SHEET, outline, mirrored: false });
  return { ...plan, fittings: PLACES.map(fittingOf), runs: RUNS.map(runOf) };
}

const gauge = (id: string): GaugeId => id as GaugeId;

/** 0.5 m of body at 1 mohm: a reason with one editable assumption and one step. */
function exampleWhy(bodyOhm: number): Why {
  return {
    steps: [
      { symbol: 'I', value: 102.4, unit: 'A', origin: 'told' },
      {
        symbol: 'Rbody',
        value: bodyOhm,
        unit: 'ohm',
        origin: 'assumed',
        source: 'commonPractice',
        edit: 'settings.bodyOhm',
      },
      { symbol: 'ratings', value: [100, 125, 150], unit: 'A', origin: 'published', source: 'iso8820part5' },
      { symbol: 'Ubody', value: 102.4 * bodyOhm, unit: 'V', expression: 'I * Rbody' },
    ],
    result: 'Ubody',
  };
}

function answerOf(run: Run, index: number): RunAnswer {
  return runAnswer(run.id, {
    length: { lengthM: 0.6 + index * 0.4, origin: run.tapedM === null ? 'drawn' : 'taped', plusMinusM: 0.1 },
    gauge: gauge(run.kind === 'remote' ? 'sae:18' : 'sae:1/0'),
    governs: 'drop',
    smallest: gauge('sae:2'),
    areaMm2: 47.6,
    fullA: 102.4,
    heatingA: 59.1,
    ampacityA: 229,
    conductorC: 84,
    dropV: 0.12,
    dropPercent: 1,
    limitA: 125,
    unprotectedM: run.id === 'batToFuse' ? 0.76 : 0,
    whyLength: 'why.body',
    whySize: 'why.body',
    whyDrop: 'why.body',
  });
}

const fuse = (fittingId: string, slot: string | null, ratingA: number): FuseAnswer => ({
  fittingId,
  terminal: slot,
  ratingA,
  family: 'iso8820-5-SF30',
  chosen: true,
  neededA: ratingA - 12,
  ceilingA: ratingA + 40,
  fullA: ratingA - 12,
  heatingA: ratingA / 2,
  why: 'why.body',
});

const FINDINGS: readonly Finding[] = [
  {
    id: 'unprotected-length.bat',
    rule: 'unprotected-length',
    severity: 'stop',
    places: [
      { kind: 'run', id: 'batToFuse' },
      { kind: 'fitting', id: 'bat' },
    ],
    params: { unprotectedM: 0.76, limitM: 0.45 },
    source: 'feedrunRules',
    provisional: true,
    decidedBy: [],
    why: 'why.body',
  },
  {
    id: 'drop-cables.rear',
    rule: 'drop-cables',
    severity: 'fix',
    places: [{ kind: 'fitting', id: 'rear' }],
    params: { dropV: 0.41, dropPercent: 3.4, limitPercent: 3 },
    source: 'abycE11',
    provisional: false,
    decidedBy: ['settings.bodyOhm', 'rear.efficiency'],
    why: null,
  },
  {
    id: 'load-unknown.front',
    rule: 'load-unknown',
    severity: 'note',
    places: [{ kind: 'fitting', id: 'front' }],
    params: {},
    source: 'feedrunRules',
    provisional: false,
    decidedBy: [],
    why: null,
  },
];

/** A stop, a fix and a note; every kind of figure. */
export function exampleAnswer(plan: Plan): Assessment {
  const figure = { places: [], provisional: false, why: 'why.body' } as const;
  return answerWith({
    planId: plan.id,
    headline: plan.fittings.length === 0 ? { kind: 'empty', count: 0 } : { kind: 'stop', count: 1 },
    notTold: [
      { kind: 'lengthsNotTaped', ids: plan.runs.map(({ id }) => id) },
      { kind: 'surroundingsNotMarked', ids: plan.runs.map(({ id }) => id) },
      { kind: 'batteryAssumed', ids: ['bat'] },
    ],
    figures: {
      feed: { ...figure, value: 'sae:1/0', unit: 'gauge', governs: 'drop' },
      mainFuse: { ...figure, value: 125, unit: 'A', governs: 'fullCurrent' },
      worstDrop: { ...figure, value: 0.41, unit: 'V', governs: 'cables' },
      unprotected: { ...figure, value: 0.76, unit: 'm', governs: 'drawn', provisional: true },
    },
    findings: plan.fittings.length === 0 ? [] : FINDINGS,
    runs: plan.runs.map(answerOf),
    fuses: [fuse('mainFuse', null, 125), fuse('block', 'out1', 50), fuse('block', 'out2', 100)],
    amplifiers: ['front', 'rear'].map((fittingId, index) => ({
      fittingId,
      fullA: 30 + index * 40,
      heatingA: 20 + index * 20,
      terminalV: 11.9,
      dropCablesV: index === 1 ? 0.41 : 0.2,
      dropCablesPercent: index === 1 ? 3.4 : 1.7,
      dropFeedV: 0.2,
      dropReturnV: 0.1,
      dropWholeV: 0.6,
      dropWholePercent: 5,
      whyCurrent: 'why.body',
      whyTerminal: 'why.body',
      whyDrop: 'why.body',
    })),
    sources: [
      sourceAnswer('bat', {
        unprotectedM: 0.76,
        plusMinusM: 0.1,
        runIds: ['batToFuse'],
        totalUnprotectedM: 0.76,
        endsAt: { fittingId: 'mainFuse', terminal: null },
        why: 'why.body',
      }),
    ],
    assumptions: [
      {
        path: 'settings.bodyOhm',
        value: plan.settings.bodyOhm.value,
        origin: 'assumed',
        source: 'commonPractice',
        note: null,
      },
      { path: 'rear.efficiency', value: 0.8, origin: 'assumed', source: 'commonPractice', note: null },
      { path: 'rear.regulated', value: true, origin: 'assumed', source: 'feedrunRules', note: null },
    ],
    rulesChecked: ['unprotected-length', 'drop-cables'],
    rulesNotChecked: [{ rule: 'charging', why: 'noAlternator' }],
    whys: { 'why.body': exampleWhy(plan.settings.bodyOhm.value) },
    strictest: { ruleSet: 'boatCfr', severity: 'stop', limitM: 0.178 },
    zones: Object.fromEntries(
      [...plan.fittings, ...plan.runs].map(({ id }) => [id, id === 'bat' ? ('bay' as const) : ('cargo' as const)]),
    ),
  });
}
