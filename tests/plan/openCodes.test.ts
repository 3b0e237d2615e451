import { describe, expect, it } from 'vitest';
import { MAX_TEXT } from '../../src/plan/open.ts';
import type { OpenCode } from '../../src/plan/openReason.ts';
import { MAX_VALUES } from '../../src/plan/scan.ts';
import { changed, nested, type Raw, reasonFor, text, withAt } from './support/hostile.ts';

describe('every reason there is', () => {
  const ground = (index: number) =>
    `{"id":"g${index}","name":"","sheetId":"sheet","at":{"xM":1,"yM":1},"zone":"auto","takes":null,`;
  const grounds = Array.from({ length: 2001 }, (_, index) => `${ground(index)}"locked":false,"kind":"ground"}`);
  const own = (family: string) =>
    `{"family":"${family}","name":"","seat":"holder","ratingsA":[60],"breakingA":null,"ratedV":32}`;
  /** One text for each code; a code without a text does not compile. A failed migration has its tests beside the steps. */
  const oneOfEach: Record<Exclude<OpenCode, 'migrationFailed'>, string> = {
    empty: '',
    tooLarge: ' '.repeat(MAX_TEXT) + text,
    truncated: text.slice(0, 100),
    notJson: `${text}}`,
    tooDeep: nested(100),
    tooMany: `[${'[],'.repeat(MAX_VALUES)}[]]`,
    duplicateKey: '{"format":1,"format":1}',
    notAPlan: '[]',
    noVersion: withAt('version', '[]'),
    newerVersion: withAt('version', '5'),
    olderVersion: withAt('version', '0'),
    missingKey: withAt('runs.1.from', '{}'),
    unknownKey: withAt('runs.1.extra', '0'),
    wrongType: withAt('runs.1.name', '0'),
    notFinite: withAt('runs.1.riseM', '1e999'),
    tooSmall: withAt('runs.1.riseM', '-1'),
    tooBig: withAt('runs.1.riseM', '20.1'),
    notAllowed: withAt('runs.1.zone', '"roof"'),
    textTooLong: withAt('runs.1.nearerImpossible', `"${'x'.repeat(1001)}"`),
    listTooLong: withAt('fittings', `[${grounds.join()}]`),
    listTooShort: withAt('sheets', '[]'),
    badId: withAt('runs.1.id', '"a.b"'),
    badGauge: withAt('runs.1.conductor.size', '"4"'),
    badTerminal: withAt('runs.1.from.terminal', '"Out 1"'),
    brokenText: withAt('runs.1.nearerImpossible', '"\\udfff"'),
    duplicateId: withAt('runs.1.id', '"feed"'),
    duplicateTerminal: withAt('fittings.3.outputs.1.terminal', '"out1"'),
    duplicateFamily: withAt('settings.ownLinks', `[${own('own2')},${own('own2')}]`),
    unknownSheet: withAt('runs.1.sheetId', '"none"'),
    unknownFitting: withAt('runs.1.from.fittingId', '"none"'),
    unknownTerminal: withAt('runs.1.from.terminal', '"bus"'),
    unknownGauge: withAt('runs.1.conductor.size', '"mm2:3"'),
    unknownFamily: withAt('settings.linkFamilies', '["own2"]'),
    endOffSheet: changed(({ sheets, fittings }) => {
      const [sheet, last] = [sheets?.[0], fittings?.[7]];
      if (sheets !== undefined && sheet !== undefined) sheets[1] = { ...sheet, id: 'other' as unknown as Raw };
      if (last !== undefined) last.sheetId = 'other' as unknown as Raw;
    }),
    sameSheet: changed(({ fittings }) => {
      const last = fittings?.[7];
      if (last !== undefined) {
        last.kind = 'continuation' as unknown as Raw;
        last.other = { sheetId: 'sheet', at: { xM: 1, yM: 1 } } as unknown as Raw;
      }
    }),
    selfJoin: withAt('runs.1.to', '{"fittingId":"fuse","terminal":"out"}'),
  };

  it.each(Object.entries(oneOfEach))('%s', (code, hostile) => {
    expect(reasonFor(hostile).code).toBe(code);
  });
});
