import type { PointerEvent } from 'react';
import type { OutlineOf, Point } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { cargoXM, dragged, type Grip, gripAt } from './grips.ts';
import { useOneFinger } from './useOneFinger.ts';

type Own = OutlineOf<'own'>;

/** Room round the outline, m: a corner on its edge is to be taken hold of. */
const MARGIN_M = 0.25;

interface EdgePictureProps {
  own: Own;
  selected: number;
  /** A finger has let go of what it changed. */
  onTake: (own: Own) => void;
  onSelect: (index: number) => void;
}

/** The place under the finger, and the scale of the picture: it is fitted into its room, in the middle. */
function placeIn(own: Own, { currentTarget, clientX, clientY }: PointerEvent): { at: Point; pxPerM: number } {
  const box = currentTarget.getBoundingClientRect();
  const [widthM, heightM] = [own.lengthM + 2 * MARGIN_M, own.widthM + 2 * MARGIN_M];
  const pxPerM = Math.min(box.width / widthM, box.height / heightM);
  const xM = (clientX - box.left - (box.width - widthM * pxPerM) / 2) / pxPerM - MARGIN_M;
  const yM = (clientY - box.top - (box.height - heightM * pxPerM) / 2) / pxPerM - MARGIN_M;
  return { at: { xM, yM }, pxPerM };
}

/** The outline from above: corners and lines follow the finger, a touch on the edge makes a corner. */
export function EdgePicture({ own, selected, onTake, onSelect }: EdgePictureProps) {
  const { held, on } = useOneFinger<{ grip: Grip; own: Own }>({
    take: (event) => {
      const { at, pxPerM } = placeIn(own, event);
      const gripped = gripAt(own, at, pxPerM);
      if (gripped?.grip.kind === 'corner') onSelect(gripped.grip.index);
      return gripped;
    },
    move: (holding, event) => ({ ...holding, own: dragged(holding.own, holding.grip, placeIn(own, event).at) }),
    leave: (left) => {
      if (left.own !== own) onTake(left.own);
    },
  });
  const shown = held?.own ?? own;

  const line = (kind: 'firewall' | 'cargo', xM: number | null) =>
    xM === null ? null : <path className={`outline-${kind}`} d={`M${xM} 0V${shown.widthM}`} />;
  return (
    <svg
      className="outline-picture"
      role="img"
      aria-label={words.outlineEditor.picture}
      viewBox={`${-MARGIN_M} ${-MARGIN_M} ${shown.lengthM + 2 * MARGIN_M} ${shown.widthM + 2 * MARGIN_M}`}
      {...on}
    >
      <path className="outline-edge" d={`M${shown.edge.map(({ xM, yM }) => `${xM} ${yM}`).join('L')}Z`} />
      {line('firewall', shown.bayM)}
      {line('cargo', cargoXM(shown))}
      {/* dots of the screen's own size: strokes of no length with round ends */}
      <path className="outline-corners" d={shown.edge.map(({ xM, yM }) => `M${xM} ${yM}h0`).join('')} />
      {shown.edge[selected] === undefined ? null : (
        <path className="outline-corner" d={`M${shown.edge[selected].xM} ${shown.edge[selected].yM}h0`} />
      )}
    </svg>
  );
}
