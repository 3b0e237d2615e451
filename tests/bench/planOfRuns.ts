import type { Plan } from '../../src/plan/schema.ts';
import { PlanOf } from '../assess/planOf.ts';

const OUTPUTS = 6;

/**
 * A plan of about `runs` runs (at least 10), never fewer: battery, main fuse, blocks in a tree, an amplifier with its
 * own ground on every output that feeds no further block; 1 kW in all. Past what a document may hold it exists in memory only.
 */
export function planOfRuns(runs: number, gauges: 'fixed' | 'auto'): Plan {
  const size = (fixed: string): string => (gauges === 'fixed' ? fixed : 'auto');
  const amplifiers = Math.max(4, Math.ceil(((runs - 1) * OUTPUTS) / (2 * OUTPUTS + 1.2)));
  const blocks = Math.ceil((amplifiers - 1) / (OUTPUTS - 1));
  const plan = new PlanOf().battery('battery').fuse('main', 'auto', { zone: 'bay' });
  plan.run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: size('sae:1/0') });
  const free: string[] = [];
  for (let block = 0; block < blocks; block += 1) {
    plan.block(`b${block}`, new Array<'auto'>(OUTPUTS).fill('auto'));
    const from = free.shift() ?? 'main.out';
    plan.run(from, `b${block}.bus`, block === 0 ? 3 : 0.3, { size: size('sae:1/0') });
    for (let output = 1; output <= OUTPUTS; output += 1) free.push(`b${block}.out${output}`);
  }
  for (let amplifier = 0; amplifier < amplifiers && free.length > 0; amplifier += 1) {
    const id = `a${amplifier}`;
    plan.amplifier(id, { ratedW: 1000 / amplifiers, onboardFusesA: [] }).fitting('ground', `g${amplifier}`);
    plan.run(free.shift() ?? '', `${id}.supply`, 0.8, { size: size('sae:4') });
    plan.run(`${id}.ground`, `g${amplifier}.body`, 0.5, { size: size('sae:4') });
  }
  return plan.plan;
}
