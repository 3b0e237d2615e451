import './shelf.css';
import './turned.css';
import { lazy, type ReactNode, Suspense, useState } from 'react';
import { runAct } from '../../desk/acts/index.ts';
import { toggleSnap } from '../../desk/acts/toggles.ts';
import { zoomFit } from '../../desk/acts/zoom.ts';
import { words } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { FittingIcon } from './FittingIcon.tsx';
import { Hands, takeKind, useHeldKind } from './Hands.tsx';
import { History } from './History.tsx';
import { Icon } from './Icon.tsx';

/** What the hand holds beside itself, by name and symbol; null while it moves things. */
function useInHand(): { name: string; icon: ReactNode } | null {
  const held = useHeldKind();
  const isRun = useDesk(({ hand }) => hand.way === 'run');
  const { shelf, fittings } = words;
  if (held !== null) return { name: fittings.kinds[held], icon: <FittingIcon kind={held} /> };
  return isRun ? { name: shelf.run, icon: <Icon name="run" /> } : null;
}

const MoreFittings = lazy(() => import('./MoreFittings.tsx'));

/** What the hand does and what it can take, with undo and redo beside it; on a phone the rest is pulled up on demand. */
export function Shelf() {
  const desk = useDeskStore();
  const snap = useDesk((state) => state.snap);
  const held = useHeldKind();
  const inHand = useInHand();
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
            data-held={inHand !== null || undefined}
            onClick={() => setOpen(!isOpen)}
          >
            {/* the drawer closes over what was taken out of it */}
            {inHand === null ? <Icon name="tools" /> : inHand.icon}
            <span>{isOpen ? shelf.closeTools : shelf.tools}</span>
            {inHand === null ? null : <span className="sr-only">{shelf.inHand(inHand.name)}</span>}
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
            onDone={put}
            onClose={() => setMoreOpen(false)}
          />
        </Suspense>
      ) : null}
    </>
  );
}
