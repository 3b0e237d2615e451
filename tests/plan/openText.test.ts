import { describe, expect, it } from 'vitest';
import { MAX_TEXT, openPlan } from '../../src/plan/open.ts';
import { savePlan } from '../../src/plan/save.ts';
import { MAX_DEPTH, MAX_VALUES } from '../../src/plan/scan.ts';
import { changed, nested, reasonFor, replaced, text, withAt } from './support/hostile.ts';
import { sampleVan } from './support/samplePlan.ts';

describe('openPlan opens', () => {
  it('a saved plan, and tells that it was not migrated', () => {
    expect(openPlan(text)).toEqual({ ok: true, plan: sampleVan(), migratedFrom: null });
  });

  it('a text with a byte-order mark, other spacing and keys in another order', () => {
    const shuffled = changed((document) => {
      for (const key of Object.keys(document).reverse()) {
        const value = document[key];
        delete document[key];
        if (value !== undefined) document[key] = value;
      }
    });
    expect(shuffled.startsWith('{"pictures"')).toBe(true);
    const result = openPlan(`\uFEFF\r\n\t ${shuffled}`);
    expect(result.ok && savePlan(result.plan)).toBe(text);
  });

  it('-0 as 0, and a key written with escapes as that key', () => {
    const result = openPlan(withAt('runs.0.riseM', '-0').replace('"riseM"', '"r\\u0069seM"'));
    expect(result.ok && Object.is(result.plan.runs[0]?.riseM, 0)).toBe(true);
  });
});

describe('openPlan refuses a text that is no JSON, or too much of it', () => {
  const cases: [what: string, hostile: string, code: string][] = [
    ['nothing', '', 'empty'],
    ['blanks', ' \n\t ', 'empty'],
    ['a mark alone', '\uFEFF', 'empty'],
    ['a word', 'hello', 'notJson'],
    ['a web page', '<!doctype html><title>Plan</title>', 'notJson'],
    ['half a plan', text.slice(0, text.length / 2), 'truncated'],
    ['all but the last brace', text.trimEnd().slice(0, -1), 'truncated'],
    ['a text cut in a string', text.slice(0, text.indexOf('feedrun') + 3), 'truncated'],
    ['a text cut in an escape', '{"name":"\\u00', 'truncated'],
    ['a text cut in a number', '{"version":1.', 'truncated'],
    ['two plans', text + text, 'notJson'],
    ['something after the end', `${text}x`, 'notJson'],
    ['NaN', replaced('"xM": 0.5', '"xM": NaN'), 'notJson'],
    ['Infinity', replaced('"xM": 0.5', '"xM": Infinity'), 'notJson'],
    ['-Infinity', replaced('"xM": 0.5', '"xM": -Infinity'), 'notJson'],
    ['undefined', replaced('"xM": 0.5', '"xM": undefined'), 'notJson'],
    ['a hexadecimal number', replaced('"xM": 0.5', '"xM": 0x1F'), 'notJson'],
    ['a number with a leading 0', replaced('"xM": 0.5', '"xM": 00.5'), 'notJson'],
    ['a decimal comma', replaced('"xM": 0.5', '"xM": 0,5'), 'notJson'],
    ['a comma too many', replaced('"bends": []', '"bends": [,]'), 'notJson'],
    ['a trailing comma', replaced('"pictures": []', '"pictures": [],'), 'notJson'],
    ['a comment', `// plan\n${text}`, 'notJson'],
    ['single quotes', text.replaceAll('"', "'"), 'notJson'],
    ['a bare line break in a text', replaced('Name of fuse', 'Name\nof fuse'), 'notJson'],
    ['a wrong bracket', replaced('"pictures": []', '"pictures": [}'), 'notJson'],
    ['a key twice', replaced('"locked": false', '"locked": false, "locked": true'), 'duplicateKey'],
    ['a key twice, once escaped', replaced('"locked": false', '"locked": false, "l\\u006fcked": true'), 'duplicateKey'],
    ['a megabyte ten times', `{"a":"${'x'.repeat(10_000_000)}"}`, 'tooLarge'],
    ['10,000 brackets', nested(10_000), 'tooDeep'],
    ['a million brackets', '['.repeat(1_000_000), 'tooDeep'],
    ['more keys than any object', `{${Array.from({ length: 1001 }, (_, key) => `"${key}":0`).join()}}`, 'tooMany'],
    ['more values than any plan', `[${'0,'.repeat(MAX_VALUES)}0]`, 'tooMany'],
  ];

  it.each(cases)('%s', (_, hostile, code) => {
    expect(reasonFor(hostile).code).toBe(code);
  });

  it('says the line and column where it stops being JSON', () => {
    expect(reasonFor('{\n  "format": "feedrun-plan",\n  "version" 1\n}').params).toEqual({ line: 3, column: 13 });
    expect(reasonFor('{\n "a": 1,\n "a": 2\n}').params).toEqual({ line: 3, column: 2, key: 'a' });
  });

  it('the limits themselves pass on to the next check', () => {
    expect(reasonFor(nested(MAX_DEPTH)).code).toBe('notAPlan');
    expect(reasonFor(nested(MAX_DEPTH + 1)).code).toBe('tooDeep');
    expect(reasonFor(`[${'0,'.repeat(MAX_VALUES - 2)}0]`).code).toBe('notAPlan');
    expect(reasonFor(`"${'x'.repeat(MAX_TEXT - 2)}"`).code).toBe('notAPlan');
    expect(reasonFor(`"${'x'.repeat(MAX_TEXT - 1)}"`)).toMatchObject({ code: 'tooLarge', params: { limit: MAX_TEXT } });
  });

  it('brackets and commas inside a text are text', () => {
    expect(openPlan(replaced('Name of fuse', '[[[[{{{,,,\\"]}')).ok).toBe(true);
  });
});

describe('openPlan refuses what is no plan of a version it knows', () => {
  it.each([
    ['null', 'null', 'notAPlan'],
    ['a number', '12', 'notAPlan'],
    ['a list', '[]', 'notAPlan'],
    ['an empty object', '{}', 'notAPlan'],
    ['another format', withAt('format', '"some-plan"'), 'notAPlan'],
    ['no version', withAt('version', 'null'), 'noVersion'],
    ['a version in words', withAt('version', '"1"'), 'noVersion'],
    ['half a version', withAt('version', '1.5'), 'noVersion'],
    ['a negative version', withAt('version', '-1'), 'noVersion'],
    ['a version that is an object', withAt('version', '{"toString":1,"valueOf":1}'), 'noVersion'],
    ['a version without end', withAt('version', '1e400'), 'noVersion'],
    ['a newer version', withAt('version', '5'), 'newerVersion'],
    ['a much newer version', withAt('version', '900719925474'), 'newerVersion'],
    ['an older version than any', withAt('version', '0'), 'olderVersion'],
  ])('%s', (_, hostile, code) => {
    expect(reasonFor(hostile).code).toBe(code);
  });

  it('says which version it found and which it knows', () => {
    expect(reasonFor(withAt('version', '7'))).toEqual({
      code: 'newerVersion',
      where: 'version',
      params: { found: 7, known: 4 },
    });
  });
});
