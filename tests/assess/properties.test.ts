import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Assessment, Finding } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { openPlan } from '../../src/plan/open.ts';
import type { Plan } from '../../src/plan/schema.ts';
import { evaluateWhy } from '../calc/evaluateWhy.ts';
import { anyPlan } from './anyPlan.ts';
import { fixed, mixed, single, twoBatteries } from './plans.ts';

const isLong = process.env.FEEDRUN_LONG !== undefined;
const RUNS = isLong ? 5000 : 120;
const LONG_MS = 600_000;

/** Where a value that JSON cannot hold stands; null when there is none. */
function unsound(value: unknown, where = ''): string | null {
  if (typeof value === 'number') return Number.isFinite(value) ? null : where;
  if (value === undefined) return where;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, part] of Object.entries(value)) {
    const found = unsound(part, `${where}.${key}`);
    if (found !== null) return found;
  }
  return null;
}

/** The findings that stop for a size which the choice itself has made. */
function chosenAndStopped({ runs, findings }: Assessment): readonly Finding[] {
  const chosen = new Set(runs.filter((run) => run.chosen && run.gauge !== null).map(({ runId }) => runId));
  return findings.filter(
    ({ rule, severity, places }) =>
      severity === 'stop' &&
      ['step-down', 'fuse-over-conductor', 'ampacity', 'heating'].includes(rule) &&
      chosen.has(places[0]?.id ?? ''),
  );
}

describe('any plan that opens', () => {
  it('is answered without an exception, NaN, Infinity or a hole; every why works out; no chosen size is stopped for', {
    timeout: LONG_MS,
  }, () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const answer = assess(plan);
        expect(chosenAndStopped(answer)).toEqual([]);
        expect(unsound(answer)).toBeNull();
        for (const [id, why] of Object.entries(answer.whys)) expect(() => evaluateWhy(why), id).not.toThrow();
        const ids = answer.findings.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        expect(answer.runs.map(({ runId }) => runId)).toEqual(plan.runs.map(({ id }) => id));
      }),
      { numRuns: RUNS, seed: 20260501 },
    );
  });

  it('is answered alike each time', { timeout: LONG_MS }, () => {
    fc.assert(
      fc.property(anyPlan, (plan) => {
        const opened = openPlan(JSON.stringify(plan));
        if (!opened.ok) throw new Error('opens again');
        expect(JSON.stringify(assess(opened.plan))).toBe(JSON.stringify(assess(plan)));
      }),
      { numRuns: isLong ? 1000 : 30, seed: 20260503 },
    );
  });
});

/** The plan with a fuse dropped into a run, a share of the way along it; the run must be taped. */
function withFuse(plan: Plan, index: number, share: number): Plan | null {
  const run = plan.runs[index % Math.max(1, plan.runs.length)];
  if (run === undefined || run.kind === 'remote' || run.tapedM === null || run.tapedM < 0.01) return null;
  const firstM = Math.max(0.001, Math.round(run.tapedM * share * 1e4) / 1e4);
  const secondM = Math.max(0.001, run.tapedM - firstM);
  const fuse = {
    id: 'dropped',
    name: '',
    sheetId: 'sheet',
    at: { xM: 1, yM: 1 },
    zone: 'auto' as const,
    takes: null,
    locked: false,
    kind: 'fuse' as const,
    link: { ratingA: 60, family: 'auto' as const },
  };
  const first = { ...run, to: { fittingId: 'dropped', terminal: 'in' }, tapedM: firstM };
  const second = { ...run, id: 'droppedRun', from: { fittingId: 'dropped', terminal: 'out' }, tapedM: secondM };
  return {
    ...plan,
    fittings: [...plan.fittings, fuse],
    runs: plan.runs.flatMap((one) => (one === run ? [first, second] : [one])),
  };
}

describe('a fuse dropped into any run', () => {
  it('never lengthens what is unprotected, from any source', { timeout: LONG_MS }, () => {
    fc.assert(
      fc.property(anyPlan, fc.nat(), fc.double({ min: 0, max: 1, noNaN: true }), (plan, index, share) => {
        const fused = withFuse(plan, index, share);
        if (fused === null) return;
        const before = assess(plan).sources;
        const after = assess(fused).sources;
        for (const [source, { unprotectedM, totalUnprotectedM }] of before.entries()) {
          // a millimetre: the shortest piece a run can be cut into
          expect(after[source]?.unprotectedM ?? 0).toBeLessThanOrEqual(unprotectedM + 0.001001);
          expect(after[source]?.totalUnprotectedM ?? 0).toBeLessThanOrEqual(totalUnprotectedM + 0.001001);
        }
      }),
      { numRuns: RUNS, seed: 20260504 },
    );
  });
});

describe('the order of the file', () => {
  it.each(Object.entries({ single, mixed, twoBatteries, fixed }))('changes no figure of %s', (_, make) => {
    const plan = make();
    const turned = { ...plan, fittings: plan.fittings.toReversed(), runs: plan.runs.toReversed() };
    const byId = (answer: ReturnType<typeof assess>) =>
      new Map(answer.runs.map(({ runId, gauge, dropV, limitA }) => [runId, [gauge, dropV?.toFixed(7), limitA]]));
    const [one, other] = [assess(plan), assess(turned)];
    for (const [runId, figures] of byId(one)) expect(byId(other).get(runId), runId).toEqual(figures);
    expect(new Set(other.findings.map(({ id }) => id))).toEqual(new Set(one.findings.map(({ id }) => id)));
    expect(other.headline).toEqual(one.headline);
  });
});
