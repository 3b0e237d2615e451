/**
 * Looks over a text before it is parsed: whether it is JSON at all and where it stops being so, how deep and how much of
 * it there is, and keys given twice, of which a parser would silently keep the last.
 */
import { excerpt, type OpenReason } from './openReason.ts';

/** A plan nests eight deep. */
export const MAX_DEPTH = 32;
/** Values of any kind. The largest plan that the count limits of the schema sensibly allow holds fewer. */
export const MAX_VALUES = 400_000;

type Expecting = 'value' | 'valueOrEnd' | 'key' | 'keyOrEnd' | 'colon' | 'commaOrEnd' | 'nothing';

const BLANKS = /[ \t\n\r]*/y;
const SCALAR = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** Where the pattern's match at that place ends, or null. */
function matchEnd(pattern: RegExp, text: string, start: number): number | null {
  pattern.lastIndex = start;
  return pattern.test(text) ? pattern.lastIndex : null;
}

/** Where the string that opens at `start` ends; null when something in it is not allowed, with the place of that. */
function stringEnd(text: string, start: number): { end: number } | { badAt: number } {
  let at = start + 1;
  while (at < text.length) {
    const code = text.charCodeAt(at);
    if (code === 0x22) return { end: at + 1 };
    if (code < 0x20) return { badAt: at };
    if (code === 0x5c) {
      const end = matchEnd(ESCAPE, text, at);
      if (end === null) return { badAt: text.length - at < 6 ? text.length : at };
      at = end;
    } else {
      at += 1;
    }
  }
  return { badAt: text.length };
}

const SHORT_ESCAPES: Readonly<Record<string, string>> = { b: '\b', f: '\f', n: '\n', r: '\r', t: '\t' };

/** Keys of one object; the settings, the largest of a plan, have 22. */
const MAX_KEYS = 1000;

/** No key of a plan is longer, escaped or not; a longer one is refused later, so its spelling need not be read. */
const MAX_KEY = 200;

/** The characters of a key's token: two spellings of one key are the same key. */
function keyOf(token: string): string {
  const inner = token.slice(1, -1);
  if (inner.length > MAX_KEY || !inner.includes('\\')) return inner;
  return inner.replace(/\\(?:u([0-9a-fA-F]{4})|(.))/g, (_, hex: string | undefined, short: string) =>
    hex === undefined ? (SHORT_ESCAPES[short] ?? short) : String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

/** The first thing that keeps the text from being parsed, or null. */
export function scan(text: string): OpenReason | null {
  /** Open containers, innermost last: the keys of an object so far, null for a list. */
  const open: (Set<string> | null)[] = [];
  let expecting: Expecting = 'value';
  let values = 0;
  let at = 0;

  const fault = (
    code: 'notJson' | 'duplicateKey' | 'tooDeep' | 'tooMany',
    extra: OpenReason['params'] = {},
  ): OpenReason => ({
    code,
    where: '',
    params: { ...placeOf(text, at), ...extra },
  });
  const notJson = (badAt: number): OpenReason => {
    at = badAt;
    return badAt >= text.length ? { code: 'truncated', where: '', params: placeOf(text, badAt) } : fault('notJson');
  };
  const afterValue = (): Expecting => (open.length === 0 ? 'nothing' : 'commaOrEnd');

  for (;;) {
    at = matchEnd(BLANKS, text, at) ?? at;
    const char = text[at];
    if (char === undefined) return expecting === 'nothing' ? null : notJson(at);
    const keys = open.at(-1);

    if (expecting === 'nothing') return fault('notJson');
    if (expecting === 'colon') {
      if (char !== ':') return fault('notJson');
      at += 1;
      expecting = 'value';
    } else if (expecting === 'commaOrEnd' && char === ',') {
      at += 1;
      expecting = keys === null ? 'value' : 'key';
    } else if (char === (keys === null ? ']' : '}') && expecting !== 'value' && expecting !== 'key') {
      open.pop();
      at += 1;
      expecting = afterValue();
    } else if (expecting === 'commaOrEnd') {
      return fault('notJson');
    } else if (expecting === 'key' || expecting === 'keyOrEnd') {
      if (char !== '"' || keys === null || keys === undefined) return fault('notJson');
      const string = stringEnd(text, at);
      if ('badAt' in string) return notJson(string.badAt);
      const key = keyOf(text.slice(at, string.end));
      if (keys.has(key)) return fault('duplicateKey', { key: excerpt(key) });
      keys.add(key);
      if (keys.size > MAX_KEYS) return fault('tooMany', { limit: MAX_KEYS });
      at = string.end;
      expecting = 'colon';
    } else {
      values += 1;
      if (values > MAX_VALUES) return fault('tooMany', { limit: MAX_VALUES });
      if (char === '{' || char === '[') {
        if (open.length === MAX_DEPTH) return fault('tooDeep', { limit: MAX_DEPTH });
        open.push(char === '{' ? new Set() : null);
        at += 1;
        expecting = char === '{' ? 'keyOrEnd' : 'valueOrEnd';
        continue;
      }
      if (char === '"') {
        const string = stringEnd(text, at);
        if ('badAt' in string) return notJson(string.badAt);
        at = string.end;
      } else {
        const end = matchEnd(SCALAR, text, at);
        if (end === null) return notJson(isCutShort(text, at) ? text.length : at);
        at = end;
      }
      expecting = afterValue();
    }
  }
}

/** Whether the rest of the text is the beginning of a word or number that the end cut off. */
const isCutShort = (text: string, at: number): boolean =>
  text.length - at <= 24 &&
  /^(?:t(?:ru?)?|f(?:a(?:ls?)?)?|n(?:ul?)?|-|-?\d+(?:\.\d*)?(?:[eE][+-]?)?)$/.test(text.slice(at));

/** Line and column as an editor counts them, from 1. */
function placeOf(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at);
  const lineStart = before.lastIndexOf('\n') + 1;
  return { line: before.split('\n').length, column: at - lineStart + 1 };
}
