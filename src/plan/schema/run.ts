/** A run: a cable between two terminals, its way, its surroundings and what it is made of. */
import * as v from 'valibot';
import {
  bounded,
  counted,
  gaugeId,
  id,
  inputOf,
  listOf,
  MAX_BENDS,
  matching,
  name,
  pointSchema,
  text,
  zone,
} from './fields.ts';

export const terminalRefSchema = v.strictObject({
  fittingId: id,
  terminal: matching(/^[a-z]+[0-9]{0,2}$/, 'badTerminal'),
});

export const conductorSchema = v.strictObject({
  size: v.union([v.literal('auto'), gaugeId]),
  material: inputOf(v.picklist(['copper', 'cca10', 'cca15', 'aluminium'])),
  /** Insulation class, degrees Celsius. For an 'auto' size it is a requirement on what is bought. */
  insulationC: inputOf(v.picklist([60, 75, 80, 90, 105, 125, 200])),
  /** Strands counted and the thickness of one, where the size is not marked; null when not told. */
  strands: v.nullable(v.strictObject({ count: counted(20_000), diameterMm: bounded(0.02, 12) })),
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
  /**
   * What was measured: this run as it lies; a longer one, of which this is a share by the drawing; or this one before an
   * end or a bend was moved away. The last two are no better than drawn. 'run' while nothing is taped.
   */
  tapedAs: v.picklist(['run', 'share', 'outdated']),
  zone,
  /** In a closed tube, box or conduit for its whole unprotected length. */
  sheathed: v.boolean(),
  /** Why a nearer fuse is impossible, in the user's words; printed on the sheet. */
  nearerImpossible: v.nullable(text(1000)),
  inLoom: v.boolean(),
  underCarpet: v.boolean(),
  /** Cables under load that lie together in one bundle, this one included. */
  bundled: counted(100),
  /** Inner radius of its tightest bend, as it will be laid, mm; null when not told. */
  bendRadiusMm: v.nullable(bounded(1, 2000)),
  conductor: conductorSchema,
  /** Resistance of all that joins it at an end, lug and bolt, ohm, as measured; null: not measured. */
  fromJointOhm: v.nullable(bounded(0, 1)),
  toJointOhm: v.nullable(bounded(0, 1)),
  locked: v.boolean(),
});
