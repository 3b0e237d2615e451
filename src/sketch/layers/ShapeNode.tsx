import { memo } from 'react';
import type { Shape, Stroke } from '../../drawing/shapes.ts';
import { Circle, Line } from '../konva.ts';
import type { Palette } from '../palette.ts';

/** A stroke as Konva takes it: in screen px, whatever the zoom. */
export function strokeProps(stroke: Stroke, palette: Palette) {
  return {
    stroke: palette[stroke.colour],
    strokeWidth: stroke.widthPx,
    dash: [...stroke.dashPx],
    strokeScaleEnabled: false,
  };
}

const fillProps = (fill: Shape['fill'], palette: Palette) => (fill === null ? {} : { fill: palette[fill] });

/** One plain shape of the drawing. */
export const ShapeNode = memo(function ShapeNode({ shape, palette }: { shape: Shape; palette: Palette }) {
  const common = {
    ...(shape.stroke === null ? { strokeEnabled: false } : strokeProps(shape.stroke, palette)),
    ...fillProps(shape.fill, palette),
    listening: false,
    perfectDrawEnabled: false,
  };
  if (shape.kind === 'circle') return <Circle {...common} x={shape.x} y={shape.y} radius={shape.radius} />;
  return <Line {...common} points={[...shape.points]} closed={shape.closed} lineCap="round" lineJoin="round" />;
});
