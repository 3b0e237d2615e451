/** Which verdicts hang on an assumed value: each is judged again with the value halved and doubled, sizes and ratings kept. */
import type { Settings } from '../../plan/schema.ts';
import type { Finding, Severity } from '../answer.ts';
import type { Facts } from '../facts.ts';
import type { Model } from '../model.ts';
import { operate } from '../operate.ts';
import { FIX_SHARE } from '../rules/dropWhole.ts';
import { RULES } from '../rules/index.ts';
import { terminalVolts } from '../terminal.ts';
import { worstWhole } from '../worstDrop.ts';

const AMBIENT_K = 15;

interface Change {
  readonly path: string;
  /** Worked only where some rule has to be judged again. */
  readonly facts: () => Facts;
}

type Ohms = 'bodyOhm' | 'jointOhm';
type Air = 'bayC' | 'wingC' | 'hotC' | 'cabinC' | 'cargoC' | 'underC';

/** The facts with other settings, at the sizes and ratings as they are. */
function withSettings(facts: Facts, settings: Settings): Facts {
  const model: Model = { ...facts.model, settings };
  const worked = operate(model, facts.choice.trialSizes, {
    ratings: facts.ratings,
    near: facts.operating?.states ?? [],
  });
  return worked.ok
    ? { ...facts, model, operating: worked, cannotCarry: null }
    : { ...facts, model, operating: null, cannotCarry: worked };
}

function* changes(facts: Facts): Generator<Change> {
  const { settings, circuit } = facts.model;
  const withValue = (name: Ohms | Air, value: number) => (): Facts =>
    withSettings(facts, { ...settings, [name]: { ...settings[name], value } });
  for (const name of ['bodyOhm', 'jointOhm'] as const) {
    if (settings[name].origin !== 'assumed') continue;
    for (const factor of [0.5, 2])
      yield { path: `settings.${name}`, facts: withValue(name, factor * settings[name].value) };
  }
  const zones = new Set(circuit.cables.flatMap(({ stretches }) => stretches.map(({ zone }) => zone)));
  for (const zone of zones) {
    const name = `${zone}C` as const;
    if (settings[name].origin !== 'assumed') continue;
    for (const shift of [-AMBIENT_K, AMBIENT_K])
      yield { path: `settings.${name}`, facts: withValue(name, settings[name].value + shift) };
  }
  const [battery] = circuit.sources.filter(
    ({ fitting }) => fitting.ccaA.origin === 'assumed' && (fitting.kind !== 'battery' || fitting.internalOhm === null),
  );
  if (battery !== undefined && !settings.engineAlwaysRunning) {
    for (const batteryScale of [0.5, 2])
      yield { path: `${battery.fitting.id}.ccaA`, facts: () => ({ ...facts, batteryScale }) };
  }
  for (const { fitting } of circuit.alternators.filter((one) => one.fitting.ratedA.origin === 'assumed')) {
    for (const factor of [0.5, 2])
      yield { path: `${fitting.id}.ratedA`, facts: () => withOutput(facts, fitting.id, factor) };
  }
}

/** With so many times the output of one alternator. */
function withOutput(facts: Facts, alternatorId: string, factor: number): Facts {
  const { circuit } = facts.model;
  const alternators = circuit.alternators.map((one) => {
    const { fitting } = one;
    if (fitting.id !== alternatorId) return one;
    return { ...one, fitting: { ...fitting, ratedA: { ...fitting.ratedA, value: factor * fitting.ratedA.value } } };
  });
  return { ...facts, model: { ...facts.model, circuit: { ...circuit, alternators } } };
}

/** Rules whose verdict the value at that path can turn. */
function isMoved(rule: Finding['rule'], path: string): boolean {
  if (path.endsWith('.ratedA') || rule === 'charging-deficit')
    return path.endsWith('.ratedA') && rule === 'charging-deficit';
  if (path.endsWith('.ccaA')) return rule === 'below-cut-out' || rule === 'breaking-capacity';
  if (rule === 'breaking-capacity') return false;
  return !path.endsWith('Ohm') || !AIR_ONLY.has(rule);
}

/** Doubling body or joints, or 15 K more, costs no more than this times what they and a sixth of the cables cost now. */
const MARGIN = 1.25;
const CABLES_SHARE = 1 / 6;

/** What doubling body or joints, or 15 K more, can add to the whole drop of a load at the most, V. */
function addedV(facts: Facts, load: number): { wholeV: number; movedV: number } | null {
  const whole = worstWhole(facts, load);
  if (whole === null) return null;
  const cablesV = whole.feedV + whole.backV;
  return { wholeV: whole.wholeV, movedV: MARGIN * (whole.wholeV - cablesV + CABLES_SHARE * cablesV) };
}

/** Which of the verdicts that loom are near enough to be worked out. */
function nearVerdicts(facts: Facts): (rule: Finding['rule'], path: string) => boolean {
  const { circuit, settings } = facts.model;
  const added = circuit.loads.map((_, load) => addedV(facts, load));
  const dropIsNear = added.some((one) => one !== null && one.wholeV + one.movedV > FIX_SHARE * settings.systemV);
  const volts = terminalVolts(facts);
  const aboveV = (load: number): number => Math.abs((volts[load] ?? 0) - settings.cutOutV.value);
  const cutOutIsNear = added.some((one, load) => one !== null && aboveV(load) <= one.movedV);
  // all that is lost, were it the battery's alone
  const lostV = (load: number): number => MARGIN * (settings.restV.value - (volts[load] ?? 0));
  const cutOutHangsOnBattery = added.some((one, load) => one !== null && aboveV(load) <= lostV(load));
  return (rule, path) => {
    if (rule !== 'below-cut-out') return dropIsNear;
    return path.endsWith('.ccaA') ? cutOutHangsOnBattery : cutOutIsNear;
  };
}

/** Verdicts that neither body nor joints reach, but over a few thousandths of a current. */
const AIR_ONLY: ReadonlySet<Finding['rule']> = new Set([
  'ampacity',
  'heating',
  'overload-heating',
  'fuse-over-conductor',
  'step-down',
  'fuse-under-load',
]);

/** Absent verdicts that are told, as notes, when an assumption alone keeps them away. */
const LOOMING: ReadonlySet<Finding['rule']> = new Set(['below-cut-out', 'drop-whole', 'cannot-carry']);

/**
 * By finding, the assumed values whose halving or doubling (air: 15 K either way) takes it away or changes its
 * severity; and what would turn up as a fix or worse, as notes that name the value.
 */
export function flippedBy(
  facts: Facts,
  found: readonly Finding[],
): { decided: Map<string, string[]>; looming: Finding[] } {
  const decided = new Map<string, Set<string>>();
  const looming = new Map<string, Finding>();
  if (facts.operating === null) return { decided: new Map(), looming: [] };
  const before = new Map(found.map(({ id, severity }): [string, Severity] => [id, severity]));
  const sensitive = RULES.filter((rule) => rule.sensitive);
  const isNear = nearVerdicts(facts);
  const foundRules = new Set(found.map(({ rule }) => rule));
  const isAsked = (rule: Finding['rule'], path: string): boolean => {
    if (!isMoved(rule, path)) return false;
    // a verdict that is absent and does not loom is told by nobody
    if (rule === 'below-cut-out' || !foundRules.has(rule)) return LOOMING.has(rule) && isNear(rule, path);
    return true;
  };
  const mark = (id: string, path: string): void => {
    decided.set(id, (decided.get(id) ?? new Set()).add(path));
  };
  for (const change of changes(facts)) {
    const rules = sensitive.filter(({ id }) => isAsked(id, change.path));
    if (rules.length === 0) continue;
    const changed = change.facts();
    const after = rules.flatMap((rule) => rule.check(changed));
    const severities = new Map(after.map(({ id, severity }): [string, Severity] => [id, severity]));
    const judged = new Set(rules.map(({ id }) => id));
    for (const { id, rule, severity } of found) {
      if (judged.has(rule) && severities.get(id) !== severity) mark(id, change.path);
    }
    for (const one of after) {
      if (before.has(one.id) || one.severity === 'note' || !LOOMING.has(one.rule)) continue;
      mark(one.id, change.path);
      looming.set(one.id, { ...one, severity: 'note', looming: true });
    }
  }
  return {
    decided: new Map([...decided].map(([id, paths]) => [id, [...paths]])),
    looming: [...looming.values()].map((one) => ({ ...one, decidedBy: [...(decided.get(one.id) ?? [])] })),
  };
}
