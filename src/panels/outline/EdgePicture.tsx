import { type PointerEvent, useRef, useState } from 'react';
import type { OutlineOf, Point } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { cargoXM, dragged, type Grip, gripAt } from './grips.ts';

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
function placeIn(svg: SVGSVGElement, own: Own, event: PointerEvent): { at: Point; pxPerM: number } {
  const box = svg.getBoundingClientRect();
  const [widthM, heightM] = [own.lengthM + 2 * MARGIN_M, own.widthM + 2 * MARGIN_M];
  const pxPerM = Math.min(box.width / widthM, box.height / heightM);
  const xM = (event.clientX - box.left - (box.width - widthM * pxPerM) / 2) / pxPerM - MARGIN_M;
  const yM = (event.clientY - box.top - (box.height - heightM * pxPerM) / 2) / pxPerM - MARGIN_M;
  return { at: { xM, yM }, pxPerM };
}

/** The outline from above: corners and lines follow the finger, a touch on the edge makes a corner. */
export function EdgePicture({ own, selected, onTake, onSelect }: EdgePictureProps) {
  const svg = useRef<SVGSVGElement>(null);
  const [held, setHeld] = useState<{ grip: Grip; own: Own } | null>(null);
  const shown = held?.own ?? own;

  const down = (event: PointerEvent) => {
    if (svg.current === null || held !== null) return;
    const { at, pxPerM } = placeIn(svg.current, own, event);
    const gripped = gripAt(own, at, pxPerM);
    if (gripped === null) return;
    svg.current.setPointerCapture(event.pointerId);
    if (gripped.grip.kind === 'corner') onSelect(gripped.grip.index);
    setHeld(gripped);
  };
  const move = (event: PointerEvent) => {
    if (svg.current === null || held === null) return;
    const { at } = placeIn(svg.current, own, event);
    setHeld({ ...held, own: dragged(held.own, held.grip, at) });
  };
  const up = () => {
    if (held !== null && held.own !== own) onTake(held.own);
    setHeld(null);
  };

  const line = (kind: 'firewall' | 'cargo', xM: number | null) =>
    xM === null ? null : <path className={`outline-${kind}`} d={`M${xM} 0V${shown.widthM}`} />;
  return (
    <svg
      ref={svg}
      className="outline-picture"
      role="img"
      aria-label={words.outlineEditor.picture}
      viewBox={`${-MARGIN_M} ${-MARGIN_M} ${shown.lengthM + 2 * MARGIN_M} ${shown.widthM + 2 * MARGIN_M}`}
      onPointerDown={down}
      onPointerMove={move}
      onPointerUp={up}
      onPointerCancel={() => setHeld(null)}
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
