/** A sheet of a part shows that part, and of the rest only pale lines. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropped, type Strip } from '../../src/drawing/crop.ts';
import { drawOutline } from '../../src/drawing/outline.ts';
import type { Shape, Stroke } from '../../src/drawing/shapes.ts';
import { newSheet } from '../../src/plan/create.ts';
import { DEFAULT_OUTLINES, sheetBox } from '../../src/plan/outline.ts';
import { ownFrom } from '../../src/plan/ownOutline.ts';

const PEN: Stroke = { colour: 'vehicleLine', widthPx: 2, dashPx: [] };
const shape = (points: number[], closed: boolean, fill: 'sheet' | null = null): Shape => ({
  ...{ kind: 'line', points, closed, stroke: PEN, fill },
});
const strip = (fromXM: number, toXM: number): Strip => ({ fromXM, toXM });
const pointsOf = (shapes: readonly Shape[]) => shapes.map((one) => (one.kind === 'line' ? one.points : []));

function reachOf(one: Shape): readonly [number, number] {
  if (one.kind === 'circle') return [one.x - one.radius, one.x + one.radius];
  const xs = one.points.filter((_, i) => i % 2 === 0);
  return [Math.min(...xs), Math.max(...xs)];
}
/** Of a flat polygon, m2, by the shoelace formula. */
function areaOf(points: readonly number[]): number {
  const at = (i: number) => points[i % points.length] ?? 0;
  let twice = 0;
  for (let i = 0; i < points.length; i += 2) twice += at(i) * at(i + 3) - at(i + 2) * at(i + 1);
  return Math.abs(twice) / 2;
}

describe('a shape that is cut', () => {
  it('is a line from end to end of the strip, in as many pieces as lie in it', () => {
    expect(pointsOf(cropped([shape([0, 0, 4, 4], false)], strip(1, 3)))).toEqual([[1, 1, 3, 3]]);
    expect(pointsOf(cropped([shape([4, 4, 0, 0], false)], strip(1, 3)))).toEqual([[3, 3, 1, 1]]);
    // in, out and in again
    expect(pointsOf(cropped([shape([0, 0, 2, 0, 2, 1, 0, 1], false)], strip(0, 1)))).toEqual([
      [0, 0, 1, 0],
      [1, 1, 0, 1],
    ]);
  });

  it('stays where it is all inside, is gone where it is all outside, and on the very border is kept', () => {
    const one = shape([1, 0, 2, 0, 2, 1], true, 'sheet');
    expect(cropped([one], strip(1, 2))).toEqual([one]);
    expect(cropped([one], strip(2.5, 3))).toEqual([]);
    const wall = shape([1, 0, 1, 2], false);
    expect(cropped([wall], strip(0, 1))).toEqual([wall]);
    expect(cropped([wall], strip(1, 2))).toEqual([wall]);
  });

  it('has its fill cut straight, and no stroke along the cut', () => {
    const cut = cropped([shape([0, 0, 2, 0, 2, 1, 0, 1], true, 'sheet')], strip(0, 1));
    const [fill, ...lines] = cut;
    expect(areaOf(pointsOf(cut)[0] ?? [])).toBe(1);
    expect([fill?.fill, fill?.stroke]).toEqual(['sheet', null]);
    expect(pointsOf(lines)).toEqual([
      [0, 0, 1, 0],
      [1, 1, 0, 1, 0, 0],
    ]);
  });

  it('is a circle made a part of one', () => {
    const wheel: Shape = { kind: 'circle', x: 1, y: 0, radius: 0.5, stroke: null, fill: 'rule' };
    const [half] = cropped([wheel], strip(0, 1));
    expect(half?.kind === 'line' && areaOf(half.points)).toBeCloseTo((Math.PI * 0.25) / 2, 2);
  });

  it('lies in the strip whatever it was, and its parts make the whole again', () => {
    const m = fc.integer({ min: 0, max: 400 }).map((cm) => cm / 100);
    // a fan about a middle: it never crosses itself
    const fan = fc.array(fc.integer({ min: 5, max: 100 }), { minLength: 3, maxLength: 9 }).map((radii) =>
      radii.flatMap((radius, i) => {
        const angle = (2 * Math.PI * i) / radii.length;
        return [2 + (radius / 50) * Math.cos(angle), 2 + (radius / 50) * Math.sin(angle)];
      }),
    );
    fc.assert(
      fc.property(fan, m, (points, at) => {
        const whole = shape(points, true, 'sheet');
        const fills = [strip(Number.NEGATIVE_INFINITY, at), strip(at, Number.POSITIVE_INFINITY)].map((one) => {
          const parts = cropped([whole], one);
          for (const part of parts) {
            const [least, most] = reachOf(part);
            expect(least).toBeGreaterThanOrEqual(one.fromXM - 1e-9);
            expect(most).toBeLessThanOrEqual(one.toXM + 1e-9);
          }
          return parts
            .filter(({ fill }) => fill !== null)
            .reduce((sum, part) => sum + areaOf(pointsOf([part])[0] ?? []), 0);
        });
        expect((fills[0] ?? 0) + (fills[1] ?? 0)).toBeCloseTo(areaOf(points), 9);
      }),
    );
  });
});

describe('a sheet of a part', () => {
  const outlines = [...Object.values(DEFAULT_OUTLINES), ownFrom(DEFAULT_OUTLINES.panelVan)];
  const drawn = outlines.flatMap((outline) =>
    (['whole', 'bay', 'cargo'] as const).flatMap((part) =>
      (['above', 'side'] as const).map((view) => {
        const sheet = newSheet({ id: 's', name: '', outline, mirrored: false, part, view });
        const name = outline.kind === 'vehicle' ? outline.body : outline.kind;
        return [`${name}, ${part}, ${view}`, sheet] as const;
      }),
    ),
  );
  const isPale = ({ stroke, fill }: Shape) => fill === null && stroke?.colour === 'rule' && stroke.dashPx.length > 0;

  it.each(drawn)('%s: what is not its own is pale, what is its own is drawn in full', (_name, sheet) => {
    const { shapes } = drawOutline(sheet);
    const { minXM, maxXM } = sheetBox(sheet);
    const isPart = minXM > 0 || maxXM < sheet.outline.lengthM;
    expect(shapes.some(isPale)).toBe(isPart);
    const own = shapes.filter((one) => !isPale(one));
    for (const one of own) {
      const [least, most] = reachOf(one);
      if (minXM > 0) expect(least).toBeGreaterThanOrEqual(minXM - 1e-9);
      if (maxXM < sheet.outline.lengthM) expect(most).toBeLessThanOrEqual(maxXM + 1e-9);
    }
    expect(own.some(({ fill }) => fill === 'vehicleFill')).toBe(true);
    // the whole is still to be told round it
    const [from, to] = shapes.map(reachOf).reduce((a, b) => [Math.min(a[0], b[0]), Math.max(a[1], b[1])] as const);
    expect(from).toBeLessThanOrEqual(0.05);
    expect(to).toBeGreaterThanOrEqual(sheet.outline.lengthM - 0.05);
  });

  it('keeps the firewall, which is its border', () => {
    for (const view of ['above', 'side'] as const) {
      const outline = DEFAULT_OUTLINES.panelVan;
      const { shapes } = drawOutline(newSheet({ id: 's', name: '', outline, mirrored: false, part: 'bay', view }));
      const walls = shapes.filter(({ stroke }) => stroke?.colour === 'ruleStrong');
      expect(walls.map(reachOf)).toEqual([[1, 1]]);
    }
  });
});
