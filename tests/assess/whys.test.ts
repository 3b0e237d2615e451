import { describe, expect, it } from 'vitest';
import type { Assessment } from '../../src/assess/answer.ts';
import { assess } from '../../src/assess/assess.ts';
import { gauge, isGaugeId } from '../../src/calc/conductor/gauge.ts';
import { evaluateWhy } from '../calc/evaluateWhy.ts';
import { charged, fixed, mixed, single, twoBatteries } from './plans.ts';

/** Each shown figure beside the id of its why. */
function shown(answer: Assessment): [figure: string, value: number | null, why: string | null][] {
  return [
    ...answer.runs.flatMap((run): [string, number | null, string | null][] => [
      [`${run.runId} length`, run.length.lengthM, run.whyLength],
      [`${run.runId} area`, run.areaMm2, run.whySize],
      [`${run.runId} drop`, run.dropV, run.whyDrop],
      [`${run.runId} ampacity`, run.ampacityA, run.whyAmpacity],
    ]),
    ...answer.fuses.map((fuse): [string, number | null, string | null] => [
      `${fuse.fittingId} rating`,
      fuse.ratingA,
      fuse.why,
    ]),
    ...answer.amplifiers.flatMap((amplifier): [string, number | null, string | null][] => [
      [`${amplifier.fittingId} current`, amplifier.fullA, amplifier.whyCurrent],
      [`${amplifier.fittingId} volts`, amplifier.terminalV, amplifier.whyTerminal],
      [`${amplifier.fittingId} drop`, amplifier.dropCablesV, amplifier.whyDrop],
    ]),
    ...answer.supply.amplifiers.flatMap((amplifier): [string, number | null, string | null][] => [
      [`${amplifier.fittingId} mean off`, amplifier.meanOffA, amplifier.whyMeanOff],
      [`${amplifier.fittingId} mean running`, amplifier.meanRunningA, amplifier.whyMeanRunning],
    ]),
    ...answer.supply.alternators.flatMap((alternator): [string, number | null, string | null][] => [
      [`${alternator.fittingId} idle`, alternator.idleHotA, alternator.whyIdleHot],
      [`${alternator.fittingId} cruise`, alternator.cruiseHotA, alternator.whyCruiseHot],
    ]),
    ['deficit idle', answer.supply.deficitIdleA, answer.supply.whyDeficitIdle],
    ['deficit cruise', answer.supply.deficitCruiseA, answer.supply.whyDeficitCruise],
    ...answer.supply.groups.map(({ fittingIds, minutesOff, whyPlay }): [string, number | null, string | null] => [
      `${fittingIds} play`,
      minutesOff === null ? null : 60 * minutesOff,
      whyPlay,
    ]),
    ...answer.sources.map((source): [string, number | null, string | null] => [
      `${source.fittingId} unprotected`,
      source.unprotectedM,
      source.why,
    ]),
    ...Object.entries(answer.figures).map(([name, { value, why }]): [string, number | null, string | null] => [
      `figure ${name}`,
      typeof value === 'string' ? (isGaugeId(value) ? gauge(value).areaMm2 : null) : value,
      why,
    ]),
  ];
}

describe.each(Object.entries({ single, mixed, twoBatteries, fixed, charged }))(
  'every why of the plan %s',
  (_, plan) => {
    const answer = assess(plan());

    it('gives the figure it stands beside when it is worked out again from what it shows', () => {
      let count = 0;
      for (const [name, value, id] of shown(answer)) {
        if (value === null || id === null) continue;
        const why = answer.whys[id];
        if (why === undefined) throw new Error(`${name}: no why ${id}`);
        const worked = evaluateWhy(why);
        expect(Math.abs(worked - value), name).toBeLessThanOrEqual(1e-7 * Math.max(1, Math.abs(value)));
        count += 1;
      }
      expect(count).toBeGreaterThan(15);
    });

    it('stands beside every figure that is told', () => {
      const without = shown(answer).filter(([, value, why]) => value !== null && why === null);
      expect(without.map(([name]) => name)).toEqual([]);
    });

    it('leaves none that does not work out, and none that a finding points at in vain', () => {
      for (const [id, why] of Object.entries(answer.whys)) expect(() => evaluateWhy(why), id).not.toThrow();
      for (const { why, id } of answer.findings) if (why !== null) expect(answer.whys, id).toHaveProperty([why]);
    });
  },
);

describe('an assumption in a why', () => {
  it('names the path at which it can be edited', () => {
    const answer = assess(single());
    const edits = Object.values(answer.whys).flatMap(({ steps }) => steps.flatMap(({ edit }) => edit ?? []));
    expect(edits).toContain('settings.duty');
    expect(edits).toContain('settings.dropLimit');
    expect(edits).toContain('settings.bayC');
    expect(edits).toContain('amp.efficiency');
    expect(edits).toContain('wall-amp.conductor.insulationC');
  });
});
