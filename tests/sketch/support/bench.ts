/** A sketch without its picture: a desk, two panes at known places, the input and the hand, and frames turned by hand. */
import { createDesk, type Desk, type PaneId } from '../../../src/desk/desk.ts';
import { undoDepth } from '../../../src/desk/edit.ts';
import { savePlan } from '../../../src/plan/save.ts';
import type { Plan } from '../../../src/plan/schema.ts';
import * as late from '../../../src/sketch/late.ts';
import type { LateSource } from '../../../src/sketch/loadLate.ts';
import { createTable, type Table } from '../../../src/sketch/table.ts';
import { SHEET } from '../../drawing/support/plans.ts';
import { HandClock } from './finger.ts';

/** Panes side by side, 400 px wide each: the whole at 100 px/m from the sheet's origin, the bay at 200 px/m. */
const PANES = {
  whole: { leftPx: 0, pxPerM: 100 },
  bay: { leftPx: 400, pxPerM: 200 },
} as const;
const SIZE = { widthPx: 400, heightPx: 400 };

export interface SketchBench {
  desk: Desk;
  table: Table;
  clock: HandClock;
  element: Record<PaneId, HTMLElement>;
  /** Page px of a place of the sheet in a pane. */
  px(pane: PaneId, xM: number, yM: number): [number, number];
  /** Lets the next animation frame come. */
  frame(): void;
  state(): string;
  bytes(): string;
  depth(): number;
}

/** The hand has been fetched already. */
const HERE: LateSource = { here: late, whenHere: Promise.resolve(late), load: async () => undefined };

export function createSketchBench(plan: Plan, source = HERE): SketchBench {
  const desk = createDesk(plan, { isExample: false, bigFingers: false });
  const clock = new HandClock();
  let waiting: (() => void)[] = [];
  const frames = (run: () => void) => {
    waiting.push(run);
    return () => {
      waiting = waiting.filter((other) => other !== run);
    };
  };
  const table = createTable(desk, clock, frames, source);
  const mount = (id: PaneId): HTMLElement => {
    const { leftPx, pxPerM } = PANES[id];
    const element = document.createElement('div');
    element.getBoundingClientRect = () => new DOMRect(leftPx, 0, SIZE.widthPx, SIZE.heightPx);
    document.body.append(element);
    const camera = {
      sheetId: SHEET,
      centreXM: SIZE.widthPx / 2 / pxPerM,
      centreYM: SIZE.heightPx / 2 / pxPerM,
      pxPerM,
    };
    desk.setState((state) => ({ cameras: { ...state.cameras, [id]: camera } }));
    table.panes.mount(id, element, SIZE);
    table.input.attach(element, id);
    return element;
  };
  const element = { whole: mount('whole'), bay: mount('bay') };
  desk.subscribe(({ hand }, before) => {
    if (hand.way !== before.hand.way) table.hand.changeWay(hand.way);
  });
  return {
    desk,
    table,
    clock,
    element,
    px: (pane, xM, yM) => [PANES[pane].leftPx + xM * PANES[pane].pxPerM, yM * PANES[pane].pxPerM],
    frame: () => {
      const due = waiting;
      waiting = [];
      for (const run of due) run();
    },
    state: () => table.hand.stateName,
    bytes: () => savePlan(desk.getState().plan),
    depth: () => undoDepth(desk),
  };
}
