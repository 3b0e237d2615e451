import * as v from 'valibot';
import { defaultStock, isKnownGauge } from '../gauges.ts';
import { type Plan, type Settings, settingsSchema } from '../schema.ts';
import { isSame } from './accept.ts';

/** Changes settings. Another size system brings its own stock, unless the same change says which sizes are stocked. */
export function changeSettings(plan: Plan, patch: Partial<Settings>): Plan {
  const { sizeSystem } = patch;
  const changesSystem = sizeSystem !== undefined && sizeSystem !== plan.settings.sizeSystem;
  const stock = changesSystem ? { stock: defaultStock(sizeSystem) } : {};
  const { success, output } = v.safeParse(settingsSchema, { ...plan.settings, ...stock, ...patch });
  if (!success || !output.stock.every(isKnownGauge) || isSame(plan.settings, output)) return plan;
  return { ...plan, settings: output };
}
