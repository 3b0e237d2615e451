/**
 * The saved plan, version 2. This schema is the single definition of the document: types, JSON Schema, key order
 * and bounds are all derived from it. Lengths are metres in the plane of the sheet, rounded to 0.1 mm by the edits.
 */
import * as v from 'valibot';

export const PLAN_FORMAT = 'feedrun-plan';
export const PLAN_VERSION = 2;

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
  'post-link',
  'thermal-breaker',
  'own1',
  'own2',
  'own3',
  'own4',
  'own5',
  'own6',
]);

/**
 * A family of links or breakers that the user holds: its figures are the user's own word. A link that names its `family`
 * is of it; each is told once.
 */
const ownLinkSchema = v.strictObject({
  family: v.picklist(['own1', 'own2', 'own3', 'own4', 'own5', 'own6']),
  name,
  /** What it fits: the holder of a fuse or a block, the post of a battery, or the place of a breaker, which it then is. */
  seat: v.picklist(['holder', 'post', 'breaker']),
  ratingsA: v.pipe(v.array(bounded(0.5, 2000)), v.minLength(1), v.maxLength(60)),
  /** Largest current it is stated to break, A d.c.; null: not stated. */
  breakingA: v.nullable(bounded(1, 200_000)),
  /** Largest system voltage it is made for, V d.c. */
  ratedV: bounded(1, 1000),
});

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
  /** The largest conductor that its terminals take (a block's: that of its bus); null when not told. */
  takes: v.nullable(gaugeId),
  locked: v.boolean(),
};

/** What the factory has laid between a source and the place where the feed takes off. */
const factoryCableSchema = v.strictObject({ lengthM: inputOf(bounded(0, 20)), areaMm2: inputOf(bounded(0.5, 500)) });

const batterySchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('battery'),
  chemistry: v.picklist(['leadAcid', 'lithium', 'supercapacitor']),
  /** Cold cranking amperes as on the label. */
  ccaA: inputOf(bounded(10, 5000)),
  /** What the label counts them by: SAE J537, EN 50342-1, DIN 43539-2, IEC 60095-1; 'ca': at 0 degC. */
  ccaStandard: v.picklist(['sae', 'en', 'din', 'iec', 'ca']),
  capacityAh: inputOf(bounded(0.01, 2000)),
  /** Internal resistance, as measured or by its maker; null: estimated from the cranking amperes or the chemistry. */
  internalOhm: v.nullable(inputOf(bounded(0.00001, 1))),
  /** A fuse-link that sits on the positive post itself: every cable leaves through it. */
  postLink: v.nullable(linkSchema),
  /** The negative post carries the vehicle's battery sensor; null when not told. */
  sensedNegative: v.nullable(v.boolean()),
  /** The vehicle's own cable from the negative post to the body; null where there is none (a second battery, a bench). */
  strap: v.nullable(v.strictObject({ lengthM: inputOf(bounded(0.01, 20)), areaMm2: inputOf(bounded(0.5, 500)) })),
});

const fuseSchema = v.strictObject({ ...fittingBase, kind: v.literal('fuse'), link: linkSchema });

/** A thermal breaker: a device like a fuse, that can be closed again. */
const breakerSchema = v.strictObject({ ...fittingBase, kind: v.literal('breaker'), link: linkSchema });

const passThroughSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('passThrough'),
  /** Inside diameter of its grommet, not that of the hole it sits in, mm; null when not told. */
  grommetInsideMm: v.nullable(bounded(1, 200)),
});

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
  /** The largest conductor that an output takes; null when not told. */
  outputsTake: v.nullable(gaugeId),
});

/** A bar of studs: everything on it is one terminal. For feeds or for grounds. */
const busSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('bus'),
  /** Its rating, A continuous; null when not told. */
  ratedA: v.nullable(bounded(1, 2000)),
});

/** A pigtail or an adapter from a thick cable to a thin one. */
const reducerSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('reducer'),
  /** Length of its thin end, m. */
  lengthM: inputOf(bounded(0, 1)),
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
  /** 'two': a second pair of supply and ground terminals, joined to the first inside. */
  supplyInputs: v.picklist(['one', 'two']),
  /** What it draws on and silent, A. */
  idleA: inputOf(bounded(0, 50)),
  /** Mean over peak power of what it plays, where that is not the plan's own; null: as the settings say. */
  duty: v.nullable(bounded(0.01, 1)),
});

/** Anything else on the feed: lights, a compressor, an inverter; its greatest steady current. */
const loadSchema = v.strictObject({ ...fittingBase, kind: v.literal('load'), currentA: inputOf(bounded(0.01, 1000)) });

const alternatorSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('alternator'),
  /** Output at 6,000 a minute, cold: what is on the plate (ISO 8854: IR). */
  ratedA: inputOf(bounded(1, 1000)),
  /** Output at 1,500 a minute, cold (ISO 8854: IL); null when not told: a share of the rated one. */
  idleA: v.nullable(inputOf(bounded(0, 1000))),
  /** Hot output over cold. */
  hotShare: inputOf(bounded(0.3, 1)),
  /** What the vehicle itself draws with the engine running. */
  vehicleA: inputOf(bounded(0, 500)),
});

/** A source whose battery stands elsewhere: the post is reached over the factory's cable. CCA as SAE J537 counts them. */
const remoteSource = {
  ccaA: inputOf(bounded(10, 5000)),
  capacityAh: inputOf(bounded(0.01, 2000)),
  cable: factoryCableSchema,
};

const jumpPostSchema = v.strictObject({ ...fittingBase, kind: v.literal('jumpPost'), ...remoteSource });

/** A stud behind a factory fuse. */
const takeOffSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('takeOff'),
  ...remoteSource,
  /** Rating of the factory fuse ahead of it; null when not told: then nothing is taken to protect what leaves it. */
  fuseA: v.nullable(bounded(0.5, 1000)),
  /** What the vehicle itself draws through that fuse, A. */
  usedA: inputOf(bounded(0, 1000)),
});

/** A DC-DC charger: takes from one battery, fills another, and limits its output current. */
const chargerSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('charger'),
  outputV: inputOf(bounded(5, 60)),
  outputMaxA: inputOf(bounded(0.5, 300)),
  efficiency: inputOf(bounded(0.3, 0.99)),
});

/** An isolating relay: open at rest, closed while the engine charges. */
const relaySchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('relay'),
  /** Of its contacts, A continuous; null when not told. */
  ratedA: v.nullable(bounded(1, 2000)),
  /** Resistance of the closed contacts, ohm. */
  contactOhm: inputOf(bounded(0, 0.1)),
});

/** A battery switch, worked by hand. */
const switchSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('switch'),
  closed: v.boolean(),
  /** A continuous; null when not told. */
  ratedA: v.nullable(bounded(1, 2000)),
  /** Resistance of the closed contacts, ohm. */
  contactOhm: inputOf(bounded(0, 0.1)),
});

const capacitorSchema = v.strictObject({
  ...fittingBase,
  kind: v.literal('capacitor'),
  capacitanceF: inputOf(bounded(0.001, 10_000)),
  /** Equivalent series resistance, ohm. */
  esrOhm: inputOf(bounded(0.00001, 1)),
  /** It will be filled through a resistor before it is joined. */
  precharged: v.boolean(),
});

const groundSchema = v.strictObject({ ...fittingBase, kind: v.literal('ground') });

export const fittingSchema = v.variant('kind', [
  batterySchema,
  fuseSchema,
  passThroughSchema,
  blockSchema,
  amplifierSchema,
  groundSchema,
  breakerSchema,
  busSchema,
  reducerSchema,
  loadSchema,
  alternatorSchema,
  jumpPostSchema,
  takeOffSchema,
  chargerSchema,
  relaySchema,
  switchSchema,
  capacitorSchema,
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
  /** Strands counted and the thickness of one, where the size is not marked; null when not told. */
  strands: v.nullable(
    v.strictObject({
      count: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20_000)),
      diameterMm: bounded(0.02, 12),
    }),
  ),
  /** Scraped: copper all through? null when not told. */
  copperThrough: v.nullable(v.boolean()),
});

export const runSchema = v.strictObject({
  id,
  name,
  /** 'factory': the vehicle's own cable, which the rules for what is added do not judge. */
  kind: v.picklist(['power', 'ground', 'remote', 'factory']),
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
  /** Cables under load that lie together in one bundle, this one included. */
  bundled: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(100)),
  /** Inner radius of its tightest bend, as it will be laid, mm; null when not told. */
  bendRadiusMm: v.nullable(bounded(1, 2000)),
  conductor: conductorSchema,
  /** Resistance of all that joins it at an end, lug and bolt, ohm, as measured; null: not measured. */
  fromJointOhm: v.nullable(bounded(0, 1)),
  toJointOhm: v.nullable(bounded(0, 1)),
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
  systemV: v.picklist([12, 24]),
  /** How lengths and sizes are shown, and which series 'auto' picks from. */
  showLength: v.picklist(['m', 'ft-in']),
  sizeSystem: v.picklist(['sae', 'awg', 'mm2']),
  stock: v.pipe(v.array(gaugeId), v.minLength(1), v.maxLength(40)),
  linkFamilies: v.pipe(v.array(linkFamily), v.minLength(1), v.maxLength(20)),
  ownLinks: v.pipe(v.array(ownLinkSchema), v.maxLength(6)),
  engineAlwaysRunning: v.boolean(),
  restV: inputOf(bounded(9, 32)),
  chargingV: inputOf(bounded(9, 32)),
  /** Mean over peak power of the music: 1/3, 1/8, or 1 for tones. */
  duty: inputOf(bounded(0.01, 1)),
  dropLimit: inputOf(bounded(0.005, 0.2)),
  cutOutV: inputOf(bounded(5, 24)),
  bodyOhm: inputOf(bounded(0, 1)),
  jointOhm: inputOf(bounded(0, 0.1)),
  linkDropV: inputOf(bounded(0, 1)),
  bayC: inputOf(bounded(-40, 200)),
  wingC: inputOf(bounded(-40, 200)),
  hotC: inputOf(bounded(-40, 200)),
  cabinC: inputOf(bounded(-40, 200)),
  cargoC: inputOf(bounded(-40, 200)),
  underC: inputOf(bounded(-40, 200)),
  /** Of a battery's capacity at the 20 hour rate, the share that may be drawn; and Peukert's exponent, 1 for none. */
  usableShare: inputOf(bounded(0.05, 1)),
  peukert: inputOf(bounded(1, 1.6)),
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
export type OwnLink = Settings['ownLinks'][number];
export type TerminalRef = Run['from'];
export type Point = v.InferOutput<typeof pointSchema>;
/** A value that may be assumed. */
export interface Input<T> {
  value: T;
  origin: 'assumed' | 'told' | 'measured';
  source?: string;
}
