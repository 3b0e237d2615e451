import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { SOURCES } from '../../src/calc/sources.ts';
import { newPlan, newRun } from '../../src/plan/create.ts';
import { newFitting } from '../../src/plan/newFitting.ts';
import type { OpenCode } from '../../src/plan/openReason.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { words } from '../../src/words/full.ts';
import { defaultName, nameOfId, runTitle } from '../../src/words/index.ts';
import { writtenTexts } from './written.ts';

/** Every reason, held complete by the compiler. */
const OPEN_CODES = Object.keys({
  empty: true,
  tooLarge: true,
  truncated: true,
  notJson: true,
  tooDeep: true,
  tooMany: true,
  duplicateKey: true,
  notAPlan: true,
  noVersion: true,
  newerVersion: true,
  olderVersion: true,
  migrationFailed: true,
  missingKey: true,
  unknownKey: true,
  wrongType: true,
  notFinite: true,
  tooSmall: true,
  tooBig: true,
  notAllowed: true,
  textTooLong: true,
  listTooLong: true,
  listTooShort: true,
  badId: true,
  badGauge: true,
  badTerminal: true,
  brokenText: true,
  duplicateId: true,
  duplicateTerminal: true,
  duplicateFamily: true,
  unknownSheet: true,
  unknownFitting: true,
  unknownTerminal: true,
  unknownGauge: true,
  unknownFamily: true,
  endOffSheet: true,
  sameSheet: true,
  selfJoin: true,
} satisfies Record<OpenCode, true>);

describe('what is never said', () => {
  it('no text calls anything safe', () => {
    const texts = writtenTexts('src/words');
    expect(texts.length).toBeGreaterThan(300);
    expect(texts.filter((text) => /safe/i.test(text))).toEqual([]);
  });
});

describe('the headline', () => {
  const said = (headline: Assessment['headline'], ruleSet: Assessment['ruleSet'] = 'vehicle') =>
    words.headline.headline(headline, ruleSet);

  it('has the words of the rules', () => {
    expect(said({ kind: 'stop', count: 2 })).toBe('2 to stop for');
    expect(said({ kind: 'fix', count: 3 })).toBe('3 to fix before you build');
    expect(said({ kind: 'provisional', count: 2 })).toBe('Provisional: 2 lengths to tape');
    expect(said({ kind: 'provisional', count: 1 })).toBe('Provisional: 1 length to tape');
    expect(said({ kind: 'nothing', count: 0 })).toBe('Nothing found against the vehicle rule set');
    expect(said({ kind: 'nothing', count: 0 }, 'boatAbyc')).toContain('boat rule set');
  });

  it('lists what was not told and what was not checked', () => {
    expect(words.headline.notTold([{ kind: 'lengthsNotTaped', ids: ['a', 'b'] }])).toBe('2 lengths not taped');
    expect(words.headline.notChecked([{ rule: 'charging' }])).toBe('what the alternator can carry (none drawn)');
  });
});

describe('why a file was not opened', () => {
  it.each([...OPEN_CODES, 'unreadable'])('%s has a line of its own: what, where, what to do', (code) => {
    const params = {
      code,
      where: 'fittings[3].at',
      name: 'Rear amplifier',
      found: 9,
      known: 1,
      limit: 5,
      id: 'x',
      key: 'k',
      gauge: 'sae:5',
    };
    const text = words.openRefused(params);
    expect(text).toMatch(
      /^Not opened: .+, at fittings\[3\]\.at \(Rear amplifier\)\. .+\. Your open plan is as it was\.$/,
    );
    expect(words.openRefused({ code })).not.toMatch(/undefined|NaN/);
  });

  it('no two codes say the same', () => {
    const lines = OPEN_CODES.map((code) => words.openRefused({ code, found: 'f', limit: 1, id: 'i', key: 'k' }));
    expect(new Set(lines).size).toBe(OPEN_CODES.length);
  });
});

describe('names', () => {
  const outline = { kind: 'bench', lengthM: 2, widthM: 1 } as const;
  const empty = newPlan({ id: 'p', name: 'P', sheetId: 's', outline, mirrored: false });
  const at = { xM: 0, yM: 0 };
  const withFittings = (...named: (readonly ['fuse' | 'battery' | 'amplifier', string])[]): Plan => ({
    ...empty,
    fittings: named.map(([kind, name], index) => newFitting(kind, { id: `f${index}`, name, sheetId: 's', at })),
  });

  it('the first fuse is the main fuse, later ones are plain fuses', () => {
    expect(defaultName('fuse', empty)).toBe('Main fuse');
    expect(defaultName('fuse', withFittings(['fuse', 'Main fuse']))).toBe('Fuse');
    expect(defaultName('fuse', withFittings(['fuse', 'Main fuse'], ['fuse', 'Fuse']))).toBe('Fuse 2');
  });

  it('no name is given twice', () => {
    expect(defaultName('amplifier', withFittings(['amplifier', 'Amplifier'], ['amplifier', 'Amplifier 3']))).toBe(
      'Amplifier 2',
    );
  });

  it('a run without a name is called by its ends, and by its own name once it has one', () => {
    const plan = withFittings(['battery', 'Battery'], ['fuse', 'Main fuse']);
    const run = newRun({
      id: 'r',
      name: '',
      kind: 'power',
      sheetId: 's',
      from: { fittingId: 'f0', terminal: 'positive' },
      to: { fittingId: 'f1', terminal: 'in' },
      bends: [],
    });
    expect(runTitle(plan, run)).toBe('Battery to main fuse');
    expect(runTitle(plan, { ...run, name: 'Feed' })).toBe('Feed');
    expect(nameOfId({ ...plan, runs: [run] }, 'r')).toBe('Battery to main fuse');
    expect(nameOfId(plan, 'gone')).toBeNull();
  });
});

describe('sources', () => {
  it('each is said with its document and how far it is trusted', () => {
    for (const id of Object.keys(SOURCES) as (keyof typeof SOURCES)[]) {
      expect(words.sourceLine(id)).toMatch(/\((published|from memory|derived here|our choice)\)$/);
    }
    expect(words.sourceLine('cfr183425Table5')).toBe('33 CFR 183.425, Table 5 (published)');
  });

  it('a note in the own words of the user stays as it is', () => {
    expect(words.sourceNote('measured on the car')).toBe('measured on the car');
  });
});
