import { describe, expect, it } from 'vitest';
import { drawOutline } from '../../src/drawing/outline.ts';
import { boxHolds } from '../../src/geom/box.ts';
import { newSheet } from '../../src/plan/create.ts';
import { DEFAULT_OUTLINES, zoneAt } from '../../src/plan/outline.ts';
import { usualPlaces } from '../../src/plan/outlinePlaces.ts';
import type { Body } from '../../src/plan/schema.ts';

const BODIES: readonly Body[] = ['hatchback', 'saloon', 'estate', 'pickup', 'panelVan', 'smallBus'];

describe.each(BODIES)('%s', (body) => {
  const outline = DEFAULT_OUTLINES[body];

  it.each(['above', 'side'] as const)('is drawn within its bounds from %s', (view) => {
    const { shapes, bounds } = drawOutline(newSheet({ id: 's', name: '', outline, mirrored: false, view }));
    for (const shape of shapes) {
      const flat = shape.kind === 'line' ? shape.points : [shape.x, shape.y];
      for (let i = 0; i < flat.length; i += 2) {
        expect(boxHolds(bounds, { xM: flat[i] ?? Number.NaN, yM: flat[i + 1] ?? Number.NaN })).toBe(true);
      }
    }
  });

  it.each([false, true])('has usual places in their zones, mirrored %s', (mirrored) => {
    const zones = { front: 'bay', seat: 'cabin', rear: 'cargo' } as const;
    for (const place of ['front', 'seat', 'rear'] as const) {
      const { battery, mainFuse, passThrough, amplifiers, grounds } = usualPlaces(outline, mirrored, place, 3);
      expect([zoneAt(outline, battery), zoneAt(outline, mainFuse)]).toEqual([zones[place], zones[place]]);
      expect(Math.hypot(battery.xM - mainFuse.xM, battery.yM - mainFuse.yM)).toBeLessThanOrEqual(0.3);
      expect(passThrough?.xM).toBe(outline.bayM);
      expect([...amplifiers, ...grounds].map((spot) => zoneAt(outline, spot))).toEqual(Array(6).fill('cargo'));
    }
  });
});
