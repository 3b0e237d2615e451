/** A bench board for class: a plain board in a frame, with an upright panel that stands for the firewall. */
import type { Outline } from '../plan/schema.ts';
import { roundRect } from './curve.ts';
import type { Shape, Stroke } from './shapes.ts';

type Bench = Extract<Outline, { kind: 'bench' }>;

const FRAME_M = 0.05;
const PANEL_THICK_M = 0.02;
/** The panel stands here along the board: the smaller part is the 'bay' of the lesson. */
const PANEL_OF_LENGTH = 0.36;

const EDGE: Stroke = { colour: 'vehicleLine', widthPx: 2, dashPx: [] };
const FINE: Stroke = { colour: 'vehicleLine', widthPx: 1, dashPx: [] };
const WALL: Stroke = { colour: 'ruleStrong', widthPx: 2, dashPx: [] };

/** Everything of the board, from the bottom up. */
export function benchShapes({ lengthM: l, widthM: w }: Bench): Shape[] {
  const frame = Math.min(FRAME_M, w / 8);
  const panelX = l * PANEL_OF_LENGTH;
  const screws = [frame / 2, l - frame / 2].flatMap((x) => [frame / 2, w - frame / 2].map((y) => ({ x, y })));
  return [
    { kind: 'line', points: roundRect(0, 0, l, w, frame / 2), closed: true, stroke: EDGE, fill: 'vehicleFill' },
    {
      kind: 'line',
      points: roundRect(frame, frame, l - frame, w - frame, frame / 4),
      closed: true,
      stroke: FINE,
      fill: 'sheet',
    },
    {
      kind: 'line',
      points: roundRect(panelX - PANEL_THICK_M / 2, frame, panelX + PANEL_THICK_M / 2, w - frame, 0.004),
      closed: true,
      stroke: WALL,
      fill: 'rule',
    },
    ...screws.map(({ x, y }): Shape => ({ kind: 'circle', x, y, radius: frame / 5, stroke: FINE, fill: 'rule' })),
  ];
}
