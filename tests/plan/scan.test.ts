import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scan } from '../../src/plan/scan.ts';

/** Many texts or plans each; a busy machine takes longer than a single test may. */
const PROPERTY_TIMEOUT_MS = 60_000;

const parses = (text: string): boolean => {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
};

/** Codes for texts that are no JSON; the others are about JSON that is too much or says a thing twice. */
const isNoJson = (text: string): boolean => ['notJson', 'truncated'].includes(scan(text)?.code ?? '');

describe('the scan against the parser of the platform', () => {
  it(
    'passes what JSON.stringify writes, spaced or not',
    () => {
      fc.assert(
        fc.property(fc.jsonValue({ maxDepth: 6 }), fc.constantFrom(0, 2, '\t'), (value, indent) => {
          expect(scan(JSON.stringify(value, null, indent))).toBeNull();
        }),
        { numRuns: 500, seed: 20260721 },
      );
    },
    PROPERTY_TIMEOUT_MS,
  );

  it(
    'agrees on texts made of the pieces of JSON',
    () => {
      const piece = fc.constantFrom(
        ...['{', '}', '[', ']', ',', ':', '"', '\\', 'true', 'false', 'null', '0', '1', '-', '.', 'e', '+', 'E'],
        ...['"a"', '"b":', ' ', '\n', '\\u00e9', '\\"', '\u0001', '\u00a0', 'u', '/', "'", '9', '"c":[', '{"d":'],
      );
      fc.assert(
        fc.property(fc.array(piece, { maxLength: 12 }), (pieces) => {
          const text = pieces.join('');
          expect(isNoJson(text), text).toBe(!parses(text));
        }),
        { numRuns: 2000, seed: 20260722 },
      );
    },
    PROPERTY_TIMEOUT_MS,
  );

  it(
    'agrees on JSON with one character taken out, put in or changed',
    () => {
      const damage = fc.record({
        value: fc.jsonValue({ maxDepth: 4 }),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
        cut: fc.constantFrom(0, 1),
        put: fc.constantFrom('', '"', '{', '}', '[', ']', ',', ':', '\\', '0', 'e', '-', ' ', '\u0000', '\u2028', 'é'),
      });
      fc.assert(
        fc.property(damage, ({ value, share, cut, put }) => {
          const json = JSON.stringify(value);
          const at = Math.floor(share * json.length);
          const text = json.slice(0, at) + put + json.slice(at + cut);
          expect(isNoJson(text), text).toBe(!parses(text));
        }),
        { numRuns: 1000, seed: 20260723 },
      );
    },
    PROPERTY_TIMEOUT_MS,
  );

  it(
    'agrees on anything at all',
    () => {
      fc.assert(
        fc.property(fc.array(fc.nat(0xffff), { maxLength: 12 }), (codes) => {
          const text = String.fromCharCode(...codes.map((code) => code % 0x90));
          expect(isNoJson(text), text).toBe(!parses(text));
        }),
        { numRuns: 500, seed: 20260724 },
      );
    },
    PROPERTY_TIMEOUT_MS,
  );

  it.each([
    ['{"a":{"a":1},"b":{"a":1}}', null],
    ['[{"a":1},{"a":1}]', null],
    ['{"a":1,"b":2,"a":3}', 'duplicateKey'],
    ['{"":1,"":2}', 'duplicateKey'],
    ['{"\\n":1,"\\u000A":2}', 'duplicateKey'],
    ['{"/":1,"\\/":2}', 'duplicateKey'],
    ['{"__proto__":1,"__proto__":2}', 'duplicateKey'],
  ])('keys of one object: %s', (text, code) => {
    expect(scan(text)?.code ?? null).toBe(code);
  });
});
