import './shelf.css';
import { lazy, Suspense, useState } from 'react';
import { runAct } from '../../desk/acts/index.ts';
import { toggleSnap } from '../../desk/acts/toggles.ts';
import { zoomFit } from '../../desk/acts/zoom.ts';
import { words } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { Hands, takeKind, useHeldKind } from './Hands.tsx';
import { History } from './History.tsx';
import { Icon } from './Icon.tsx';

const MoreFittings = lazy(() => import('./MoreFittings.tsx'));

/** What the hand does and what it can take, with undo and redo beside it; on a phone the rest is pulled up on demand. */
export function Shelf() {
  const desk = useDeskStore();
  const snap = useDesk((state) => state.snap);
  const held = useHeldKind();
  const [isOpen, setOpen] = useState(false);
  const [isMoreOpen, setMoreOpen] = useState(false);
  const { shelf } = words;
  const put = () => {
    setOpen(false);
    setMoreOpen(false);
  };
  return (
    <>
      <aside className={isOpen ? 'shelf shelf-open' : 'shelf'} aria-label={shelf.label} data-shelf>
        <div className="shelf-drawer" id="shelf-drawer">
          <Hands isMoreOpen={isMoreOpen} onMore={() => setMoreOpen(!isMoreOpen)} onTaken={put} />
        </div>
        <div className="shelf-row">
          <button
            type="button"
            className="shelf-pull"
            aria-expanded={isOpen}
            aria-controls="shelf-drawer"
            onClick={() => setOpen(!isOpen)}
          >
            <Icon name="tools" />
            <span>{isOpen ? shelf.closeTools : shelf.tools}</span>
          </button>
          <History />
          <button type="button" aria-pressed={snap} onClick={() => runAct(desk, toggleSnap)}>
            <Icon name="snap" />
            <span className="tool-word">{shelf.snap}</span>
          </button>
          <button type="button" onClick={() => runAct(desk, zoomFit)}>
            <Icon name="fit" />
            <span className="tool-word">{shelf.fit}</span>
          </button>
        </div>
      </aside>
      {isMoreOpen ? (
        <Suspense fallback={null}>
          <MoreFittings
            placed={held}
            onTake={(kind) => {
              takeKind(desk, kind);
              put();
            }}
            onClose={() => setMoreOpen(false)}
          />
        </Suspense>
      ) : null}
    </>
  );
}
