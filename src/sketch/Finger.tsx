import type { PaneSize, ScreenPoint } from '../desk/camera.ts';
import { besideFinger } from './fingerLayout.ts';
import { Loupe } from './Loupe.tsx';
import type { LiveFigure } from './liveFigures.ts';
import type { Palette } from './palette.ts';

const WIDTH_PX = 256;
const ROW_PX = 30;

/** How far from the fingertip what it holds may be to be shown magnified, px: further off it is in the other pane. */
const NEAR_PX = 64;

/** Held off its middle, a thing is still shown near the middle of the loupe, px of the sheet. */
const OFF_CENTRE_PX = 14;

/** The finger's place, or as near to it as keeps what is held in the middle of the loupe. */
function nearTo(exact: ScreenPoint, at: ScreenPoint): ScreenPoint {
  const [dx, dy] = [at.xPx - exact.xPx, at.yPx - exact.yPx];
  const share = Math.min(1, OFF_CENTRE_PX / Math.max(1, Math.hypot(dx, dy)));
  return { xPx: exact.xPx + dx * share, yPx: exact.yPx + dy * share };
}

interface FingerProps {
  at: ScreenPoint;
  isMouse: boolean;
  size: PaneSize;
  figures: readonly LiveFigure[];
  /** The figures are of a moment ago. */
  isBehind: boolean;
  note: string | null;
  textScale: number;
  /** Where what is held lies, px of the pane; null when nothing is. */
  exact: ScreenPoint | null;
  surface: HTMLElement | null;
  palette: Palette;
}

/** Beside the finger: what it hides, magnified, and the figures of what it changes. */
export function Finger(props: FingerProps) {
  const { at, isMouse, size, figures, isBehind, note, textScale, exact, surface, palette } = props;
  const rows = figures.length + (note === null ? 0 : 1);
  const isNear = exact !== null && Math.hypot(exact.xPx - at.xPx, exact.yPx - at.yPx) <= NEAR_PX;
  const hasLoupe = !isMouse && isNear && surface !== null;
  if (rows === 0 && !hasLoupe) return null;
  const box = { widthPx: Math.min(size.widthPx, textScale * WIDTH_PX), heightPx: textScale * ROW_PX * rows + 16 };
  const places = besideFinger(at, box, size, { isMouse, hasLoupe });
  return (
    <>
      {places.loupe !== null && surface !== null && exact !== null && (
        <Loupe surface={surface} centre={nearTo(exact, at)} exact={exact} palette={palette} {...places.loupe} />
      )}
      {rows > 0 && (
        <dl
          className="sketch-finger"
          data-behind={isBehind}
          style={{
            transform: `translate(${places.figures.leftPx}px, ${places.figures.topPx}px)`,
            width: box.widthPx,
          }}
        >
          {figures.map(({ name, value, isHazard }) => (
            <div key={name} data-hazard={isHazard}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ))}
          {note !== null && <div className="sketch-finger-note">{note}</div>}
        </dl>
      )}
    </>
  );
}
