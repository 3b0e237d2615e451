import { memo } from 'react';
import type { Bounds, Shape, Stroke } from '../../drawing/shapes.ts';
import { COLOURS, type ColourName } from '../../look/tokens.ts';

/** The page's own variable, so that a picture goes with the theme. */
const colourOf = (name: ColourName): string =>
  `var(--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}, ${COLOURS[name]})`;

const strokeOf = (stroke: Stroke | null) =>
  stroke === null
    ? {}
    : { stroke: colourOf(stroke.colour), strokeWidth: stroke.widthPx, strokeDasharray: stroke.dashPx.join(' ') };

const pathOf = (points: readonly number[], isClosed: boolean): string => {
  const corners = Array.from({ length: points.length / 2 }, (_, i) => `${points[2 * i]} ${points[2 * i + 1]}`);
  return `M${corners.join('L')}${isClosed ? 'Z' : ''}`;
};

/** Shapes have no ids: each gets a number of its own the first time it is drawn. */
const keys = new WeakMap<Shape, number>();
let lastKey = 0;
function keyOf(shape: Shape): number {
  const known = keys.get(shape);
  if (known !== undefined) return known;
  lastKey += 1;
  keys.set(shape, lastKey);
  return lastKey;
}

function ShapePath({ shape }: { shape: Shape }) {
  const common = {
    ...strokeOf(shape.stroke),
    fill: shape.fill === null ? 'none' : colourOf(shape.fill),
    vectorEffect: 'non-scaling-stroke' as const,
    strokeLinejoin: 'round' as const,
  };
  if (shape.kind === 'circle') return <circle {...common} cx={shape.x} cy={shape.y} r={shape.radius} />;
  return <path {...common} d={pathOf(shape.points, shape.closed)} />;
}

/** Shapes of the drawing as a small picture beside words that say the same; as wide as its place. */
export const Picture = memo(function Picture({ shapes, bounds }: { shapes: readonly Shape[]; bounds: Bounds }) {
  const { minXM, minYM, maxXM, maxYM } = bounds;
  return (
    <svg
      className="picture"
      viewBox={`${minXM} ${minYM} ${maxXM - minXM} ${maxYM - minYM}`}
      aria-hidden="true"
      focusable="false"
    >
      {shapes.map((shape) => (
        <ShapePath key={keyOf(shape)} shape={shape} />
      ))}
    </svg>
  );
});
