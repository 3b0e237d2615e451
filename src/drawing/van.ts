/**
 * A small panel van seen from above, nose to the left: our own drawing, in soft grey, only as detailed as it takes to
 * know where one is. Proportions follow the outline's own sizes; fixed measures are those of ordinary wheels, seats
 * and a steering wheel (common practice), and carry no meaning for the answer.
 */
import type { Outline } from '../plan/schema.ts';
import { cubic, mirrorY, roundRect } from './curve.ts';
import type { Shape, Stroke } from './shapes.ts';

type Van = Extract<Outline, { kind: 'vehicle' }>;

const EDGE: Stroke = { colour: 'vehicleLine', widthPx: 2, dashPx: [] };
const FINE: Stroke = { colour: 'vehicleLine', widthPx: 1, dashPx: [] };
/** The firewall is what a cable must be led through: the one strong line of the outline. */
const WALL: Stroke = { colour: 'ruleStrong', widthPx: 4, dashPx: [] };
const RIB: Stroke = { colour: 'rule', widthPx: 1, dashPx: [] };

const WHEEL_LENGTH_M = 0.6;
const WHEEL_WIDTH_M = 0.19;
/** Wheels stand this far inside the wings. */
const INSET_M = 0.025;
const FRONT_AXLE_OF_BAY = 0.66;
const REAR_AXLE_FROM_TAIL_M = 0.95;
const STEERING_WHEEL_RADIUS_M = 0.19;
/** Seats and wheel stand this far from the driver's side, as a part of the width. */
const DRIVER_OF_WIDTH = 0.28;
const SEAT_M = 0.5;

const line = (points: readonly number[], stroke: Stroke): Shape => ({
  kind: 'line',
  points,
  closed: false,
  stroke,
  fill: null,
});
const area = (points: readonly number[], stroke: Stroke | null, fill: Shape['fill']): Shape => ({
  kind: 'line',
  points,
  closed: true,
  stroke,
  fill,
});

/** Half of the edge, nose to tail along y = 0. The wings stand out a little beside the front wheels. */
function edgeHalf({ lengthM: l, widthM: w, bayM }: Van): number[] {
  const cornerX = bayM * 0.3;
  return [
    ...[0, w / 2],
    ...cubic([0, w / 2], [0, w * 0.22], [0.02, w * 0.1], [0.12, w * 0.055]),
    ...cubic([0.12, w * 0.055], [0.18, w * 0.03], [cornerX, 0], [cornerX + 0.16, 0]),
    ...[bayM * 0.94, 0],
    ...cubic([bayM * 0.94, 0], [bayM, 0.004], [bayM, 0.02], [bayM + 0.12, 0.02]),
    ...cubic([bayM + 0.12, 0.02], [bayM + 0.3, 0.02], [bayM + 0.3, 0], [bayM + 0.5, 0]),
    ...[l - 0.1, 0],
    ...cubic([l - 0.1, 0], [l - 0.03, 0], [l, 0.03], [l, 0.1]),
  ];
}

function pairs(flat: readonly number[]): (readonly [number, number])[] {
  return Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i] ?? 0, flat[2 * i + 1] ?? 0]);
}

function edge(van: Van): number[] {
  const half = edgeHalf(van);
  const other = pairs(mirrorY(half, van.widthM)).reverse().flat();
  return [...half, ...other];
}

/** What is drawn once on either side of the middle line. */
const onBothSides = (points: readonly number[], widthM: number): readonly number[][] => [
  [...points],
  mirrorY(points, widthM),
];

function wheels({ lengthM, widthM, bayM }: Van): Shape[] {
  return [bayM * FRONT_AXLE_OF_BAY, lengthM - REAR_AXLE_FROM_TAIL_M].flatMap((axleX) =>
    onBothSides(
      roundRect(axleX - WHEEL_LENGTH_M / 2, INSET_M, axleX + WHEEL_LENGTH_M / 2, INSET_M + WHEEL_WIDTH_M, 0.06),
      widthM,
    ).map((points) => area(points, FINE, 'rule')),
  );
}

/** Radiator, engine and wing lines: pale, since their place differs from car to car. */
function bay({ widthM: w, bayM }: Van): Shape[] {
  const lamp = [
    ...[0.045, w * 0.22],
    ...cubic([0.045, w * 0.22], [0.05, w * 0.14], [0.09, w * 0.1], [0.15, w * 0.085]),
    ...[0.2, w * 0.12],
    ...cubic([0.2, w * 0.12], [0.14, w * 0.14], [0.11, w * 0.18], [0.1, w * 0.22]),
  ];
  return [
    area(roundRect(0.12, w * 0.26, 0.19, w * 0.74, 0.02), FINE, null),
    area(roundRect(bayM * 0.34, w * 0.33, bayM * 0.84, w * 0.67, 0.08), FINE, null),
    ...onBothSides(lamp, w).map((points) => area(points, FINE, 'gridFine')),
  ];
}

function cab({ widthM: w, bayM, cabM }: Van, isMirrored: boolean): Shape[] {
  // seen from above with the nose at the left, the vehicle's right side is at the top
  const driverY = isMirrored ? w * DRIVER_OF_WIDTH : w * (1 - DRIVER_OF_WIDTH);
  const seatX = Math.max(bayM + 0.62, bayM + cabM - SEAT_M - 0.12);
  const wheelX = seatX - 0.2;
  const glassX = bayM + 0.05;
  const screen = [
    ...[glassX, w / 2],
    ...cubic([glassX, w / 2], [glassX, w * 0.25], [glassX + 0.02, 0.14], [glassX + 0.1, 0.08]),
    ...[glassX + 0.42, 0.16],
    ...cubic([glassX + 0.42, 0.16], [glassX + 0.34, 0.3], [glassX + 0.32, w * 0.35], [glassX + 0.32, w / 2]),
  ];
  const other = pairs(mirrorY(screen, w)).reverse().flat();
  const mirror = [bayM + 0.34, 0, bayM + 0.28, -0.09, bayM + 0.38, -0.1, bayM + 0.44, 0];
  return [
    area([...screen, ...other], FINE, 'gridFine'),
    ...[w * DRIVER_OF_WIDTH, w * (1 - DRIVER_OF_WIDTH)].flatMap((y) => [
      area(roundRect(seatX, y - SEAT_M / 2, seatX + SEAT_M, y + SEAT_M / 2, 0.09), FINE, 'sheet'),
      area(
        roundRect(seatX + SEAT_M - 0.11, y - SEAT_M / 2 + 0.03, seatX + SEAT_M, y + SEAT_M / 2 - 0.03, 0.05),
        FINE,
        null,
      ),
    ]),
    {
      kind: 'circle',
      x: wheelX,
      y: driverY,
      radius: STEERING_WHEEL_RADIUS_M,
      stroke: { ...EDGE, widthPx: 3 },
      fill: null,
    },
    { kind: 'circle', x: wheelX, y: driverY, radius: 0.05, stroke: FINE, fill: 'vehicleLine' },
    line([wheelX, driverY - STEERING_WHEEL_RADIUS_M, wheelX, driverY + STEERING_WHEEL_RADIUS_M], FINE),
    ...onBothSides(mirror, w).map((points) => area(points, FINE, 'rule')),
  ];
}

function cargo({ lengthM: l, widthM: w, bayM, cabM }: Van): Shape[] {
  const partitionX = bayM + cabM;
  const tailX = l - 0.07;
  const ribs = [0.2, 0.35, 0.5, 0.65, 0.8].map((part) =>
    line([partitionX + 0.16, w * part, tailX - 0.12, w * part], RIB),
  );
  return [
    line([partitionX, 0.05, partitionX, w - 0.05], { ...EDGE, widthPx: 3 }),
    ...ribs,
    // two rear doors: a gap in the middle, a hinge at either edge
    line([tailX, 0.05, tailX, w / 2 - 0.012], EDGE),
    line([tailX, w / 2 + 0.012, tailX, w - 0.05], EDGE),
    ...onBothSides([tailX, 0.12, l + 0.01, 0.12], w).map((points) => line(points, EDGE)),
  ];
}

/** Everything of the van, from the bottom up. */
export function vanShapes(van: Van, isMirrored: boolean): Shape[] {
  return [
    area(edge(van), null, 'vehicleFill'),
    ...wheels(van),
    ...bay(van),
    ...cab(van, isMirrored),
    ...cargo(van),
    line([van.bayM, 0.03, van.bayM, van.widthM - 0.03], WALL),
    area(edge(van), EDGE, null),
  ];
}
