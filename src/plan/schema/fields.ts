/** What the parts of the document are made of: bounded numbers, ids, names, places, values that may be assumed. */
import * as v from 'valibot';

/** Count limits: far above any vehicle, low enough that a hostile file cannot stall the page. */
export const MAX_ITEMS = 2_000;
export const MAX_NAME = 200;
export const MAX_BENDS = 500;

export const bounded = (min: number, max: number) => v.pipe(v.number(), v.finite(), v.minValue(min), v.maxValue(max));
export const listOf = <S extends v.GenericSchema>(item: S, max = MAX_ITEMS) => v.pipe(v.array(item), v.maxLength(max));
export const someOf = <S extends v.GenericSchema>(item: S, max: number) =>
  v.pipe(v.array(item), v.minLength(1), v.maxLength(max));
export const counted = (max: number) => v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(max));

/** What is wrong with a text that does not match; carried as the message of its issue, worded where it is shown. */
export const TEXT_CODES = ['badId', 'badGauge', 'badTerminal', 'brokenText'] as const;
export const matching = (pattern: RegExp, code: (typeof TEXT_CODES)[number]) =>
  v.pipe(v.string(), v.regex(pattern, code));

/** Half of a character pair cannot be written to a file or a page; a name cut short in the middle of one is refused. */
const WELL_FORMED = /^[^\ud800-\udfff]*$/u;
export const text = (max: number) => v.pipe(v.string(), v.maxLength(max), v.regex(WELL_FORMED, 'brokenText'));

export const id = matching(/^[A-Za-z0-9_-]{1,40}$/, 'badId');
export const name = text(MAX_NAME);

/** A value that may be assumed: where it comes from travels with it. `source` is a free note or a source id. */
export const inputOf = <S extends v.GenericSchema>(value: S) =>
  v.strictObject({
    value,
    origin: v.picklist(['assumed', 'told', 'measured']),
    source: v.exactOptional(text(MAX_NAME)),
  });

const coordinateM = bounded(-100, 100);
export const pointSchema = v.strictObject({ xM: coordinateM, yM: coordinateM });

/** 'sae:4', 'awg:1/0', 'mm2:25'; whether the size exists is checked where a plan is opened. */
export const gaugeId = matching(/^(sae|awg|mm2):[0-9./]{1,6}$/, 'badGauge');

/** Where a cable or a holder lives; 'auto' takes it from the outline and counts as not told. */
export const zone = v.picklist(['auto', 'bay', 'wing', 'hot', 'cabin', 'cargo', 'under']);
