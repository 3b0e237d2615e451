import type { PaneSize } from '../desk/camera.ts';
import type { LiveFigure } from './liveFigures.ts';

/** Clear of a fingertip and of the hand below it, px. */
const ABOVE_FINGER_PX = 64;
const ABOVE_MOUSE_PX = 28;
const WIDTH_PX = 256;
const ROW_PX = 30;

/** Live figures above the finger; below it near the top edge, and never outside the pane. */
export function Finger(props: {
  at: { xPx: number; yPx: number };
  isMouse: boolean;
  size: PaneSize;
  figures: readonly LiveFigure[];
  note: string | null;
  textScale: number;
}) {
  const { at, isMouse, size, figures, note, textScale } = props;
  if (figures.length === 0 && note === null) return null;
  const offPx = isMouse ? ABOVE_MOUSE_PX : ABOVE_FINGER_PX;
  const heightPx = textScale * ROW_PX * (figures.length + (note === null ? 0 : 1)) + 16;
  const widthPx = Math.min(size.widthPx, textScale * WIDTH_PX);
  const fitsAbove = at.yPx - offPx - heightPx >= 0;
  const topPx = fitsAbove ? at.yPx - offPx - heightPx : Math.min(at.yPx + offPx, size.heightPx - heightPx);
  const leftPx = Math.max(4, Math.min(size.widthPx - widthPx - 4, at.xPx - widthPx / 2));
  return (
    <dl className="sketch-finger" style={{ transform: `translate(${leftPx}px, ${topPx}px)`, width: widthPx }}>
      {figures.map(({ name, value, isHazard }) => (
        <div key={name} data-hazard={isHazard}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
      {note !== null && <div className="sketch-finger-note">{note}</div>}
    </dl>
  );
}
