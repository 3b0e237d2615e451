import type { SourceId } from '../calc/sources.ts';
import type { Input } from './schema.ts';

/** A value that goes until it is told otherwise, and where it comes from. */
export const assumed = <T>(value: T, source: SourceId): Input<T> => ({ value, origin: 'assumed', source });
