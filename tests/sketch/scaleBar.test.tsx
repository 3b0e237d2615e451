import { render } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { groundOf } from '../../src/sketch/labelGround.ts';
import { ScaleBar } from '../../src/sketch/ScaleBar.tsx';
import { textWidth } from '../../src/sketch/textWidth.ts';
import { unitsFor } from '../../src/words/index.ts';
import { emptyPlan } from '../drawing/support/plans.ts';

/** As the style sheet has it, px: room beside the text, between it and the bar, and to the edge of the pane. */
const PADDING_PX = 12;
const GAP_PX = 8;
const EDGE_PX = 10;
const SIZE = { widthPx: 600, heightPx: 400 };

describe('the scale of a pane', () => {
  it.each([
    ['metres', 'm'],
    ['feet', 'ft-in'],
  ] as const)('is ground for no label, all of it, at any zoom, in %s', (_units, showLength) => {
    const plan = emptyPlan();
    const units = unitsFor({ ...plan, settings: { ...plan.settings, showLength } });
    const camera = { sheetId: 's', centreXM: 0, centreYM: 0, pxPerM: 100 };
    const ground = groundOf({ fittings: [], runs: [], hazards: [] }, camera, SIZE, 1);
    // from a 2 m sheet over a phone's pane to the nearest there is
    for (let pxPerM = 30; pxPerM < 8000; pxPerM *= 1.03) {
      const { container, unmount } = render(
        <ScaleBar pxPerM={pxPerM} scale={1} isFeet={showLength === 'ft-in'} units={units} />,
      );
      const bar = container.querySelector<HTMLElement>('.sketch-scale-bar');
      const barPx = Number.parseFloat(bar?.style.width ?? '');
      expect(barPx).toBeGreaterThan(20);
      const widthPx = barPx + textWidth(container.textContent ?? '') * 16 + PADDING_PX + GAP_PX + EDGE_PX;
      const leftEnd = { x: SIZE.widthPx - widthPx + 2, y: SIZE.heightPx - 18, w: 2, h: 2 };
      expect([pxPerM, container.textContent, ground.isTaken(leftEnd)]).toEqual([pxPerM, container.textContent, true]);
      unmount();
    }
  });
});
