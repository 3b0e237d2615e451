/** Which verdicts hang on an assumed value: each is judged again with the value halved and doubled, sizes and ratings kept. */
import type { Settings } from '../../plan/schema.ts';
import type { Finding, Severity } from '../answer.ts';
import type { Facts } from '../facts.ts';
import type { Model } from '../model.ts';
import { operate } from '../operate.ts';
import { RULES } from '../rules/index.ts';
import { restTerminalV } from '../terminal.ts';
import { worstWhole } from '../worstDrop.ts';

const AMBIENT_K = 15;

interface Change {
  readonly path: string;
  readonly facts: Facts;
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
  const withValue = (name: Ohms | Air, value: number): Facts =>
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
  const [battery] = circuit.sources.filter(({ fitting }) => fitting.ccaA.origin === 'assumed');
  if (battery !== undefined && !settings.engineAlwaysRunning) {
    for (const batteryScale of [0.5, 2])
      yield { path: `${battery.fitting.id}.ccaA`, facts: { ...facts, batteryScale } };
  }
}

/** Rules whose verdict the value at that path can turn. The network is solved for the cut-out only where it is near. */
function isMoved(rule: Finding['rule'], path: string, cutOutIsNear: boolean): boolean {
  if (path.endsWith('.ccaA')) return rule === 'below-cut-out';
  if (rule === 'below-cut-out') return cutOutIsNear;
  return !path.endsWith('Ohm') || !AIR_ONLY.has(rule);
}

/** Doubling body or joints, or 15 K more, costs no more than this times what they and a sixth of the cables cost now. */
const MARGIN = 1.25;
const CABLES_SHARE = 1 / 6;

/** Whether anything but the battery can take an amplifier to its cut-out, or back from it. */
function isCutOutNear(facts: Facts): boolean {
  const atRest = restTerminalV(facts);
  if (atRest === null) return true;
  return facts.model.circuit.loads.some((_, load) => {
    const whole = worstWhole(facts, load);
    if (whole === null) return false;
    const cablesV = whole.feedV + whole.backV;
    const movedV = MARGIN * (whole.wholeV - cablesV + CABLES_SHARE * cablesV);
    return Math.abs((atRest[load] ?? 0) - facts.model.settings.cutOutV.value) <= movedV;
  });
}

/** Verdicts that neither body nor joints reach, but over a few thousandths of a current. */
const AIR_ONLY: ReadonlySet<Finding['rule']> = new Set([
  'ampacity',
  'heating',
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
  const cutOutIsNear = isCutOutNear(facts);
  const mark = (id: string, path: string): void => {
    decided.set(id, (decided.get(id) ?? new Set()).add(path));
  };
  for (const change of changes(facts)) {
    const rules = sensitive.filter(({ id }) => isMoved(id, change.path, cutOutIsNear));
    const after = rules.flatMap((rule) => rule.check(change.facts));
    const severities = new Map(after.map(({ id, severity }): [string, Severity] => [id, severity]));
    const judged = new Set(rules.map(({ id }) => id));
    for (const { id, rule, severity } of found) {
      if (judged.has(rule) && severities.get(id) !== severity) mark(id, change.path);
    }
    for (const one of after) {
      if (before.has(one.id) || one.severity === 'note' || !LOOMING.has(one.rule)) continue;
      mark(one.id, change.path);
      looming.set(one.id, { ...one, severity: 'note' });
    }
  }
  return {
    decided: new Map([...decided].map(([id, paths]) => [id, [...paths]])),
    looming: [...looming.values()].map((one) => ({ ...one, decidedBy: [...(decided.get(one.id) ?? [])] })),
  };
}
