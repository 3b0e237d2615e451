/** One size of plan, assessed in a process of its own that the bench can end when it takes too long. */
import { assess } from '../../src/assess/assess.ts';
import { measure } from './measure.ts';
import { planOfRuns } from './planOfRuns.ts';

const [runs = '10', gauges = 'fixed', mostMs = '30000'] = process.argv.slice(2);
const plan = planOfRuns(Number(runs), gauges === 'auto' ? 'auto' : 'fixed');
/** The engine goes on improving so much code for about that long. */
const WARM_CPU_MS = 10_000;

const measured = measure(() => assess(plan), Number(mostMs), WARM_CPU_MS);
console.log(JSON.stringify({ ...measured, runs: plan.runs.length }));
