import { type CSSProperties, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Desk, PaneId } from '../desk/desk.ts';
import { openSheet } from '../desk/openSheet.ts';
import type { Sheet } from '../plan/schema.ts';
import { sheetTitle, words } from '../words/index.ts';
import { type Arrangement, arrangementFor, bayShare } from './arrangement.ts';
import { Pane } from './Pane.tsx';
import type { PaneToggle } from './PaneTitle.tsx';
import { usePalette } from './palette.ts';
import { textScaleOf } from './textScale.ts';
import { useMarked } from './useMarked.ts';
import { usePaneSize } from './usePaneSize.ts';
import { useScene } from './useScene.ts';
import { useTable } from './useTable.ts';
import './sketch.css';

/** What the user asked to see; both wherever there is room for both. */
type Chosen = 'both' | PaneId;

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
  const { panes: say } = words.sketch;
  const other: PaneId = id === 'bay' ? 'whole' : 'bay';
  if (arrangement === 'single') {
    return { sign: 'swap', label: say.swap(titles[id], titles[other]), onToggle: () => choose(other) };
  }
  if (shown.length > 1) return { sign: 'enlarge', label: say.enlarge(titles[id]), onToggle: () => choose(id) };
  return { sign: 'both', label: say.both(titles[id]), onToggle: () => choose('both') };
}

/** What the larger pane shows: all of the vehicle, of the user's own outline or of the board, or what a sheet is for. */
function titleOf(sheet: Sheet): string {
  if (sheet.part !== 'whole' || sheet.view !== 'above') return sheetTitle(sheet);
  return words.sketch.panes.whole[sheet.outline.kind];
}

/** The sheet with its two panes: the bay large, the whole vehicle beside it, both views of one plan. */
export default function Sketch({ desk }: { desk: Desk }) {
  const table = useTable(desk);

  const room = useRef<HTMLDivElement>(null);
  const roomSize = usePaneSize(room);
  const panesRoom = useRef<HTMLDivElement>(null);
  const size = usePaneSize(panesRoom);
  const [chosen, setChosen] = useState<Chosen>('both');
  const palette = usePalette();
  const marked = useMarked(table);
  const handName = useStore(table.seen, ({ state }) => state.name);
  const late = useStore(table.late);
  const sheet = useStore(desk, openSheet);
  const scene = useScene(table, sheet);

  const { outline } = scene.settled;
  const arrangement = arrangementFor(roomSize, outline);
  const { panes: say } = words.sketch;
  const titles = { whole: titleOf(sheet), bay: scene.closeUp?.of === 'source' ? say.source : say.bay };
  const textScale = textScaleOf(document.documentElement);
  const shown = shownPanes(chosen, arrangement, outline.bayBounds !== null);

  const [first] = shown;
  useEffect(() => {
    // zoom by button and key is for a pane that is seen
    if (first !== undefined && !shown.includes(desk.getState().pane)) desk.setState({ pane: first });
  }, [desk, first, shown]);

  return (
    <div className="sketch" ref={room} data-hand={handName}>
      <div
        className="sketch-panes"
        ref={panesRoom}
        data-arrangement={shown.length > 1 ? arrangement : 'single'}
        style={{ '--bay-share': `${bayShare(arrangement, size, outline) * 100}%` } as CSSProperties}
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
      </div>
      {/* has its room before what stands in it has come: the panes are fitted once, and without it */}
      <div className="sketch-strip">{late !== null && <late.Strip table={table} />}</div>
      {late !== null && <late.FindingInView table={table} />}
    </div>
  );
}
