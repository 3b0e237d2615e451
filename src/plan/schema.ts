/**
 * The saved plan, version 1. This schema is the single definition of the document: types, JSON Schema, key order
 * and bounds are all derived from it. Lengths are metres in the plane of the sheet, rounded to 0.1 mm by the edits.
 */
import * as v from 'valibot';

export const PLAN_FORMAT = 'feedrun-plan';
export const PLAN_VERSION = 1;

/** Count limits: far above any vehicle, low enough that a hostile file cannot stall the page. */
export const MAX_ITEMS = 2_000;
export const MAX_NAME = 200;
export const MAX_BENDS = 500;

const bounded = (min: number, max: number) => v.pipe(v.number(), v.finite(), v.minValue(min), v.maxValue(max));
const listOf = <S extends v.GenericSchema>(item: S, max = MAX_ITEMS) => v.pipe(v.array(item), v.maxLength(max));

/** What is wrong with a text that does not match; carried as the message of its issue, worded where it is shown. */
export const TEXT_CODES = ['badId', 'badGauge', 'badTerminal', 'brokenText'] as const;
const matching = (pattern: RegExp, code: (typeof TEXT_CODES)[number]) => v.regex(pattern, code);

/** Half of a character pair cannot be written to a file or a page; a name cut short in the middle of one is refused. */
const WELL_FORMED = /^[^\ud800-\udfff]*$/u;
const text = (max: number) => v.pipe(v.string(), v.maxLength(max), matching(WELL_FORMED, 'brokenText'));

const id = v.pipe(v.string(), matching(/^[A-Za-z0-9_-]{1,40}$/, 'badId'));
const name = text(MAX_NAME);
const coordinateM = bounded(-100, 100);

/** A value that may be assumed: where it comes from travels with it. `source` is a free note or a source id. */
const inputOf = <S extends v.GenericSchema>(value: S) =>
  v.strictObject({
    value,
    origin: v.picklist(['assumed', 'told', 'measured']),
    source: v.exactOptional(text(MAX_NAME)),
  });

export const pointSchema = v.strictObject({ xM: coordinateM, yM: coordinateM });

/** 'sae:4', 'awg:1/0', 'mm2:25'; whether the size exists is checked where a plan is opened. */
const gaugeId = v.pipe(v.string(), matching(/^(sae|awg|mm2):[0-9./]{1,6}$/, 'badGauge'));

/** Where a cable or a holder lives; 'auto' takes it from the outline and counts as not told. */
const zone = v.picklist(['auto', 'bay', 'wing', 'hot', 'cabin', 'cargo', 'under']);

const linkFamily = v.picklist([
  'iso8820-3-C',
  'iso8820-3-E',
  'iso8820-3-F',
  'iso8820-5-SF30',
  'iso8820-5-SF51',
  'slotted-long',
  'slotted-short',
  'ul248-15-T',
]);

/** A fuse-link: rating and family chosen by the answer ('auto') or fixed by hand. */
const linkSchema = v.strictObject({
  ratingA: v.union([v.literal('auto'), bounded(0.5, 2000)]),
  family: v.union([v.literal('auto'), linkFamily]),
});

const fittingBase = {
  id,
  name,
  sheetId: id,
  at: pointSchema,
  zone,
  locked: v.boolean(),
};

const batterySchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('battery'),
  /** Cold cranking amperes, SAE J537. */
  ccaA: inputOf(bounded(10, 5000)),
  capacityAh: inputOf(bounded(1, 2000)),
  /** The vehicle's own cable from the negative post to the body; null where there is none (a second battery, a bench). */
  strap: v.nullable(v.strictObject({ lengthM: inputOf(bounded(0.01, 20)), areaMm2: inputOf(bounded(0.5, 500)) })),
});

const fuseSchema = v.strictObject({ ...fittingBase, kind: v.literal('fuse'), link: linkSchema });

const passThroughSchema = v.strictObject({ ...fittingBase, kind: v.literal('passThrough') });

const blockSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('block'),
  /** Terminals beside 'bus'; each straight onto the bus (link null) or through a link of its own. */
  outputs: v.pipe(
    v.array(
      v.strictObject({
        terminal: v.pipe(v.string(), matching(/^out[1-9][0-9]?$/, 'badTerminal')),
        link: v.nullable(linkSchema),
      }),
    ),
    v.minLength(1),
    v.maxLength(24),
  ),
});

const amplifierSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('amplifier'),
  /** Rated output at the load actually wired, all channels together; null when not told. */
  ratedW: v.nullable(inputOf(bounded(1, 50_000))),
  /** The load wired, per channel; null when not told. */
  loadOhm: v.nullable(bounded(0.1, 64)),
  ampClass: v.picklist(['D', 'AB']),
  efficiency: inputOf(bounded(0.05, 0.99)),
  /** Regulated supply: constant power. Otherwise current in proportion to voltage. */
  regulated: inputOf(v.boolean()),
  /** Ratings of the fuses on the amplifier itself; [] = it has none; null = not told. */
  onboardFusesA: v.nullable(v.pipe(v.array(bounded(0.5, 500)), v.maxLength(12))),
  /** The amplifier maker's largest external fuse; null when not told. */
  externalFuseMaxA: v.nullable(bounded(0.5, 1000)),
});

const groundSchema = v.strictObject({ ...fittingBase, kind: v.literal('ground') });

export const fittingSchema = v.variant('kind', [
  batterySchema,
  fuseSchema,
  passThroughSchema,
  blockSchema,
  amplifierSchema,
  groundSchema,
]);

export const terminalRefSchema = v.strictObject({
  fittingId: id,
  terminal: v.pipe(v.string(), matching(/^[a-z]+[0-9]{0,2}$/, 'badTerminal')),
});

export const conductorSchema = v.strictObject({
  size: v.union([v.literal('auto'), gaugeId]),
  material: inputOf(v.picklist(['copper', 'cca10', 'cca15', 'aluminium'])),
  /** Insulation class, degrees Celsius. For an 'auto' size it is a requirement on what is bought. */
  insulationC: inputOf(v.picklist([60, 75, 80, 90, 105, 125, 200])),
});

export const runSchema = v.strictObject({
  id,
  name,
  kind: v.picklist(['power', 'ground', 'remote']),
  sheetId: id,
  from: terminalRefSchema,
  to: terminalRefSchema,
  bends: listOf(pointSchema, MAX_BENDS),
  /** Height climbed and dropped that a view from above does not show, metres. */
  riseM: bounded(0, 20),
  slackPercent: bounded(0, 100),
  /** Tape-measured length, metres: beats the drawn one. */
  tapedM: v.nullable(bounded(0.001, 100)),
  zone,
  /** In a closed tube, box or conduit for its whole unprotected length. */
  sheathed: v.boolean(),
  /** Why a nearer fuse is impossible, in the user's words; printed on the sheet. */
  nearerImpossible: v.nullable(text(1000)),
  inLoom: v.boolean(),
  underCarpet: v.boolean(),
  conductor: conductorSchema,
  locked: v.boolean(),
});

export const outlineSchema = v.variant('kind', [
  v.strictObject({
    kind: v.literal('panelVan'),
    lengthM: bounded(2, 12),
    widthM: bounded(1, 3),
    /** Nose to firewall. */
    bayM: bounded(0.3, 3),
    /** Firewall to the partition behind the seats. */
    cabM: bounded(0.5, 4),
  }),
  v.strictObject({ kind: v.literal('bench'), lengthM: bounded(0.5, 12), widthM: bounded(0.3, 5) }),
]);

export const sheetSchema = v.strictObject({
  id,
  name,
  outline: outlineSchema,
  /** True metres per metre of the sheet: 1 for an outline with real sizes. */
  scale: inputOf(bounded(0.01, 100)),
  /** Right-hand drive. */
  mirrored: v.boolean(),
});

export const settingsSchema = v.strictObject({
  ruleSet: v.picklist(['vehicle', 'boatCfr', 'boatAbyc']),
  systemV: v.picklist([12]),
  /** How lengths and sizes are shown, and which series 'auto' picks from. */
  showLength: v.picklist(['m', 'ft-in']),
  sizeSystem: v.picklist(['sae', 'awg', 'mm2']),
  stock: v.pipe(v.array(gaugeId), v.minLength(1), v.maxLength(40)),
  linkFamilies: v.pipe(v.array(linkFamily), v.minLength(1), v.maxLength(8)),
  engineAlwaysRunning: v.boolean(),
  restV: inputOf(bounded(9, 16)),
  chargingV: inputOf(bounded(9, 16)),
  /** Mean over peak power of the music: 1/3, 1/8, or 1 for tones. */
  duty: inputOf(bounded(0.01, 1)),
  dropLimit: inputOf(bounded(0.005, 0.2)),
  cutOutV: inputOf(bounded(5, 12)),
  bodyOhm: inputOf(bounded(0, 1)),
  jointOhm: inputOf(bounded(0, 0.1)),
  linkDropV: inputOf(bounded(0, 1)),
  bayC: inputOf(bounded(-40, 200)),
  wingC: inputOf(bounded(-40, 200)),
  hotC: inputOf(bounded(-40, 200)),
  cabinC: inputOf(bounded(-40, 200)),
  cargoC: inputOf(bounded(-40, 200)),
  underC: inputOf(bounded(-40, 200)),
});

/** Room for what later versions of the page fill: marked surroundings, tie points, bracket mounts, pictures. */
const areaSchema = v.strictObject({
  id,
  name,
  sheetId: id,
  zone,
  outline: v.pipe(v.array(pointSchema), v.minLength(3), v.maxLength(MAX_BENDS)),
});
const tieSchema = v.strictObject({ id, name, sheetId: id, at: pointSchema });
const mountSchema = v.strictObject({ id, name, sheetId: id, at: pointSchema });
const pictureSchema = v.strictObject({ id, name, sheetId: id, at: pointSchema, widthM: bounded(0.01, 100) });

export const planSchema = v.strictObject({
  format: v.literal(PLAN_FORMAT),
  version: v.literal(PLAN_VERSION),
  id,
  name,
  settings: settingsSchema,
  sheets: v.pipe(listOf(sheetSchema, 50), v.minLength(1)),
  fittings: listOf(fittingSchema),
  runs: listOf(runSchema),
  areas: listOf(areaSchema),
  ties: listOf(tieSchema),
  mounts: listOf(mountSchema),
  pictures: listOf(pictureSchema),
});

export type Plan = v.InferOutput<typeof planSchema>;
export type Settings = Plan['settings'];
export type Sheet = Plan['sheets'][number];
export type Outline = Sheet['outline'];
export type Fitting = Plan['fittings'][number];
export type FittingKind = Fitting['kind'];
export type FittingOf<K extends FittingKind> = Extract<Fitting, { kind: K }>;
export type Run = Plan['runs'][number];
export type RunKind = Run['kind'];
export type Conductor = Run['conductor'];
export type Zone = Run['zone'];
export type Link = FittingOf<'fuse'>['link'];
export type LinkFamily = Settings['linkFamilies'][number];
export type TerminalRef = Run['from'];
export type Point = v.InferOutput<typeof pointSchema>;
/** A value that may be assumed. */
export interface Input<T> {
  value: T;
  origin: 'assumed' | 'told' | 'measured';
  source?: string;
}
