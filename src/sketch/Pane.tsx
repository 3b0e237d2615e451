import { useEffect, useLayoutEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { answerOf } from '../desk/answer.ts';
import type { PaneSize } from '../desk/camera.ts';
import type { PaneId } from '../desk/desk.ts';
import type { Plan, Sheet } from '../plan/schema.ts';
import { unitsFor, words } from '../words/index.ts';
import { fittedCamera, keptOrFitted, resizedCamera } from './cameras.ts';
import { Labels } from './Labels.tsx';
import { PaneTitle, type PaneToggle } from './PaneTitle.tsx';
import type { Marked } from './paint/marks.ts';
import type { Palette } from './palette.ts';
import { ScaleBar } from './ScaleBar.tsx';
import { SheetStage } from './SheetStage.tsx';
import type { Table } from './table.ts';
import { usePaneSize } from './usePaneSize.ts';
import type { Scene } from './useScene.ts';

interface PaneProps {
  id: PaneId;
  title: string;
  toggle: PaneToggle | null;
  table: Table;
  sheet: Sheet;
  scene: Scene;
  marked: Marked;
  palette: Palette;
  /** How much larger than on a tablet the words are. */
  textScale: number;
}

/** One view of the sheet: canvas layers that only paint, page text and buttons over them. */
export function Pane({ id, title, toggle, table, sheet, scene, marked, palette, textScale }: PaneProps) {
  const { desk, input, panes, seen } = table;
  const surface = useRef<HTMLDivElement>(null);
  const size = usePaneSize(surface);
  const camera = useStore(desk, (state) => state.cameras[id]);
  const isHeld = useStore(seen, ({ finger }) => finger !== null);
  const late = useStore(table.late);
  const hasCamera = camera !== null;
  const closeUp = id === 'bay' ? scene.closeUp : null;
  const measured = useRef(size);
  const fittedFor = useRef<{ sheet: Sheet; size: PaneSize } | null>(null);

  useEffect(() => {
    const element = surface.current;
    return element === null ? undefined : input.attach(element, id);
  }, [input, id]);

  useLayoutEffect(() => {
    const element = surface.current;
    if (element === null || size.widthPx === 0 || size.heightPx === 0) return;
    panes.mount(id, element, size);
    return () => panes.unmount(id);
  }, [panes, id, size]);

  useLayoutEffect(() => {
    if (size.widthPx === 0 || size.heightPx === 0) return;
    const before = measured.current;
    measured.current = size;
    // a camera that is gone is one to be fitted anew
    if (hasCamera && panes.isMoved(id, sheet.id)) return;
    const now = panes.camera(id);
    // a pane that changes its size under a finger keeps what lies there; it is fitted anew when the finger has gone
    if (isHeld && now !== null) {
      if (size !== before) panes.fit(id, resizedCamera(now, before, size));
      return;
    }
    const fitted = fittedCamera(sheet, id, size, closeUp);
    const isSame = fittedFor.current?.sheet === sheet && fittedFor.current.size === size;
    fittedFor.current = { sheet, size };
    const next = isSame && now !== null ? keptOrFitted(now, fitted, size, closeUp) : fitted;
    if (next !== now) panes.fit(id, next);
  }, [panes, id, sheet, size, hasCamera, isHeld, closeUp]);

  const { plan, sight } = scene;
  const counts = {
    fittings: plan.fittings.length,
    runs: plan.runs.length,
    unprotected: sight === 'all' ? unprotectedIn(plan) : undefined,
  };
  return (
    <section className="sketch-pane" data-pane={id}>
      <div className="sketch-surface" ref={surface} role="img" aria-label={words.sketch.describePane(title, counts)}>
        {camera !== null && (
          <SheetStage table={table} camera={camera} size={size} scene={scene} marked={marked} palette={palette} />
        )}
      </div>
      {camera !== null && (
        <>
          {/* below the labels: what has to be named hides the scale where there is room for both nowhere */}
          <ScaleBar
            pxPerM={camera.pxPerM}
            scale={sheet.scale.value}
            isFeet={plan.settings.showLength === 'ft-in'}
            units={unitsFor(plan)}
          />
          <Labels
            table={table}
            scene={scene}
            camera={camera}
            size={size}
            selection={marked.selection}
            scale={textScale}
          />
          <PaneTitle title={title} toggle={toggle} />
          {late !== null && (
            <late.OverPane
              id={id}
              table={table}
              scene={scene}
              marked={marked}
              camera={camera}
              size={size}
              surface={surface.current}
              palette={palette}
              textScale={textScale}
            />
          )}
        </>
      )}
    </section>
  );
}

/** The longest unprotected stretch in words; null when there is none. */
function unprotectedIn(plan: Plan): string | null {
  const longestM = Math.max(0, ...answerOf(plan).sources.map(({ unprotectedM }) => unprotectedM));
  return longestM > 0 ? unitsFor(plan).length(longestM) : null;
}
