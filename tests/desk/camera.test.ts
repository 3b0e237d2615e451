import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  fitBox,
  MAX_PX_PER_M,
  MIN_PX_PER_M,
  type PaneSize,
  panBy,
  pinch,
  toScreen,
  toSheet,
  zoomAt,
  zoomBy,
} from '../../src/desk/camera.ts';
import type { Camera } from '../../src/desk/desk.ts';

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
const camera = fc.record<Camera>({
  sheetId: fc.constant('sheet-1'),
  centreXM: number(-20, 20),
  centreYM: number(-20, 20),
  pxPerM: number(MIN_PX_PER_M, MAX_PX_PER_M),
});
const pane = fc.record<PaneSize>({ widthPx: number(100, 2000), heightPx: number(100, 2000) });
const sheetPoint = fc.record({ xM: number(-20, 20), yM: number(-20, 20) });
const screenPoint = fc.record({ xPx: number(0, 2000), yPx: number(0, 2000) });

describe('a camera', () => {
  it('puts its centre in the middle of the pane, x and y by its scale', () => {
    const at: Camera = { sheetId: 's', centreXM: 2, centreYM: 1, pxPerM: 100 };
    const size = { widthPx: 400, heightPx: 300 };
    expect(toScreen(at, size, { xM: 2, yM: 1 })).toEqual({ xPx: 200, yPx: 150 });
    expect(toScreen(at, size, { xM: 3, yM: 0.5 })).toEqual({ xPx: 300, yPx: 100 });
  });

  it('goes from sheet to screen and back to the same place', () => {
    fc.assert(
      fc.property(camera, pane, sheetPoint, (view, size, point) => {
        const back = toSheet(view, size, toScreen(view, size, point));
        expect(back.xM).toBeCloseTo(point.xM, 9);
        expect(back.yM).toBeCloseTo(point.yM, 9);
      }),
    );
  });

  it('fits a box into the pane, with the margin kept and one side of it touched', () => {
    fc.assert(
      fc.property(number(0.5, 12), number(0.5, 12), pane, (widthM, heightM, size) => {
        const box = { minXM: 1, minYM: -1, maxXM: 1 + widthM, maxYM: -1 + heightM };
        const view = fitBox('s', box, size, 10);
        fc.pre(view.pxPerM > MIN_PX_PER_M);
        const topLeft = toScreen(view, size, { xM: box.minXM, yM: box.minYM });
        const bottomRight = toScreen(view, size, { xM: box.maxXM, yM: box.maxYM });
        const margins = [topLeft.xPx, topLeft.yPx, size.widthPx - bottomRight.xPx, size.heightPx - bottomRight.yPx];
        expect(Math.min(...margins)).toBeCloseTo(10, 6);
      }),
    );
  });

  it('keeps what lies under the anchor under it, and its scale within limits', () => {
    fc.assert(
      fc.property(camera, pane, screenPoint, number(0.01, 100), (view, size, anchor, factor) => {
        const zoomed = zoomAt(view, size, anchor, factor);
        expect(zoomed.pxPerM).toBeGreaterThanOrEqual(MIN_PX_PER_M);
        expect(zoomed.pxPerM).toBeLessThanOrEqual(MAX_PX_PER_M);
        const held = toSheet(view, size, anchor);
        // at the far end of the sheet the camera stops instead
        fc.pre(Math.abs(zoomed.centreXM) < 100 && Math.abs(zoomed.centreYM) < 100);
        const after = toScreen(zoomed, size, held);
        expect(after.xPx).toBeCloseTo(anchor.xPx, 4);
        expect(after.yPx).toBeCloseTo(anchor.yPx, 4);
      }),
    );
  });

  it('pans with the finger', () => {
    fc.assert(
      fc.property(camera, pane, number(-500, 500), number(-500, 500), (view, size, dxPx, dyPx) => {
        fc.pre(view.pxPerM > 20);
        const point = { xM: 1, yM: 2 };
        const before = toScreen(view, size, point);
        const after = toScreen(panBy(view, dxPx, dyPx), size, point);
        expect(after.xPx - before.xPx).toBeCloseTo(dxPx, 4);
        expect(after.yPx - before.yPx).toBeCloseTo(dyPx, 4);
      }),
    );
  });

  it('follows two fingers: what lay between them comes between them again', () => {
    const view: Camera = { sheetId: 's', centreXM: 2, centreYM: 1, pxPerM: 100 };
    const size = { widthPx: 400, heightPx: 300 };
    const from = { xPx: 100, yPx: 100 };
    const to = { xPx: 180, yPx: 90 };
    const held = toSheet(view, size, from);
    const pinched = pinch(view, size, from, to, 2);
    expect(pinched.pxPerM).toBe(200);
    expect(toScreen(pinched, size, held).xPx).toBeCloseTo(180, 9);
    expect(toScreen(pinched, size, held).yPx).toBeCloseTo(90, 9);
  });

  it('zoomed in and out by keys comes back to the same scale and centre', () => {
    const view: Camera = { sheetId: 's', centreXM: 2, centreYM: 1, pxPerM: 100 };
    const back = zoomBy(zoomBy(view, 1.4), 1 / 1.4);
    expect(back.pxPerM).toBeCloseTo(100, 9);
    expect([back.centreXM, back.centreYM]).toEqual([2, 1]);
  });
});
