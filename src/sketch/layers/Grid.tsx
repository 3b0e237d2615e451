import type { Context } from 'konva/lib/Context';
import { memo } from 'react';
import { type PaneSize, toScreen, toSheet } from '../../desk/camera.ts';
import type { Camera } from '../../desk/desk.ts';
import { coarseStepM, gridStepM, linesBetween } from '../grid.ts';
import { Shape } from '../konva.ts';
import type { Palette } from '../palette.ts';

function strokeLines(context: Context, camera: Camera, size: PaneSize, stepM: number, colour: string): void {
  const first = toSheet(camera, size, { xPx: 0, yPx: 0 });
  const last = toSheet(camera, size, { xPx: size.widthPx, yPx: size.heightPx });
  context.beginPath();
  for (const xM of linesBetween(first.xM, last.xM, stepM)) {
    // on half a pixel, so that a line of one pixel is one pixel
    const x = Math.round(toScreen(camera, size, { xM, yM: 0 }).xPx) + 0.5;
    context.moveTo(x, 0);
    context.lineTo(x, size.heightPx);
  }
  for (const yM of linesBetween(first.yM, last.yM, stepM)) {
    const y = Math.round(toScreen(camera, size, { xM: 0, yM }).yPx) + 0.5;
    context.moveTo(0, y);
    context.lineTo(size.widthPx, y);
  }
  context.setAttr('strokeStyle', colour);
  context.setAttr('lineWidth', 1);
  context.stroke();
}

/** The metric grid of the sheet, fine lines and every tenth of them stronger. */
export const Grid = memo(function Grid(props: { camera: Camera; size: PaneSize; palette: Palette }) {
  const { camera, size, palette } = props;
  const fineM = gridStepM(camera.pxPerM);
  return (
    <Shape
      name="grid"
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context) => {
        strokeLines(context, camera, size, fineM, palette.gridFine);
        strokeLines(context, camera, size, coarseStepM(fineM), palette.gridCoarse);
      }}
    />
  );
});
