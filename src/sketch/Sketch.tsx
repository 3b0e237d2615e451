import { type CSSProperties, useEffect, useMemo, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { answerOf } from '../desk/answer.ts';
import { type Desk, type PaneId, type Selection, shownPlan } from '../desk/desk.ts';
import { drawOutline } from '../drawing/outline.ts';
import { fittingById } from '../plan/byId.ts';
import { runPoints } from '../plan/runs.ts';
import type { Plan, Point } from '../plan/schema.ts';
import { words } from '../words/index.ts';
import { type Arrangement, arrangementFor, bayShare } from './arrangement.ts';
import { cameraShowing, setCamera } from './cameras.ts';
import { HandBar } from './HandBar.tsx';
import type { Marked } from './layers/Marks.tsx';
import { Pane } from './Pane.tsx';
import type { PaneToggle } from './PaneTitle.tsx';
import { usePalette } from './palette.ts';
import { createTable, type Table } from './table.ts';
import { textScaleOf } from './textScale.ts';
import { usePaneSize } from './usePaneSize.ts';
import { useScene } from './useScene.ts';
import './sketch.css';

/** What the user asked to see; both wherever there is room for both. */
type Chosen = 'both' | PaneId;

const { panes: say } = words.sketch;

const NO_PLACES: ReadonlySet<string> = new Set();

/** Takes gestures away when the page does: a finger that lifts elsewhere is never heard of again. */
function useTakenAway(table: Table): void {
  useEffect(() => {
    const hidden = () => {
      if (document.hidden) table.input.takeAway();
    };
    window.addEventListener('blur', table.input.takeAway);
    document.addEventListener('visibilitychange', hidden);
    return () => {
      window.removeEventListener('blur', table.input.takeAway);
      document.removeEventListener('visibilitychange', hidden);
    };
  }, [table]);
}

/** A field or a dialog that is open has its own use for the key. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.closest('dialog, textarea, select, input:not([type="radio"], [type="checkbox"])') !== null;

/** Escape steps back one bend, or drops what is under the finger; nothing else hears of it then. */
function useEscape(table: Table): void {
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || isTyping(event.target)) return;
      const name = table.hand.stateName;
      if (name === 'run.drawing' || name === 'run.pickingTerminal') table.hand.tell({ kind: 'back' });
      else if (table.input.state === 'dragging' || table.input.state === 'pressed') table.input.takeAway();
      else return;
      event.preventDefault();
      event.stopPropagation();
    };
    window.addEventListener('keydown', key, { capture: true });
    return () => window.removeEventListener('keydown', key, { capture: true });
  }, [table]);
}

function useWayOfHand(table: Table): void {
  const way = useStore(table.desk, (state) => state.hand.way);
  useEffect(() => table.hand.changeWay(way), [table, way]);
}

/** The places of the finding looked at, and what is picked out. */
function useMarked({ desk, hand }: Table): Marked {
  const selected = useStore(desk, (state) => state.selection);
  /** The fitting that is being placed is picked out before it is part of the plan. */
  const aimedId = useStore(hand.store, ({ state }) => (state.name === 'place.aiming' ? state.fitting.id : null));
  const findingId = useStore(desk, (state) => state.findingId);
  const plan = useStore(desk, shownPlan);
  return useMemo(() => {
    const finding = findingId === null ? undefined : answerOf(plan).findings.find(({ id }) => id === findingId);
    const places = finding === undefined ? NO_PLACES : new Set(finding.places.map(({ id }) => id));
    const selection: Selection | null = aimedId === null ? selected : { kind: 'fitting', id: aimedId };
    return { selection, places, placeColour: finding?.severity ?? 'note' };
  }, [selected, aimedId, findingId, plan]);
}

function placeOf(plan: Plan, id: string): Point | null {
  const fitting = fittingById(plan, id);
  if (fitting !== undefined) return fitting.at;
  const run = plan.runs.find((other) => other.id === id);
  const points = run === undefined ? [] : runPoints(plan, run);
  return points[Math.floor(points.length / 2)] ?? null;
}

/** Choosing a finding brings its first place into view, in the pane that shows the whole where there is one. */
function useFindingInView(table: Table): void {
  const { desk, panes } = table;
  const findingId = useStore(desk, (state) => state.findingId);
  useEffect(() => {
    if (findingId === null) return;
    const { plan, cameras } = desk.getState();
    const first = answerOf(plan).findings.find(({ id }) => id === findingId)?.places[0];
    const at = first === undefined ? null : placeOf(plan, first.id);
    const pane: PaneId = panes.sizeOf('whole') === null ? 'bay' : 'whole';
    const [camera, size] = [cameras[pane], panes.sizeOf(pane)];
    if (at === null || camera === null || size === null) return;
    const shown = cameraShowing(camera, size, at);
    if (shown !== camera) setCamera(desk, pane, shown);
  }, [desk, panes, findingId]);
}

function shownPanes(chosen: Chosen, arrangement: Arrangement, hasBay: boolean): readonly PaneId[] {
  if (!hasBay) return ['whole'];
  if (chosen !== 'both') return [chosen];
  // where there is room for one, the bay is what the whole vehicle is too small for
  if (arrangement === 'single') return ['bay'];
  return arrangement === 'beside' ? ['bay', 'whole'] : ['whole', 'bay'];
}

/** What a tap on a pane's title does: alone, both again, or the other one where there is room for one. */
function toggleOf(
  id: PaneId,
  shown: readonly PaneId[],
  arrangement: Arrangement,
  hasBay: boolean,
  titles: Readonly<Record<PaneId, string>>,
  choose: (chosen: Chosen) => void,
): PaneToggle | null {
  if (!hasBay) return null;
  const other: PaneId = id === 'bay' ? 'whole' : 'bay';
  if (arrangement === 'single') {
    return { sign: 'swap', label: say.swap(titles[id], titles[other]), onToggle: () => choose(other) };
  }
  if (shown.length > 1) return { sign: 'enlarge', label: say.enlarge(titles[id]), onToggle: () => choose(id) };
  return { sign: 'both', label: say.both(titles[id]), onToggle: () => choose('both') };
}

/** The sheet with its two panes: the bay large, the whole vehicle beside it, both views of one plan. */
export function Sketch({ desk }: { desk: Desk }) {
  const table = useMemo(() => createTable(desk), [desk]);
  useTakenAway(table);
  useEscape(table);
  useWayOfHand(table);
  useFindingInView(table);

  const room = useRef<HTMLDivElement>(null);
  const size = usePaneSize(room);
  const [chosen, setChosen] = useState<Chosen>('both');
  const palette = usePalette();
  const marked = useMarked(table);
  const handName = useStore(table.hand.store, ({ state }) => state.name);
  const refusal = useStore(table.hand.store, (view) => view.refusal);
  const sheet = useStore(desk, (state) => shownPlan(state).sheets[0]);
  if (sheet === undefined) throw new Error('A plan has at least one sheet.');
  const scene = useScene(table, sheet);

  const { outline } = scene.shown;
  const arrangement = arrangementFor(size, outline);
  const titles = { whole: sheet.outline.kind === 'bench' ? say.board : say.whole, bay: say.bay };
  const textScale = textScaleOf(document.documentElement);
  const shown = shownPanes(chosen, arrangement, outline.bayBounds !== null);

  const [first] = shown;
  useEffect(() => {
    // zoom by button and key is for a pane that is seen
    if (first !== undefined && !shown.includes(desk.getState().pane)) desk.setState({ pane: first });
  }, [desk, first, shown]);

  return (
    <div
      className="sketch"
      ref={room}
      data-arrangement={shown.length > 1 ? arrangement : 'single'}
      data-hand={handName}
      style={{ '--bay-share': `${bayShare(arrangement, size, drawOutline(sheet)) * 100}%` } as CSSProperties}
    >
      {size.widthPx > 0 &&
        shown.map((id) => (
          <Pane
            key={id}
            id={id}
            title={titles[id]}
            toggle={toggleOf(id, shown, arrangement, outline.bayBounds !== null, titles, setChosen)}
            table={table}
            sheet={sheet}
            scene={scene}
            marked={marked}
            palette={palette}
            textScale={textScale}
          />
        ))}
      <HandBar
        handName={handName}
        refusal={refusal}
        onBack={() => table.hand.tell({ kind: 'back' })}
        onDrop={() => table.hand.tell({ kind: 'drop' })}
      />
    </div>
  );
}
