import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { solveNetwork } from '../../../../src/calc/network/solve.ts';
import { loadedNet } from './nets.ts';
import { ngspiceVersion, spiceVolts } from './ngspice.ts';
import { greatestGap, lengthen, RECORDED_FILE, type Recorded, shorten } from './record.ts';

/** |dv| / max(|v|, 1 mV) that two solvers may differ by at any node. */
const AGREE = 1e-6;
/** Seeds worked by ngspice again in this run: some of each kind, two of them beyond what can be carried. */
const LIVE_SEEDS = [1, 2, 3, 4, 57, 114, 171, 220, 221, 258];
const LIVE_TIMEOUT_MS = 120_000;

const recorded: Recorded = JSON.parse(readFileSync(RECORDED_FILE, 'utf8'));

describe('ngspice, as recorded', () => {
  const carried = recorded.nets.filter(({ volts }) => volts !== null);
  const beyond = recorded.nets.filter(({ volts }) => volts === null);

  it('covers trees, rings, grounds, two sources, held and behind resistance, up to 99.9 % and beyond', () => {
    expect(carried.length).toBeGreaterThanOrEqual(200);
    expect(beyond.length).toBeGreaterThanOrEqual(30);
    expect(carried.filter(({ share }) => share === 0.999).length).toBeGreaterThanOrEqual(50);
    expect(carried.every(({ share }) => share < 1)).toBe(true);
    expect(beyond.every(({ share }) => share > 1)).toBe(true);
    for (const kind of ['tree', 'grounded', 'ring', 'two sources']) {
      const nets = recorded.nets.filter(({ name }) => name.startsWith(kind));
      expect(nets.some(({ sources }) => sources.every(([, , , ohm]) => ohm > 0))).toBe(true);
      expect(nets.some(({ sources }) => sources.every(([, , , ohm]) => ohm === 0))).toBe(true);
    }
  });

  it('has the very nets that the seeds give', { timeout: LIVE_TIMEOUT_MS }, () => {
    // the full port equations of the larger ones take their time
    const small = recorded.nets
      .map((kept, index) => ({ kept, seed: index + 1 }))
      .filter(({ kept }) => kept.loads.length < 5);
    expect(small.length).toBeGreaterThan(10);
    for (const { kept, seed } of small) {
      const { name, share, net } = loadedNet(seed, kept.share > 1);
      expect(kept).toEqual(shorten(name, share, net, kept.volts));
    }
  });

  it('agrees with us at every node of every net that is carried', () => {
    for (const net of carried) {
      const result = solveNetwork(lengthen(net));
      if (!result.ok) throw new Error(`${net.name}, ${net.share}: refused, ${result.reason}`);
      expect(greatestGap(result.nodeVolts, net.volts ?? []), net.name).toBeLessThanOrEqual(AGREE);
    }
  });

  it('finds no point where we refuse, and we tell the share that is carried', () => {
    for (const net of beyond) {
      const result = solveNetwork(lengthen(net));
      if (result.ok || result.reason !== 'cannotCarry') throw new Error(`${net.name}, ${net.share}: carried`);
      expect(result.largestShare * net.share, net.name).toBeCloseTo(1, 6);
    }
  });
});

describe('ngspice, live', () => {
  it('answers today what was recorded, and agrees with us', { timeout: LIVE_TIMEOUT_MS }, (context) => {
    const version = ngspiceVersion();
    if (version === null) {
      console.warn(
        'Skipped: ngspice is not on PATH (Debian: apt-get install ngspice). Its recorded answers are checked.',
      );
      context.skip();
    }
    for (const seed of LIVE_SEEDS) {
      const kept = recorded.nets[seed - 1];
      if (kept === undefined) throw new Error(`seed ${seed} is not recorded`);
      const net = lengthen(kept);
      const volts = spiceVolts(net);
      const result = solveNetwork(net);
      expect(volts === null, kept.name).toBe(kept.volts === null);
      expect(result.ok, kept.name).toBe(volts !== null);
      if (volts === null || !result.ok) continue;
      expect(greatestGap(volts, kept.volts ?? []), kept.name).toBeLessThanOrEqual(1e-9);
      expect(greatestGap(result.nodeVolts, volts), kept.name).toBeLessThanOrEqual(AGREE);
    }
  });
});
