/** ngspice, a general circuit simulator, as the independent solver: decks from nets, volts from its answers. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Network } from '../../../../src/calc/network/types.ts';

/** Its defaults are wrong by a part in a thousand here, or end on the wrong branch. */
export const OPTIONS = 'reltol=1e-10 abstol=1e-11 vntol=1e-11 itl1=500 numdgt=16';
const MOST_MS = 120_000;

/** Version line of the ngspice on PATH; null where there is none. */
export function ngspiceVersion(): string | null {
  const { status, stdout } = spawnSync('ngspice', ['--version'], { encoding: 'utf8' });
  return status === 0 ? (/ngspice-\d+/.exec(stdout)?.[0] ?? 'ngspice') : null;
}

const digits = (value: number): string => value.toExponential(16);

/** The node whose volts are 0: the minus post of the first source, as in our solver. */
const zeroNodeOf = ({ sources }: Network): number => sources[0]?.minus ?? 0;

/**
 * Circuit deck of a net. Loads of constant power are current sources of watts over volts; with `startVolts` every node is
 * set there at first (a nodeset: ngspice holds it for a first pass and then lets go). With `floorV` in its place the loads
 * draw no more than at that voltage, which must lie below their true one: then ngspice gets by without a nodeset, over
 * which it takes time in proportion to the square of the nodes.
 */
export function deckOf(
  net: Network,
  { startVolts, floorV }: { readonly startVolts?: readonly number[]; readonly floorV?: number } = {},
): string {
  const name = (node: number): string => (node === zeroNodeOf(net) ? '0' : `${node + 1}`);
  const between = (one: number, other: number): string => `${name(one)} ${name(other)}`;
  const lines = ['net', `.options ${OPTIONS}`];
  for (const [index, { a, b, ohm }] of net.resistors.entries()) lines.push(`R${index} ${between(a, b)} ${digits(ohm)}`);
  for (const [index, { plus, minus, volts, ohm }] of net.sources.entries()) {
    if (ohm === 0) lines.push(`V${index} ${between(plus, minus)} DC ${digits(volts)}`);
    else {
      lines.push(`V${index} emf${index} ${name(minus)} DC ${digits(volts)}`);
      lines.push(`RS${index} emf${index} ${name(plus)} ${digits(ohm)}`);
    }
  }
  for (const [index, { plus, minus, law }] of net.loads.entries()) {
    const ends = between(plus, minus);
    if (law.kind === 'current') lines.push(`RL${index} ${ends} ${digits(law.atVolts / law.amps)}`);
    else {
      const across = `V(${ends.replace(' ', ',')})`;
      const volts = floorV === undefined ? across : `max(${across},${digits(floorV)})`;
      lines.push(`B${index} ${ends} I=${digits(law.watts)}/${volts}`);
    }
  }
  for (const [node, volts] of (startVolts ?? []).entries()) {
    if (node !== zeroNodeOf(net)) lines.push(`.nodeset V(${name(node)})=${digits(volts)}`);
  }
  return [...lines, '.control', 'set numdgt=16', 'op', 'print all', 'rusage all', '.endc', '.end', ''].join('\n');
}

export interface SpiceRun {
  /** By node; null where ngspice gave up. */
  readonly volts: readonly number[] | null;
  /** What ngspice itself reports for the analysis, s. */
  readonly analysisS: number;
  readonly processMs: number;
}

/** Runs one deck in a process of its own. */
export function runDeck(net: Network, deck: string): SpiceRun {
  const folder = mkdtempSync(join(tmpdir(), 'feedrun-ngspice-'));
  try {
    const file = join(folder, 'net.cir');
    writeFileSync(file, deck);
    const begin = performance.now();
    const { stdout, stderr, error } = spawnSync('ngspice', ['-b', file], {
      encoding: 'utf8',
      timeout: MOST_MS,
      maxBuffer: 1 << 28,
    });
    const processMs = performance.now() - begin;
    if (error !== undefined) throw error;
    const analysisS = Number(/Total analysis time \(seconds\) = (\S+)/.exec(stdout)?.[1] ?? Number.NaN);
    const aborted = /simulation\(s\) aborted/.test(`${stdout}${stderr}`);
    if (aborted) return { volts: null, analysisS, processMs };
    const printed = new Map(
      [...stdout.matchAll(/^v\((\d+)\) = (\S+)$/gm)].map(([, node, volts]) => [Number(node) - 1, Number(volts)]),
    );
    printed.set(zeroNodeOf(net), 0);
    const volts = Array.from({ length: net.nodes }, (_, node) => printed.get(node) ?? Number.NaN);
    if (!volts.every(Number.isFinite)) throw new Error(`ngspice left nodes without volts:\n${stdout}\n${stderr}`);
    return { volts, analysisS, processMs };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Operating point by ngspice alone, in two runs: first without the constant-power loads, then with them from those
 * no-load volts. Nothing of ours enters, so that a wrong branch of ours cannot lead it there.
 */
export function spiceVolts(net: Network): readonly number[] | null {
  const idle = { ...net, loads: net.loads.filter(({ law }) => law.kind === 'current') };
  const start = runDeck(idle, deckOf(idle)).volts;
  if (start === null) throw new Error('ngspice found no point without the loads');
  return runDeck(net, deckOf(net, { startVolts: start })).volts;
}
