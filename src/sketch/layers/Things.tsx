import { createElement, Fragment, memo } from 'react';
import type { FittingShape, RunShape, Shape } from '../../drawing/shapes.ts';
import { Group, Line } from '../konva.ts';
import type { Palette } from '../palette.ts';
import { ShapeNode, strokeProps } from './ShapeNode.tsx';

/** Shapes of a fixed list, whose order is what tells them apart: given as children, so that they need no keys. */
const shapeNodes = (shapes: readonly Shape[], palette: Palette) =>
  shapes.map((shape) => createElement(ShapeNode, { shape, palette }));

/** The vehicle or the board, under everything. */
export const OutlineNode = memo(function OutlineNode(props: { shapes: readonly Shape[]; palette: Palette }) {
  return createElement(Fragment, null, ...shapeNodes(props.shapes, props.palette));
});

/** Of what is proposed: pale, and legible still. */
const GHOST_OPACITY = 0.72;

/** A cable: light edge, then the thick stroke of its kind. */
const RunNode = memo(function RunNode({ run, palette }: { run: RunShape; palette: Palette }) {
  const common = { listening: false, perfectDrawEnabled: false, lineJoin: 'round' } as const;
  return (
    <Group name={`run ${run.runId}`} listening={false} opacity={run.isProposed === true ? GHOST_OPACITY : 1}>
      <Line {...common} points={[...run.points]} {...strokeProps(run.casing, palette)} lineCap="round" />
      <Line
        {...common}
        points={[...run.points]}
        {...strokeProps(run.stroke, palette)}
        lineCap={run.kind === 'remote' ? 'butt' : 'round'}
      />
    </Group>
  );
});

/** A symbol on its plate, at a size of its own that the zoom changes only within bounds. */
const FittingNode = memo(function FittingNode(props: { fitting: FittingShape; halfPlateM: number; palette: Palette }) {
  const { fitting, halfPlateM, palette } = props;
  const { xM: x, yM: y } = fitting.at;
  const frame = {
    name: `fitting ${fitting.fittingId}`,
    x,
    y,
    scaleX: halfPlateM,
    scaleY: halfPlateM,
    listening: false,
    opacity: fitting.isProposed === true ? GHOST_OPACITY : 1,
  };
  return createElement(Group, frame, ...shapeNodes(fitting.parts, palette));
});

/** Runs, then fittings over their ends. */
export function Things(props: {
  runs: readonly RunShape[];
  fittings: readonly FittingShape[];
  halfPlateM: number;
  palette: Palette;
}) {
  const { runs, fittings, halfPlateM, palette } = props;
  return (
    <>
      {runs.map((run) => (
        <RunNode key={run.runId} run={run} palette={palette} />
      ))}
      {fittings.map((fitting) => (
        <FittingNode key={fitting.fittingId} fitting={fitting} halfPlateM={halfPlateM} palette={palette} />
      ))}
    </>
  );
}
