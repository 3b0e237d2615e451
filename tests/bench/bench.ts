/**
 * `npm run bench`: how long the network solution and the whole assessment take at 10 to 10,000 runs, beside ngspice and
 * dense LU in the same run. Fails when an expectation printed at the end is not met.
 */
import { spawnSync } from 'node:child_process';
import { loadavg } from 'node:os';
import { faultsTo } from '../../src/calc/network/fault.ts';
import { solveNetwork } from '../../src/calc/network/solve.ts';
import type { Network } from '../../src/calc/network/types.ts';
import { deckOf, ngspiceVersion, runDeck } from '../calc/network/spice/ngspice.ts';
import { greatestGap } from '../calc/network/spice/record.ts';
import { built } from './built.ts';
import { solveByDenseLu } from './denseNewton.ts';
import { growth, type Measured, measure } from './measure.ts';
import { radialNet } from './radial.ts';

const SIZES = [10, 100, 1_000, 10_000] as const;
const MOST_DENSE = 1_000;
const MOST_MS = 60_000;
const DENSE_MS = 15_000;
const SPICE_RUNS = 9;
/** Below every load's voltage in these nets, above none. */
const FLOOR_V = 6;
const MOST_EXPONENT = 1.2;
const MOST_SMALL_MS = 1;
const SMALL_RUNS = 15;

const digits = (ms: number): string => (ms < 10 ? ms.toFixed(3) : ms.toFixed(1));
const shown = ({ medianMs, bestMs, cpuMs, samples }: Measured): string =>
  `median ${digits(medianMs)} ms, best ${digits(bestMs)} ms, cpu ${digits(cpuMs)} ms${samples < 15 ? ` (${samples} samples)` : ''}`;
const times = (baseMs: number, oursMs: number): string => `${(baseMs / oursMs).toFixed(1)} times ours`;
const unmet: string[] = [];
function expectThat(holds: boolean, what: string): void {
  console.log(`  ${holds ? 'met' : 'NOT MET'}: ${what}`);
  if (!holds) unmet.push(what);
}

/** Exponent from 100 runs on, by the best samples: other work on the machine only ever adds to them. */
function tellGrowth(name: string, points: readonly { size: number; measured: Measured }[]): number {
  const large = points.filter(({ size }) => size >= 100);
  const of = (pick: (measured: Measured) => number): number =>
    growth(large.map(({ size, measured }) => ({ size, ms: pick(measured) })));
  const best = of(({ bestMs }) => bestMs);
  const [medians, cpus] = [of(({ medianMs }) => medianMs), of(({ cpuMs }) => cpuMs)];
  console.log(
    `  ${name}: grows as runs^${best.toFixed(2)} by the best samples, ^${medians.toFixed(2)} by the medians, ^${cpus.toFixed(2)} by processor time`,
  );
  return best;
}

console.log(
  `Node ${process.version}; load average ${loadavg()[0]?.toFixed(1)}: under load look at best and cpu, not at the median.`,
);

console.log('\nSolve alone: a radial net, merging and ordering inside, warm, 15 samples');
const version = ngspiceVersion();
if (version === null)
  console.log('  ngspice is not on PATH (Debian: apt-get install ngspice): its column is left out.');
const solves: { size: number; measured: Measured }[] = [];
const faults: { size: number; measured: Measured }[] = [];
const analyses: { oursMs: number; spiceMs: number; what: string }[] = [];

/** Our solution beside ngspice's of the same net. */
function compare(
  size: number,
  what: string,
  net: Network,
): { readonly measured: Measured; readonly volts: readonly number[] } {
  const solution = solveNetwork(net);
  if (!solution.ok) throw new Error(`the net of ${size} runs is refused`);
  const measured = measure(() => solveNetwork(net), MOST_MS);
  console.log(`    ours         ${shown(measured)}; ${what}`);
  if (version !== null) {
    const deck = deckOf(net, { floorV: FLOOR_V });
    const runs = Array.from({ length: SPICE_RUNS }, () => runDeck(net, deck));
    const spiceMs = 1000 * Math.min(...runs.map(({ analysisS }) => analysisS));
    const wholeMs = Math.min(...runs.map(({ processMs }) => processMs));
    const gap = greatestGap(solution.nodeVolts, runs[0]?.volts ?? []);
    console.log(
      `    ${version}   analysis best of ${SPICE_RUNS} ${digits(spiceMs)} ms (it tells whole ms), ${times(spiceMs, measured.bestMs)}; whole process ${digits(wholeMs)} ms, ${times(wholeMs, measured.bestMs)}; volts agree to ${gap.toExponential(0)}`,
    );
    if (size === SIZES.at(-1)) analyses.push({ oursMs: measured.bestMs, spiceMs, what });
  }
  return { measured, volts: solution.nodeVolts };
}

for (const size of SIZES) {
  const net = radialNet(size);
  console.log(`  ${size} runs`);
  const { measured, volts } = compare(size, 'constant power', net);
  solves.push({ size, measured });
  const loads = net.loads.map((load) => ({
    ...load,
    law: { kind: 'current', amps: 1000 / 12.6 / net.loads.length, atVolts: 12.6 } as const,
  }));
  compare(size, 'in proportion to voltage', { ...net, loads });
  if (size <= MOST_DENSE) {
    const dense = measure(() => solveByDenseLu(net), DENSE_MS);
    const gap = greatestGap(volts, [...solveByDenseLu(net)]);
    console.log(
      `    dense LU     ${shown(dense)}, ${times(dense.bestMs, measured.bestMs)}; volts agree to ${gap.toExponential(0)}`,
    );
  }
  const behind = { ...net, sources: net.sources.map((source) => ({ ...source, ohm: 0.005 })) };
  const fault = measure(() => faultsTo(behind, 0), MOST_MS);
  faults.push({ size, measured: fault });
  console.log(
    `    fault at every node ${shown(fault)}: ${(fault.bestMs / measured.bestMs).toFixed(2)} times one solution`,
  );
}
const solveGrowth = tellGrowth('solve', solves);
const faultGrowth = tellGrowth('fault at every node', faults);

const assessOne = await built('./assessOne.ts');

/** The assessment in a process of its own, ended after a minute. */
function assessed(runs: number, gauges: 'fixed' | 'auto'): Measured | null {
  const args = [assessOne, `${runs}`, gauges, `${MOST_MS / 2}`];
  const { status, stdout, stderr, signal } = spawnSync(process.execPath, args, { encoding: 'utf8', timeout: MOST_MS });
  if (signal !== null) return null;
  if (status !== 0) throw new Error(stderr);
  const measured: Measured = JSON.parse(stdout);
  return measured;
}

const smalls: { gauges: string; ms: number }[] = [];
const growths: { gauges: string; exponent: number }[] = [];
for (const gauges of ['fixed', 'auto'] as const) {
  console.log(`\nWhole assessment, gauges ${gauges}`);
  const points: { size: number; measured: Measured }[] = [];
  for (const size of [SMALL_RUNS, ...SIZES]) {
    const measured = assessed(size, gauges);
    console.log(`  ${size} runs  ${measured === null ? 'over 60 s, stopped' : shown(measured)}`);
    if (measured === null) break;
    if (size === SMALL_RUNS) smalls.push({ gauges, ms: measured.medianMs });
    else points.push({ size, measured });
  }
  if (points.filter(({ size }) => size >= 100).length > 1) {
    const last = points.at(-1)?.size ?? 0;
    const isWhole = last === SIZES.at(-1);
    const exponent = tellGrowth(isWhole ? 'assessment' : `assessment, up to ${last} only`, points);
    growths.push({ gauges, exponent: isWhole ? exponent : Number.POSITIVE_INFINITY });
  } else growths.push({ gauges, exponent: Number.POSITIVE_INFINITY });
}

console.log('\nExpected');
expectThat(solveGrowth <= MOST_EXPONENT, `solve grows with an exponent of at most ${MOST_EXPONENT}`);
expectThat(faultGrowth <= MOST_EXPONENT, `fault at every node grows with an exponent of at most ${MOST_EXPONENT}`);
for (const { oursMs, spiceMs, what } of analyses) {
  expectThat(
    oursMs <= spiceMs,
    `at 10,000 runs, ${what}, no slower than ngspice's analysis: ${digits(oursMs)} against ${digits(spiceMs)} ms`,
  );
}
for (const { gauges, ms } of smalls) {
  if (gauges === 'fixed')
    expectThat(
      ms < MOST_SMALL_MS,
      `assessment of ${SMALL_RUNS} runs with gauges fixed under ${MOST_SMALL_MS} ms, median: ${digits(ms)}`,
    );
}
for (const { gauges, exponent } of growths) {
  if (gauges === 'fixed')
    expectThat(
      exponent <= MOST_EXPONENT,
      `assessment with gauges fixed grows with an exponent of at most ${MOST_EXPONENT}`,
    );
}
if (unmet.length > 0) process.exitCode = 1;
