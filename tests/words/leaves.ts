import type { Severity } from '../../src/assess/answer.ts';
import { SOURCES } from '../../src/calc/sources.ts';
import type { Told } from '../../src/words/told.ts';
import { unitsOf } from '../../src/words/units.ts';

/** Every text of a language, by the path to it. Functions say what they give for sample arguments. */
export function textsOf(tree: unknown, path = ''): [string, string][] {
  if (typeof tree === 'string') return [[path, tree]];
  if (typeof tree === 'function') {
    const sample = SAMPLES.find(([where]) => where.test(path));
    // one that was made from another takes its arguments as a list, and tells no number of them
    const calls = sample === undefined ? [Array.from({ length: tree.length || 4 }, () => 'X')] : sample[1];
    return calls.flatMap((args, nth) => textsOf(tree(...args), `${path}(${nth})`));
  }
  if (typeof tree !== 'object' || tree === null) return [];
  return Object.entries(tree).flatMap(([key, value]) => textsOf(value, path === '' ? key : `${path}.${key}`));
}

const COUNTS = [[0], [1], [2]];
const PROBLEMS = ['empty', 'unreadable', 'negative', 'twoDecimalSigns', 'tooShort', 'tooLong'];

/** A finding of which everything is told, or nothing. */
function told(severity: Severity, isTold: boolean): Told {
  const figure = (_name: string, otherwise = '') => (isTold ? '2 X' : otherwise);
  const name = () => (isTold ? 'X' : null);
  return {
    ...{ severity, units: unitsOf('m', 'en'), number: () => (isTold ? 2 : null), text: name, list: () => [] },
    ...{
      placeCount: 2,
      place: () => 'X',
      placeKind: () => 'run',
      namesOfKinds: () => (isTold ? ['X', 'X'] : []),
      nameOfKind: name,
      named: name,
      family: () => 'X',
    },
    ...{ length: figure, current: figure, voltage: figure, percent: figure, power: figure, temperature: figure },
    ...{ gauge: figure, lengthBeside: (which, _limit, otherwise) => figure(which, otherwise) },
  };
}
const TOLD = (['stop', 'fix', 'note'] as const).flatMap((severity) => [
  [told(severity, true)],
  [told(severity, false)],
]);

/** Arguments for functions that take more than names. */
const SAMPLES: readonly (readonly [RegExp, readonly (readonly unknown[])[]])[] = [
  [/^findings\.findings/, TOLD],
  [/^findings\.decidedBy$/, [[['A', 'B']]]],
  [/^findings\.looming$/, [[['A', 'B'], 'Sentence.']]],
  [
    /^shorts\.outcome$/,
    [
      [{ verdict: 'opensInTime', harm: 'none', unprotected: false, withoutLimits: false }, 'X'],
      [{ verdict: 'opensInTime', harm: 'none', unprotected: true, withoutLimits: false }, null],
      [{ verdict: 'nothingOpens', harm: 'none', unprotected: false, withoutLimits: false }, 'X'],
      [{ verdict: 'nothingOpens', harm: 'certain', unprotected: false, withoutLimits: false }, null],
      [{ verdict: 'damagedFirst', harm: 'certain', unprotected: false, withoutLimits: false }, 'X'],
      [{ verdict: 'cannotBeTold', harm: 'possible', unprotected: false, withoutLimits: false }, null],
      [{ verdict: 'cannotBeTold', harm: 'possible', unprotected: false, withoutLimits: true }, 'X'],
    ],
  ],
  [/^sourceLine$/, Object.keys(SOURCES).map((id) => [id])],
  [/^sourceNote$/, [['cfr183425Table5']]],
  [/^messages\./, [[{ name: 'X', size: 'sae:4', time: 0 }]]],
  [/^(openRefused|refused)$/, [[{ code: 'missingKey', key: 'k', where: 'fittings[3]', name: 'X' }]]],
  [/^sketch\.describePane$/, [['X', { fittings: 2, runs: 1, unprotected: '1 m' }]]],
  [/^sketch\.tab$/, [['positive', 'X']]],
  [/^act$/, [['move', 'X']]],
  [
    /^history\./,
    [
      ['X', 0],
      ['X', 1],
      ['X', 2],
    ],
  ],
  [/^fittings\.terminal$/, [['out2'], ['stud']]],
  [/^fittings\.terminalOf$/, [['X', 'out2']]],
  [/^assumption$/, [['a.efficiency', () => 'X']]],
  [/^governs$/, [['drop']]],
  [
    /^headline\.headline$/,
    ['stop', 'fix', 'provisional', 'nothing', 'empty'].map((kind) => [{ kind, count: 1 }, 'vehicle']),
  ],
  [
    /^headline\.notTold$/,
    ['lengthsNotTaped', 'surroundingsNotMarked', 'batteryAssumed', 'cableUnmarked', 'loadUnknown'].flatMap((kind) => [
      [[{ kind, ids: ['a'] }]],
      [[{ kind, ids: ['a', 'b'] }]],
    ]),
  ],
  [/^headline\.notChecked$/, [[[{ rule: 'charging' }]]]],
  [
    /^headline\.brief$/,
    [
      [0, 0],
      [1, 1],
      [2, 2],
    ],
  ],
  [/^headline\.notesCount$|^customer\.(notFinished|toMeasure)$|^customer\.topics/, COUNTS],
  [/^(list\.(fittings|runs)|inspector\.bends|proposing\.parts)$/, COUNTS],
  [/^newPlanDialog\.chosen$/, [[[100, 200]]]],
  [/^fields\.lengthProblem$/, PROBLEMS.map((problem) => [problem, 'X', '1', '2'])],
  [
    /^fields\.numberProblem$/,
    ['empty', 'unreadable', 'otherUnit', 'tooSmall', 'tooLarge'].map((problem) => [problem, 'X', '1', '2', 'W']),
  ],
  [/^customer\.sits$/, [['bay', { length: '1 m', source: 'X' }]]],
  [/^customer\.covers(Unshown)?$/, [['X', ['A', 'B', 'C']]]],
  [/^customer\.coversShared$/, [['X', ['A', 'B', 'C'], 'Y']]],
  [/^proposing\.why$/, [['X', 'firstFuse']]],
  [/^whys\.step$/, [['Iz']]],
];
