import type { Plan } from '../../src/plan/schema.ts';
import { PlanOf } from '../assess/planOf.ts';

const OUTPUTS = 6;

const blocksFor = (amplifiers: number): number => Math.ceil((amplifiers - 1) / (OUTPUTS - 1));

/** The most amplifiers that so many runs feed and ground: one run to the main fuse, one to each block, two for each amplifier. */
function amplifiersWithin(runs: number): number {
  let amplifiers = 1;
  while (1 + blocksFor(amplifiers + 1) + 2 * (amplifiers + 1) <= runs) amplifiers += 1;
  return amplifiers;
}

/**
 * A plan of `runs` runs (at least 10): battery, main fuse, blocks in a tree, an amplifier with its own ground on every
 * output that feeds no further block; what is left over cuts the feed at pass-throughs; 1 kW in all. Past what a document
 * may hold it exists in memory only.
 */
export function planOfRuns(runs: number, gauges: 'fixed' | 'auto'): Plan {
  const size = (fixed: string): string => (gauges === 'fixed' ? fixed : 'auto');
  const amplifiers = amplifiersWithin(runs);
  const blocks = blocksFor(amplifiers);
  const spare = runs - 1 - blocks - 2 * amplifiers;
  const plan = new PlanOf().battery('battery').fuse('main', 'auto', { zone: 'bay' });
  plan.run('battery.positive', 'main.in', 0.15, { zone: 'bay', size: size('sae:1/0') });
  let feed = 'main.out';
  for (let piece = 0; piece < spare; piece += 1) {
    plan.fitting('passThrough', `p${piece}`).run(feed, `p${piece}.through`, 0.3, { size: size('sae:1/0') });
    feed = `p${piece}.through`;
  }
  const free: string[] = [];
  for (let block = 0; block < blocks; block += 1) {
    plan.block(`b${block}`, new Array<'auto'>(OUTPUTS).fill('auto'));
    const from = free.shift() ?? feed;
    plan.run(from, `b${block}.bus`, block === 0 ? 3 : 0.3, { size: size('sae:1/0') });
    for (let output = 1; output <= OUTPUTS; output += 1) free.push(`b${block}.out${output}`);
  }
  for (let amplifier = 0; amplifier < amplifiers; amplifier += 1) {
    const id = `a${amplifier}`;
    plan.amplifier(id, { ratedW: 1000 / amplifiers, onboardFusesA: [] }).fitting('ground', `g${amplifier}`);
    plan.run(free.shift() ?? feed, `${id}.supply`, 0.8, { size: size('sae:4') });
    plan.run(`${id}.ground`, `g${amplifier}.body`, 0.5, { size: size('sae:4') });
  }
  return plan.plan;
}
