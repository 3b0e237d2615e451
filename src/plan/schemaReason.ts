/** The first issue the schema raises, as a reason. */
import type * as v from 'valibot';
import { excerpt, type OpenCode, type OpenReason } from './openReason.ts';
import { TEXT_CODES } from './schema.ts';

type Issue = v.BaseIssue<unknown>;
type Params = Record<string, string | number>;

export function schemaReason(issue: Issue): OpenReason {
  const path = issue.path ?? [];
  const { code, params } = reasonOf(issue);
  return { code, where: pathText(path.map(({ key }) => key)), params: { ...params, ...nameOf(path) } };
}

/** 'fittings[3].at.xM' of its keys. Keys of a hostile file are cut short. */
function pathText(keys: readonly unknown[]): string {
  return keys
    .map((key) => (typeof key === 'number' ? `[${key}]` : `.${excerpt(String(key))}`))
    .join('')
    .replace(/^\./, '');
}

/** What the outermost named thing on the way is called. */
function nameOf(path: readonly v.IssuePathItem[]): Params {
  const item = path[2]?.input ?? path[1]?.value;
  const isListItem = path[1]?.type === 'array';
  if (!isListItem || typeof item !== 'object' || item === null || !('name' in item)) return {};
  return typeof item.name === 'string' && item.name !== '' ? { name: excerpt(item.name) } : {};
}

function reasonOf(issue: Issue): { code: OpenCode; params: Params } {
  const [expected, found] = [plainList(issue.expected ?? ''), excerpt(issue.received)];
  const limit = typeof issue.requirement === 'number' ? issue.requirement : 0;
  const last = issue.path?.at(-1);
  switch (issue.type) {
    case 'strict_object':
      if (last?.origin !== 'key') return { code: 'wrongType', params: { expected, found } };
      return {
        code: expected === 'never' ? 'unknownKey' : 'missingKey',
        params: { key: excerpt(String(last.key)) },
      };
    case 'variant':
      if (last?.origin === 'value' && last.value === undefined) {
        return { code: 'missingKey', params: { key: String(last.key) } };
      }
      return { code: expected === 'Object' ? 'wrongType' : 'notAllowed', params: { expected, found } };
    case 'literal':
    case 'picklist':
    case 'union':
      return { code: 'notAllowed', params: { expected, found } };
    case 'finite':
      return { code: 'notFinite', params: { found } };
    case 'min_value':
      return { code: 'tooSmall', params: { limit, found } };
    case 'max_value':
      return { code: 'tooBig', params: { limit, found } };
    case 'max_length':
      return { code: typeof issue.input === 'string' ? 'textTooLong' : 'listTooLong', params: { limit } };
    case 'min_length':
      return { code: 'listTooShort', params: { limit } };
    case 'regex':
      return { code: TEXT_CODES.find((code) => code === issue.message) ?? 'wrongType', params: { found } };
    default:
      return { code: 'wrongType', params: { expected, found } };
  }
}

/** 'battery, fuse' of '("battery" | "fuse")'. */
const plainList = (expected: string): string => expected.replace(/[()"]/g, '').replaceAll(' | ', ', ');
