import * as v from 'valibot';
import { assumedVolts } from '../create.ts';
import { familyFaults } from '../faults.ts';
import { defaultStock, isKnownGauge } from '../gauges.ts';
import { type Fitting, type Plan, type Settings, settingsSchema } from '../schema.ts';
import { isSame } from './replaced.ts';

/**
 * Changes settings. Another size system brings its own stock, and another system voltage the voltages that go with it
 * where they are still assumed, chargers' outputs too, unless the same change says otherwise. An own family of links
 * cannot go, nor be told twice, while a link or the list of families held names it.
 */
export function changeSettings(plan: Plan, patch: Partial<Settings>): Plan {
  const { settings } = plan;
  const { sizeSystem = settings.sizeSystem, systemV = settings.systemV } = patch;
  const stock = sizeSystem === settings.sizeSystem ? {} : { stock: defaultStock(sizeSystem) };
  const changed = { ...settings, ...stock, ...voltsAt(settings, systemV), ...patch };
  const { success, output } = v.safeParse(settingsSchema, changed);
  if (!success || !output.stock.every(isKnownGauge) || isSame(settings, output)) return plan;
  const after = { ...plan, settings: output, fittings: chargersAt(plan, output.systemV) };
  return familyFaults(after).next().done === true ? after : plan;
}

/** What is still assumed for the system voltage as it was, as it is assumed for the other. */
function voltsAt(settings: Settings, systemV: Settings['systemV']): Partial<Settings> {
  if (systemV === settings.systemV) return {};
  const [before, after] = [assumedVolts(settings.systemV), assumedVolts(systemV)];
  const follows = <K extends keyof typeof before>(name: K): Partial<Settings> =>
    isSame(settings[name], before[name]) ? { [name]: after[name] } : {};
  return { ...follows('restV'), ...follows('chargingV'), ...follows('cutOutV') };
}

function chargersAt({ settings, fittings }: Plan, systemV: Settings['systemV']): Fitting[] {
  const [before, after] = [assumedVolts(settings.systemV).chargingV, assumedVolts(systemV).chargingV];
  const follows = (fitting: Fitting) => fitting.kind === 'charger' && isSame(fitting.outputV, before);
  if (systemV === settings.systemV || !fittings.some(follows)) return fittings;
  return fittings.map((fitting) => (follows(fitting) ? { ...fitting, outputV: after } : fitting));
}
