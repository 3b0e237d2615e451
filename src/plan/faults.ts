/** What no schema can say: that the parts of a plan fit each other. */
import { isKnownGauge } from './gauges.ts';
import { identified } from './ids.ts';
import { isToldFamily, linksOf } from './links.ts';
import type { OpenReason } from './openReason.ts';
import { placeOn } from './runs.ts';
import type { Fitting, Plan, Run } from './schema.ts';
import { terminalKey, terminalsOf } from './terminals.ts';

type Faults = Generator<OpenReason>;

/** The first part that does not fit the rest, or null. */
export function firstFault(plan: Plan): OpenReason | null {
  for (const faults of [idFaults, sheetFaults, gaugeFaults, familyFaults, blockFaults, endFaults]) {
    for (const fault of faults(plan)) return fault;
  }
  return null;
}

const named = ({ name }: { name: string }): { name?: string } => (name === '' ? {} : { name });

function* idFaults(plan: Plan): Faults {
  const firstWhere = new Map<string, string>();
  for (const { id, where } of identified(plan)) {
    const first = firstWhere.get(id);
    if (first !== undefined) yield { code: 'duplicateId', where, params: { id, first } };
    firstWhere.set(id, where);
  }
}

function* sheetFaults(plan: Plan): Faults {
  const sheetIds = new Set(plan.sheets.map(({ id }) => id));
  for (const list of ['fittings', 'runs', 'areas', 'ties', 'mounts', 'pictures'] as const) {
    for (const [index, item] of plan[list].entries()) {
      if (sheetIds.has(item.sheetId)) continue;
      yield { code: 'unknownSheet', where: `${list}[${index}].sheetId`, params: { id: item.sheetId, ...named(item) } };
    }
  }
  for (const [index, fitting] of plan.fittings.entries()) {
    if (fitting.kind !== 'continuation') continue;
    const { sheetId } = fitting.other;
    const where = `fittings[${index}].other.sheetId`;
    if (!sheetIds.has(sheetId)) yield { code: 'unknownSheet', where, params: { id: sheetId, ...named(fitting) } };
    // a point that goes on on its own sheet goes nowhere
    if (sheetId === fitting.sheetId) yield { code: 'sameSheet', where, params: { ...named(fitting) } };
  }
}

function* gaugeFaults({ settings, fittings, runs }: Plan): Faults {
  for (const [index, fitting] of fittings.entries()) {
    const told = { takes: fitting.takes, outputsTake: fitting.kind === 'block' ? fitting.outputsTake : null };
    for (const [field, gauge] of Object.entries(told)) {
      if (gauge === null || isKnownGauge(gauge)) continue;
      yield { code: 'unknownGauge', where: `fittings[${index}].${field}`, params: { gauge, ...named(fitting) } };
    }
  }
  for (const [index, gauge] of settings.stock.entries()) {
    if (!isKnownGauge(gauge)) yield { code: 'unknownGauge', where: `settings.stock[${index}]`, params: { gauge } };
  }
  for (const [index, run] of runs.entries()) {
    const { size } = run.conductor;
    if (size === 'auto' || isKnownGauge(size)) continue;
    yield { code: 'unknownGauge', where: `runs[${index}].conductor.size`, params: { gauge: size, ...named(run) } };
  }
}

/** An own family told twice, or named and not told: what it breaks, and at which ratings, nobody could say. */
export function* familyFaults({ settings, fittings }: Plan): Faults {
  const own = settings.ownLinks.map(({ family }) => family);
  for (const [index, { family, name }] of settings.ownLinks.entries()) {
    if (own.indexOf(family) === index) continue;
    const where = `settings.ownLinks[${index}].family`;
    yield { code: 'duplicateFamily', where, params: { family, ...named({ name }) } };
  }
  for (const [index, family] of settings.linkFamilies.entries()) {
    if (isToldFamily(settings, family)) continue;
    yield { code: 'unknownFamily', where: `settings.linkFamilies[${index}]`, params: { family } };
  }
  for (const [index, fitting] of fittings.entries()) {
    for (const { where, link } of linksOf(fitting)) {
      if (isToldFamily(settings, link.family)) continue;
      const params = { family: link.family, ...named(fitting) };
      yield { code: 'unknownFamily', where: `fittings[${index}].${where}.family`, params };
    }
  }
}

function* blockFaults({ fittings }: Plan): Faults {
  for (const [index, fitting] of fittings.entries()) {
    if (fitting.kind !== 'block') continue;
    const terminals = fitting.outputs.map(({ terminal }) => terminal);
    const again = terminals.findIndex((terminal, place) => terminals.indexOf(terminal) < place);
    if (again === -1) continue;
    const where = `fittings[${index}].outputs[${again}].terminal`;
    yield { code: 'duplicateTerminal', where, params: { terminal: terminals[again] ?? '', ...named(fitting) } };
  }
}

function* endFaults({ fittings, runs }: Plan): Faults {
  const byId = new Map(fittings.map((fitting) => [fitting.id, fitting]));
  for (const [index, run] of runs.entries()) {
    const where = `runs[${index}]`;
    yield* endFault(run, 'from', byId, where);
    yield* endFault(run, 'to', byId, where);
    if (terminalKey(run.from) === terminalKey(run.to)) {
      const fitting = byId.get(run.to.fittingId)?.name ?? '';
      yield { code: 'selfJoin', where: `${where}.to`, params: { terminal: run.to.terminal, fitting, ...named(run) } };
    }
  }
}

function* endFault(run: Run, end: 'from' | 'to', byId: ReadonlyMap<string, Fitting>, where: string): Faults {
  const { fittingId, terminal } = run[end];
  const fitting = byId.get(fittingId);
  if (fitting === undefined) {
    yield { code: 'unknownFitting', where: `${where}.${end}.fittingId`, params: { id: fittingId, ...named(run) } };
  } else if (!terminalsOf(fitting).includes(terminal)) {
    const params = { terminal, fitting: fitting.name, kind: fitting.kind, ...named(run) };
    yield { code: 'unknownTerminal', where: `${where}.${end}.terminal`, params };
  } else if (placeOn(fitting, run.sheetId) === null) {
    // a length drawn from one sheet to another is no length
    yield { code: 'endOffSheet', where: `${where}.${end}`, params: { fitting: fitting.name, ...named(run) } };
  }
}
