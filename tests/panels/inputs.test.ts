import { describe, expect, it } from 'vitest';
import { boundsIn, inputBounds, lengthBounds } from '../../src/panels/inputs.ts';
import { examplePlan } from './fixture.ts';

// each pair as the plan's document states it (schema.ts), written down by hand
describe('the bounds of a field', () => {
  it.each([
    ['settings.bodyOhm', 0, 1],
    ['settings.restV', 9, 32],
    ['battery.ccaA', 10, 5000],
    ['battery.strap.areaMm2', 0.5, 500],
    ['battery.internalOhm', 0.00001, 1],
    ['fuse.link.ratingA', 0.5, 2000],
    ['amplifier.onboardFusesA', 0.5, 500],
    ['amplifier.idleA', 0, 50],
    ['alternator.idleA', 0, 1000],
    ['relay.ratedA', 1, 2000],
    ['takeOff.cable.lengthM', 0, 20],
    ['run.slackPercent', 0, 100],
    ['run.conductor.strands.count', 1, 20_000],
    ['run.bundled', 1, 100],
    ['settings.ownLinks.ratingsA', 0.5, 2000],
    ['settings.ownLinks.breakingA', 1, 200_000],
  ])('%s goes from %d to %d', (path, min, max) => {
    expect(inputBounds(path)).toEqual({ min, max });
  });

  it('of a length are in metres', () => {
    expect(lengthBounds('run.tapedM')).toEqual({ minM: 0.001, maxM: 100 });
  });

  it('are found by the id an answer names, whatever it is the id of', () => {
    const plan = examplePlan();
    expect(boundsIn(plan, 'rear.efficiency')).toEqual(inputBounds('amplifier.efficiency'));
    expect(boundsIn(plan, 'bat.strap.lengthM')).toEqual(inputBounds('battery.strap.lengthM'));
    expect(boundsIn(plan, 'toRear.riseM')).toEqual(inputBounds('run.riseM'));
    expect(boundsIn(plan, 'sheet.scale')).toEqual(inputBounds('sheet.scale'));
    expect(boundsIn(plan, 'settings.jointOhm')).toEqual(inputBounds('settings.jointOhm'));
  });
});
