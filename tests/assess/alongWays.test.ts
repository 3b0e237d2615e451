import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factsOfPlan } from '../../src/assess/assess.ts';
import { faultsByNetwork, faultsOf } from '../../src/assess/short/net.ts';
import { supplyByNetwork, supplyPoint } from '../../src/assess/supply/point.ts';
import { anyTree } from './anyTree.ts';

const RUNS = process.env.FEEDRUN_LONG === undefined ? 60 : 2000;

/** Relative gap, of figures that may be as small as they like; 0 where both tell nothing. */
const gap = (one: number | null | undefined, other: number | null | undefined): number =>
  one == null || other == null
    ? (one ?? null) === (other ?? null)
      ? 0
      : Infinity
    : Math.abs(one - other) / Math.max(1e-6, Math.abs(other));

describe('in a tree, what is added up along the ways', () => {
  it('is what the network solver finds of shorts at every live node', { timeout: 300_000 }, () => {
    let compared = 0;
    fc.assert(
      fc.property(anyTree(), (plan) => {
        const facts = factsOfPlan(plan);
        const { live } = facts.model.sides;
        for (const extreme of ['highest', 'lowest'] as const) {
          for (const batteryScale of [1, 2]) {
            if (facts.model.shorted) continue;
            const [along, whole] = [faultsOf, faultsByNetwork].map((work) => work(facts, { extreme, batteryScale }));
            for (const node of live.keys()) {
              if (live[node] !== true) continue;
              compared += 1;
              expect(gap(along?.ohm[node], whole?.ohm[node])).toBeLessThan(1e-9);
              expect(gap(along?.amps[node], whole?.amps[node])).toBeLessThan(1e-9);
              expect(gap(along?.openVolts[node], whole?.openVolts[node])).toBeLessThan(1e-9);
            }
          }
        }
      }),
      { seed: 11, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThan(500);
  });

  it('is what it finds behind a real battery, at full output and in the mean', { timeout: 300_000 }, () => {
    let compared = 0;
    fc.assert(
      fc.property(anyTree(), fc.double({ min: 1, max: 30, noNaN: true }), (plan, meanA) => {
        const facts = factsOfPlan(plan);
        for (const drawnA of [null, facts.model.demands.map((demand) => (demand === null ? 0 : meanA))]) {
          const of = { speed: 'off', drawnA, switches: 'asDrawn' } as const;
          const [along, whole] = [supplyPoint(facts, of), supplyByNetwork(facts, of)];
          expect(along?.carried).toBe(whole?.carried);
          expect(along?.unfed).toEqual(whole?.unfed);
          for (const [load, volts] of (whole?.loadVolts ?? []).entries()) {
            compared += 1;
            expect(gap(along?.loadVolts[load], volts)).toBeLessThan(1e-6);
          }
          for (const figure of ['sourceAmps', 'postsV'] as const)
            expect(gap(along?.[figure][0], whole?.[figure][0])).toBeLessThan(1e-6);
        }
      }),
      { seed: 12, numRuns: RUNS },
    );
    expect(compared).toBeGreaterThan(50);
  });
});
