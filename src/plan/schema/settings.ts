/** The settings of a plan: rules, what is held in stock, how things are shown, and every default the answer rests on. */
import * as v from 'valibot';
import { bounded, gaugeId, inputOf, listOf, someOf } from './fields.ts';
import { linkFamily, ownLinkSchema } from './links.ts';

export const settingsSchema = v.strictObject({
  ruleSet: v.picklist(['vehicle', 'boatCfr', 'boatAbyc']),
  systemV: v.picklist([12, 24]),
  /** How lengths and sizes are shown, and which series 'auto' picks from. */
  showLength: v.picklist(['m', 'ft-in']),
  sizeSystem: v.picklist(['sae', 'awg', 'mm2']),
  stock: someOf(gaugeId, 40),
  linkFamilies: someOf(linkFamily, 20),
  ownLinks: listOf(ownLinkSchema, 6),
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
