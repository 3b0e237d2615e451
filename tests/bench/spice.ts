/**
 * `npm run spice`: works the seeded random nets by ngspice and records its answers in tests/fixtures/spice, against
 * which the tests hold the solver. Our solver takes no part. What ngspice answers is checked before it is kept: its
 * currents add up at every node, and its point is the stable one; where it is asked for more than can be carried, it
 * has to give up, or to answer with what is no solution.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { isStable, portsOf } from '../calc/network/ports.ts';
import { loadedNet } from '../calc/network/spice/nets.ts';
import { ngspiceVersion, OPTIONS, spiceVolts } from '../calc/network/spice/ngspice.ts';
import { leftOver, RECORDED_FILE, type RecordedNet, shorten } from '../calc/network/spice/record.ts';

const CARRIED = 220;
const BEYOND = 40;
/** Share of the greatest current that may be left over at a node of a solution printed to 17 digits. */
const ADDS_UP = 1e-8;

const version = ngspiceVersion();
if (version === null) throw new Error('ngspice is not on PATH (Debian: apt-get install ngspice)');
const nets: RecordedNet[] = [];
const outcomes = new Map<string, number>();
let worst = 0;
for (let seed = 1; seed <= CARRIED + BEYOND; seed += 1) {
  const { name, share, net } = loadedNet(seed, seed > CARRIED);
  const volts = spiceVolts(net);
  const isPoint = volts !== null && leftOver(net, volts) <= ADDS_UP;
  const outcome = volts === null ? 'gave up' : isPoint ? 'solved' : 'answered with no solution';
  const key = `${share > 1 ? 'beyond' : 'carried'}: ${outcome}`;
  outcomes.set(key, (outcomes.get(key) ?? 0) + 1);
  if (share > 1) {
    if (isPoint) throw new Error(`${name}: ngspice solves ${share} of what can be carried`);
    nets.push(shorten(name, share, net, null));
    continue;
  }
  if (volts === null || !isPoint) throw new Error(`${name}: ngspice ${outcome} at ${share} of what can be carried`);
  const powered = net.loads.flatMap(({ plus, minus, law }) =>
    law.kind === 'power' ? [{ watts: law.watts, across: (volts[plus] ?? 0) - (volts[minus] ?? 0) }] : [],
  );
  const watts = powered.map((load) => load.watts);
  const across = powered.map((load) => load.across);
  if (!across.every((each) => each > 0) || !isStable(portsOf(net), watts, across)) {
    throw new Error(`${name}: ngspice ended on another branch`);
  }
  worst = Math.max(worst, leftOver(net, volts));
  nets.push(shorten(name, share, net, volts));
}
mkdirSync(new URL('.', RECORDED_FILE), { recursive: true });
const about =
  'Operating points of seeded random nets by ngspice. resistors: a, b, ohm; sources: plus, minus, V, ohm; loads: plus, minus, W, or plus, minus, A, at V; volts by node against the minus post of the first source; null: no point found.';
const madeBy = `npm run spice; ${version}; ${OPTIONS}; nodeset at ngspice's own no-load volts`;
const rows = nets.map((net) => JSON.stringify(net)).join(',\n');
writeFileSync(
  RECORDED_FILE,
  `{"about":${JSON.stringify(about)},\n"madeBy":${JSON.stringify(madeBy)},\n"nets":[\n${rows}\n]}\n`,
);
console.log(
  `${nets.length} nets recorded; greatest current left over at a node: ${worst.toExponential(1)} of the greatest`,
);
for (const [key, count] of outcomes) console.log(`  ${key}: ${count}`);
