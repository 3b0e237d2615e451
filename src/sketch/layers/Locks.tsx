import { pointsOfFlat } from '../../drawing/runs.ts';
import type { Drawing } from '../../drawing/shapes.ts';
import type { Point } from '../../plan/schema.ts';
import { Circle, Group, Line } from '../konva.ts';
import type { Palette } from '../palette.ts';
import { endHandles } from '../tools/runEnds.ts';

const still = { listening: false, perfectDrawEnabled: false } as const;
/** Of the padlock's picture, screen px. */
const RADIUS_PX = 10;

/** A small padlock: shackle and body on a round plate. */
function Padlock({ at, pxPerM, palette }: { at: Point; pxPerM: number; palette: Palette }) {
  return (
    <Group x={at.xM} y={at.yM} scaleX={1 / pxPerM} scaleY={1 / pxPerM} listening={false}>
      <Circle {...still} radius={RADIUS_PX} fill={palette.raised} stroke={palette.ink} strokeWidth={1.5} />
      <Line
        {...still}
        points={[-2.6, -0.5, -2.6, -3.6, -1.6, -5.2, 1.6, -5.2, 2.6, -3.6, 2.6, -0.5]}
        stroke={palette.ink}
        strokeWidth={1.6}
      />
      <Line {...still} points={[-4.4, -0.8, 4.4, -0.8, 4.4, 5, -4.4, 5]} closed fill={palette.ink} />
    </Group>
  );
}

/** On what is locked: at the corner of a plate, and on a run where the handle of its first end would be. */
export function Locks(props: {
  drawing: Drawing;
  locked: ReadonlySet<string>;
  halfPlateM: number;
  pxPerM: number;
  palette: Palette;
}) {
  const { drawing, locked, halfPlateM, pxPerM, palette } = props;
  const fittings = drawing.fittings
    .filter(({ fittingId }) => locked.has(fittingId))
    .map(({ fittingId, at }) => ({ id: fittingId, at: { xM: at.xM + halfPlateM, yM: at.yM - halfPlateM } }));
  const runs = drawing.runs
    .filter(({ runId }) => locked.has(runId))
    .flatMap(({ runId, points }) =>
      endHandles(pointsOfFlat(points), pxPerM)
        .slice(0, 1)
        .map(({ at }) => ({ id: runId, at })),
    );
  return [...fittings, ...runs].map(({ id, at }) => <Padlock key={id} at={at} pxPerM={pxPerM} palette={palette} />);
}
