import { toSheet } from '../../desk/camera.ts';
import { coarseStepM, gridStepM, linesBetween } from '../grid.ts';
import { strokeWith, type View } from './pen.ts';

function paintLines(context: CanvasRenderingContext2D, view: View, stepM: number, colour: string): void {
  const { camera, size, frame } = view;
  const first = toSheet(camera, size, { xPx: 0, yPx: 0 });
  const last = toSheet(camera, size, { xPx: size.widthPx, yPx: size.heightPx });
  context.beginPath();
  for (const xM of linesBetween(first.xM, last.xM, stepM)) {
    // on half a pixel, so that a line of one pixel is one pixel
    const x = Math.round(xM * frame.scale + frame.x) + 0.5;
    context.moveTo(x, 0);
    context.lineTo(x, size.heightPx);
  }
  for (const yM of linesBetween(first.yM, last.yM, stepM)) {
    const y = Math.round(yM * frame.scale + frame.y) + 0.5;
    context.moveTo(0, y);
    context.lineTo(size.widthPx, y);
  }
  strokeWith(context, { colour, widthPx: 1 });
}

/** The metric grid of the sheet, fine lines and every tenth of them stronger. */
export function paintGrid(context: CanvasRenderingContext2D, view: View): void {
  const fineM = gridStepM(view.camera.pxPerM);
  paintLines(context, view, fineM, view.palette.gridFine);
  paintLines(context, view, coarseStepM(fineM), view.palette.gridCoarse);
}
