import { createElement, Fragment } from 'react';
import type { Selection } from '../../desk/desk.ts';
import { pointsOfFlat } from '../../drawing/runs.ts';
import type { Drawing, FittingShape, RunShape } from '../../drawing/shapes.ts';
import type { ColourName } from '../../look/tokens.ts';
import { Circle, Line } from '../konva.ts';
import type { Palette } from '../palette.ts';
import { endHandles } from '../tools/runEnds.ts';

/** What is marked: picked out by the user, or the place of the finding looked at. */
export interface Marked {
  selection: Selection | null;
  places: ReadonlySet<string>;
  /** Colour of the finding's severity. */
  placeColour: ColourName;
}

const RING_GAP_PX = 6;
const FINDING_GAP_PX = 12;
const BEND_PX = 8;
const END_PX = 10;

interface MarkProps {
  drawing: Drawing;
  marked: Marked;
  /** What a sleeve does not move. */
  locked: ReadonlySet<string>;
  halfPlateM: number;
  pxPerM: number;
  palette: Palette;
}

const still = { listening: false, perfectDrawEnabled: false, strokeScaleEnabled: false } as const;

function Ring(props: { fitting: FittingShape; radiusM: number; colour: string; dash: number[] }) {
  const { at } = props.fitting;
  return (
    <Circle
      {...still}
      x={at.xM}
      y={at.yM}
      radius={props.radiusM}
      stroke={props.colour}
      strokeWidth={4}
      dash={props.dash}
    />
  );
}

/** Beside the cable on either side, so that its own colour stays. */
function Sleeve({ run, colour, palette, dash }: { run: RunShape; colour: string; palette: Palette; dash: number[] }) {
  const points = [...run.points];
  return (
    <>
      <Line
        {...still}
        points={points}
        stroke={colour}
        strokeWidth={run.casing.widthPx + 8}
        dash={dash}
        lineJoin="round"
      />
      <Line {...still} points={points} stroke={palette.casing} strokeWidth={run.casing.widthPx} lineJoin="round" />
      <Line
        {...still}
        points={points}
        stroke={palette[run.stroke.colour]}
        strokeWidth={run.stroke.widthPx}
        dash={[...run.stroke.dashPx]}
        lineJoin="round"
      />
    </>
  );
}

function Bends({
  run,
  active,
  pxPerM,
  palette,
}: {
  run: RunShape;
  active: number | null;
  pxPerM: number;
  palette: Palette;
}) {
  const bends = pointsOfFlat(run.points).slice(1, -1);
  const handles = bends.map(({ xM, yM }, index) =>
    createElement(Circle, {
      ...still,
      x: xM,
      y: yM,
      radius: BEND_PX / pxPerM,
      fill: index === active ? palette.selected : palette.raised,
      stroke: palette.selected,
      strokeWidth: 3,
    }),
  );
  return createElement(Fragment, null, ...handles);
}

/** Under the fittings: sleeves of what is picked out or spoken of. */
export function RunMarks({ drawing, marked, palette }: MarkProps) {
  const { selection, places, placeColour } = marked;
  return drawing.runs.map((run) => (
    <Fragment key={run.runId}>
      {places.has(run.runId) && <Sleeve run={run} colour={palette[placeColour]} palette={palette} dash={[10, 6]} />}
      {isSelected(selection, run) && <Sleeve run={run} colour={palette.selected} palette={palette} dash={[]} />}
    </Fragment>
  ));
}

const isSelected = (selection: Selection | null, run: RunShape): boolean =>
  selection !== null && selection.kind !== 'fitting' && selection.id === run.runId;

/** Over stripes and plates: the bends and ends of the run that is picked out, to take hold of. */
export function BendMarks({ drawing, marked, locked, pxPerM, palette }: MarkProps) {
  const { selection } = marked;
  const active = selection?.kind === 'bend' ? selection.index : null;
  return drawing.runs
    .filter((run) => isSelected(selection, run))
    .map((run) => (
      <Fragment key={run.runId}>
        <Bends run={run} active={active} pxPerM={pxPerM} palette={palette} />
        {!locked.has(run.runId) && <Ends run={run} pxPerM={pxPerM} palette={palette} />}
      </Fragment>
    ));
}

/** Where the ends are taken hold of: filled, so that they are not taken for bends. */
function Ends({ run, pxPerM, palette }: { run: RunShape; pxPerM: number; palette: Palette }) {
  return endHandles(pointsOfFlat(run.points), pxPerM).map(({ end, at }) => (
    <Circle
      key={end}
      {...still}
      x={at.xM}
      y={at.yM}
      radius={END_PX / pxPerM}
      fill={palette.selected}
      stroke={palette.raised}
      strokeWidth={3}
    />
  ));
}

/** Over everything: rings round fittings. */
export function FittingMarks({ drawing, marked, halfPlateM, pxPerM, palette }: MarkProps) {
  const { selection, places, placeColour } = marked;
  return drawing.fittings.map((fitting) => {
    const isPicked = selection?.kind === 'fitting' && selection.id === fitting.fittingId;
    const radiusM = halfPlateM * 1.2;
    return (
      <Fragment key={fitting.fittingId}>
        {places.has(fitting.fittingId) && (
          <Ring
            fitting={fitting}
            radiusM={radiusM + FINDING_GAP_PX / pxPerM}
            colour={palette[placeColour]}
            dash={[10, 6]}
          />
        )}
        {isPicked && (
          <Ring fitting={fitting} radiusM={radiusM + RING_GAP_PX / pxPerM} colour={palette.selected} dash={[]} />
        )}
      </Fragment>
    );
  });
}
