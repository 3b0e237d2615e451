import { describe, expect, it } from 'vitest';
import { boxHolds } from '../../src/geom/box.ts';
import {
  bayBox,
  DEFAULT_OUTLINES,
  firewallXM,
  outlineBox,
  outlineRegions,
  zoneAt,
  zoneStretches,
} from '../../src/plan/outline.ts';
import { usualPlaces } from '../../src/plan/outlinePlaces.ts';
import { at } from './support/samplePlan.ts';

const van = { ...DEFAULT_OUTLINES.panelVan, lengthM: 4, widthM: 1.8, bayM: 1, cabM: 1.5 } as const;
const bench = { kind: 'bench', lengthM: 2, widthM: 0.8 } as const;

describe('outlines', () => {
  it('a van is bay, cabin and cargo from nose to rear', () => {
    expect(outlineRegions(van)).toEqual([
      { zone: 'bay', fromXM: 0, toXM: 1 },
      { zone: 'cabin', fromXM: 1, toXM: 2.5 },
      { zone: 'cargo', fromXM: 2.5, toXM: 4 },
    ]);
    expect(firewallXM(van)).toBe(1);
    expect(outlineBox(van)).toEqual({ minXM: 0, minYM: 0, maxXM: 4, maxYM: 1.8 });
    expect(bayBox(van)).toEqual({ minXM: 0, minYM: 0, maxXM: 1, maxYM: 1.8 });
  });

  it('a bench is one cabin without a firewall', () => {
    expect(outlineRegions(bench)).toEqual([{ zone: 'cabin', fromXM: 0, toXM: 2 }]);
    expect(firewallXM(bench)).toBeNull();
    expect(bayBox(bench)).toBeNull();
    expect(zoneAt(bench, at(5, 5))).toBe('cabin');
  });

  it('the firewall itself counts as bay, the hotter side; outside counts as what it is nearest to', () => {
    const zones = [at(-1, 0), at(0.5, 9), at(1, 1), at(1.0001, 1), at(2.5, 1), at(2.6, 1), at(9, 1)];
    expect(zones.map((point) => zoneAt(van, point))).toEqual([
      ...['bay', 'bay', 'bay', 'cabin', 'cabin', 'cargo', 'cargo'],
    ]);
  });

  it('a cab longer than the van leaves no cargo, and no region of negative length', () => {
    const short = { ...van, lengthM: 2 };
    expect(outlineRegions(short).map(({ fromXM, toXM }) => toXM - fromXM)).toEqual([1, 1, 0]);
  });

  it('a cable from before the bumper to the rear lies in each zone for its length', () => {
    const stretches = zoneStretches(van, [at(-0.2, 1), at(3, 1), at(3, 2.5)]);
    expect(stretches.map(({ region, lengthM }) => [region, Number(lengthM.toFixed(9))])).toEqual([
      ['bay', 1.2],
      ['cabin', 1.5],
      ['cargo', 2],
    ]);
  });

  it('the usual place of the battery is in the bay, on the driver’s side, and changes sides with the wheel', () => {
    const outline = DEFAULT_OUTLINES.panelVan;
    const [left, right] = [usualPlaces(outline, false).battery, usualPlaces(outline, true).battery];
    const bay = bayBox(outline) ?? outlineBox(outline);
    expect(boxHolds(bay, left) && boxHolds(bay, right)).toBe(true);
    // seen from above with the nose to the left, the vehicle's left side is the lower one
    expect(left.yM).toBeGreaterThan(outline.widthM / 2);
    expect(right.yM).toBeLessThan(outline.widthM / 2);
    expect(boxHolds(outlineBox(bench), usualPlaces(bench, false).battery)).toBe(true);
  });
});
