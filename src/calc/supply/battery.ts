import { CCA_TESTS, type CcaStandard } from '../tables/ccaStandards.ts';
import { type Abouts, cited, NO_WHY, type Recorder, type Why, whyBuilder } from '../why.ts';
import { type SystemV, systemFigures } from './systemVolts.ts';

/** Share of its cold resistance that a lead-acid battery has when warm: the middle of 0.4 to 0.5. */
const WARM_SHARE = 0.45;
const WARM_C = 25;
const COLD_C = -18;
/** Cold resistance of an aged battery against that of a new one. */
const AGED = 2;

/** Resistance of 12 V of cells, ohm, where nothing is told: these chemistries are not estimated from cranking amperes. */
const USUAL_OHM = { lithium: 0.002, supercapacitor: 0.0005 } as const;

export type Chemistry = 'leadAcid' | keyof typeof USUAL_OHM;

/** warm gives the largest fault current; coldAged the smallest. */
export type BatteryCondition = 'warm' | 'cold' | 'coldAged';

export interface BatteryCase {
  readonly chemistry: Chemistry;
  /** Cranking amperes on the label, A (in a 24 V system: of either of the two batteries); only lead-acid goes by it. */
  readonly ccaA: number;
  readonly ccaStandard: CcaStandard;
  /** Resistance between the outer posts, warm, as measured or as its maker states it, ohm; null: not told. */
  readonly ownOhm: number | null;
  readonly systemV: SystemV;
}

type Given = Abouts<'ccaA' | 'ownOhm'>;

const recordWarmShare = (rec: Recorder): number => rec.input('kWarm', '1', WARM_SHARE, cited('batteryWarm'));

function recordLabel({ ccaA, ccaStandard, systemV }: BatteryCase, rec: Recorder, about: Given): number {
  const { endV, testC, source } = CCA_TESTS[ccaStandard];
  const rest = rec.input('Erest', 'V', systemFigures(12).restV, cited('leadAcidRest'));
  const end = rec.input('Uend', 'V', endV, cited(source));
  const label = rec.input('Icca', 'A', ccaA, about.ccaA);
  const count = rec.input('nSeries', '1', systemFigures(systemV).inSeries);
  const isCold = testC === COLD_C;
  const atTest = (count * (rest - end)) / label;
  rec.step(isCold ? 'Rcold' : 'Rtest', 'ohm', 'nSeries * (Erest - Uend) / Icca', atTest, { source: 'batteryFromCca' });
  if (isCold) return atTest;
  const warmShare = recordWarmShare(rec);
  const test = rec.input('Ttest', 'degC', testC, cited(source));
  const cold = rec.input('Tcold', 'degC', COLD_C, cited('saeJ537'));
  const warm = rec.input('Twarm', 'degC', WARM_C, cited('batteryWarm'));
  // a straight line between the two temperatures that figures are known for
  const share = 1 - ((1 - warmShare) * (test - cold)) / (warm - cold);
  rec.step('kTest', '1', '1 - (1 - kWarm) * (Ttest - Tcold) / (Twarm - Tcold)', share, { source: 'batteryFromCca' });
  return rec.step('Rcold', 'ohm', 'Rtest / kTest', atTest / share);
}

function recordWarm(of: BatteryCase, rec: Recorder, about: Given): number {
  if (of.ownOhm !== null) return rec.input('Rwarm', 'ohm', of.ownOhm, about.ownOhm);
  if (of.chemistry === 'leadAcid') {
    return rec.step('Rwarm', 'ohm', 'kWarm * Rcold', recordWarmShare(rec) * recordLabel(of, rec, about));
  }
  const usual = rec.input('Rusual', 'ohm', USUAL_OHM[of.chemistry], cited('batteryChemistry'));
  const count = rec.input('nSeries', '1', systemFigures(of.systemV).inSeries);
  return rec.step('Rwarm', 'ohm', 'nSeries * Rusual', count * usual);
}

function recordCold(of: BatteryCase, rec: Recorder, about: Given): number {
  if (of.chemistry !== 'leadAcid') return rec.step('Rcold', 'ohm', 'Rwarm', recordWarm(of, rec, about));
  if (of.ownOhm === null) return recordLabel(of, rec, about);
  return rec.step('Rcold', 'ohm', 'Rwarm / kWarm', recordWarm(of, rec, about) / recordWarmShare(rec));
}

function compute(of: BatteryCase, condition: BatteryCondition, rec: Recorder, about: Given = {}): number {
  if (!(of.ccaA > 0) || of.ownOhm === 0) throw new RangeError('battery: cranking amperes or resistance not above 0');
  if (condition === 'warm') return recordWarm(of, rec, about);
  const cold = recordCold(of, rec, about);
  if (condition === 'cold') return cold;
  return rec.step('Raged', 'ohm', 'kAged * Rcold', rec.input('kAged', '1', AGED, cited('feedrunRules')) * cold);
}

/**
 * Resistance between a battery's posts, ohm. Lead-acid, cold: (12.6 V - end voltage of the label's test) / label amperes;
 * warm 0.45 of that; cold and aged twice that. A straight line drawn from the rest voltage: good to a factor of 2 either way.
 * A label for 0 degC (CA) is taken to -18 degC on a straight line between warm and cold, 0.770 of cold: 1.30 CA for
 * each CCA, where the trade reckons with 1.25 (from memory). Lithium and supercapacitors go by their own figure, else
 * 2 and 0.5 mohm for each 12 V (from memory); how the cold changes them is not known here, so cold is as warm.
 * 24 V: two in series. Source: derived from the standards of the labels; our rules. RangeError unless ccaA and ownOhm > 0.
 * SAE 600 A: cold 5.4 / 600 = 0.0090, warm 0.00405, cold and aged 0.0180.
 */
export function batteryOhm(of: BatteryCase, condition: BatteryCondition): number {
  return compute(of, condition, NO_WHY);
}

const RESULTS = { warm: 'Rwarm', cold: 'Rcold', coldAged: 'Raged' } as const;

/** Why of `batteryOhm`; the result is 'Rwarm', 'Rcold' or 'Raged'. */
export function batteryOhmWhy(of: BatteryCase, condition: BatteryCondition, about: Given = {}): Why {
  const builder = whyBuilder();
  compute(of, condition, builder, about);
  return builder.done(RESULTS[condition]);
}
