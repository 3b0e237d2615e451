import { createElement, Fragment } from 'react';
import { flatOf } from '../../drawing/runs.ts';
import type { Point } from '../../plan/schema.ts';
import { Circle, Line } from '../konva.ts';
import type { Palette } from '../palette.ts';
import type { Guide } from '../snap.ts';
import type { Trace } from '../tools/state.ts';

const still = { listening: false, perfectDrawEnabled: false, strokeScaleEnabled: false } as const;
const BEND_PX = 7;

/** The run being drawn, as far as it goes: it has no end yet, so that it is no part of the plan. */
function TraceMarks(props: {
  trace: Trace;
  stroke: readonly Point[];
  halfPlateM: number;
  pxPerM: number;
  palette: Palette;
}) {
  const { trace, stroke, halfPlateM, pxPerM, palette } = props;
  const points = flatOf([trace.start, ...trace.bends, ...stroke]);
  const line = { ...still, points, lineJoin: 'round', lineCap: 'round' } as const;
  const bends = trace.bends.map(({ xM, yM }) =>
    createElement(Circle, {
      ...still,
      x: xM,
      y: yM,
      radius: BEND_PX / pxPerM,
      fill: palette.raised,
      stroke: palette.accent,
      strokeWidth: 3,
    }),
  );
  return (
    <>
      <Line {...line} stroke={palette.casing} strokeWidth={11} />
      <Line {...line} stroke={palette.accent} strokeWidth={6} />
      <Circle
        {...still}
        x={trace.start.xM}
        y={trace.start.yM}
        radius={halfPlateM * 1.4}
        stroke={palette.accent}
        strokeWidth={4}
      />
      {createElement(Fragment, null, ...bends)}
    </>
  );
}

/** Through the whole sheet, so that the finger does not hide where it aims. */
const FAR_M = 100;

function Cross({ at: { xM, yM }, palette }: { at: Point; palette: Palette }) {
  const line = { ...still, stroke: palette.accent, strokeWidth: 1 } as const;
  return (
    <>
      <Line {...line} points={[xM - FAR_M, yM, xM + FAR_M, yM]} />
      <Line {...line} points={[xM, yM - FAR_M, xM, yM + FAR_M]} />
    </>
  );
}

/** What the hand is about: the lines that pull what it holds, and the run it draws. */
export function HandMarks(props: {
  guides: readonly Guide[];
  /** Where a fitting is about to be placed. */
  aim: Point | null;
  trace: Trace | null;
  stroke: readonly Point[];
  halfPlateM: number;
  pxPerM: number;
  palette: Palette;
}) {
  const { guides, aim, trace, stroke, halfPlateM, pxPerM, palette } = props;
  return (
    <>
      {guides.map(({ from, to }) => (
        <Line
          key={`${from.xM} ${from.yM}`}
          {...still}
          points={flatOf([from, to])}
          stroke={palette.accent}
          strokeWidth={1.5}
          dash={[6, 5]}
        />
      ))}
      {aim !== null && <Cross at={aim} palette={palette} />}
      {trace !== null && (
        <TraceMarks trace={trace} stroke={stroke} halfPlateM={halfPlateM} pxPerM={pxPerM} palette={palette} />
      )}
    </>
  );
}
