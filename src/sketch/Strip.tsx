import './strip.css';
import { lazy, Suspense, useEffect, useRef, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import { proposeAct } from '../desk/acts/propose.ts';
import { choice, onChoice } from '../look/choices.ts';
import { words } from '../words/index.ts';
import { HandBar, restingName } from './HandBar.tsx';
import { keepFocus } from './keepFocus.ts';
import type { Table } from './table.ts';

// most plans open wired: nothing is proposed for them
const ProposeBar = lazy(() => import('./ProposeBar.tsx'));

const isWork = (): boolean => choice('face') === 'work';

/** Under the panes. The focus stays here when what had it goes. */
export function Strip({ table }: { table: Table }) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => (place.current === null ? undefined : keepFocus(place.current)), []);
  return (
    <div ref={place} className="sketch-strip-place" tabIndex={-1}>
      <StripContent table={table} />
    </div>
  );
}

/** The hand's while it draws, places or joins, else what can be proposed, else what a touch does. */
function StripContent({ table }: { table: Table }) {
  const { desk, seen } = table;
  const handName = useStore(seen, ({ state }) => restingName(state));
  const isRefused = useStore(seen, ({ refusal }) => refusal !== null);
  const isProposing = useStore(desk, (state) => state.proposal.length > 0 || proposeAct.allowed(state));
  // turned to a customer or a class nothing is sold or told beside what they look at
  const isAtWork = useSyncExternalStore(onChoice, isWork);
  const isFree = /^move\.(idle|pressed|dragging(Fitting|Bend))$/.test(handName);
  if (isRefused || !isFree) return <HandBar table={table} />;
  const idle = <p className="sketch-idle">{words.sketch.drawing.moveHint}</p>;
  if (!isProposing || !isAtWork) return idle;
  return (
    <Suspense fallback={idle}>
      <ProposeBar desk={desk} />
    </Suspense>
  );
}
