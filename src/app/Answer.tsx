import { lazy, type RefObject, Suspense, useEffect, useRef } from 'react';
import { Answered } from '../panels/Answered.tsx';
import { PACES, pacedOf } from '../panels/paced.ts';
import { History } from '../panels/shelf/History.tsx';
import { Icon } from '../panels/shelf/Icon.tsx';
import { Headline } from '../panels/summary/Headline.tsx';
import { Summary } from '../panels/summary/Summary.tsx';
import { useChoice } from '../panels/useChoice.ts';
import { useDesk, useDeskStore } from '../panels/useDesk.ts';
import { words } from '../words/answer.ts';

const Inspector = lazy(() => import('../panels/inspector/Inspector.tsx'));
const CustomerFace = lazy(() => import('../panels/faces/CustomerFace.tsx'));
const ClassFace = lazy(() => import('../panels/faces/ClassFace.tsx'));

const Work = () => (
  <>
    <Headline />
    <div className="answer-scroll">
      <Summary />
    </div>
  </>
);

const FACES = { work: Work, customer: CustomerFace, class: ClassFace } as const;

/** Marks what is behind the finger, and what waits for it to rest, by hand: nothing has to be drawn anew for it. */
function useMarkedByHand(place: RefObject<HTMLElement | null>): void {
  const desk = useDeskStore();
  useEffect(() => {
    const waiting = (['findings', 'fields'] as const).map((name) =>
      pacedOf(desk, PACES[name]).subscribe(({ isOld }) => place.current?.toggleAttribute(`data-${name}-old`, isOld)),
    );
    const behind = desk.subscribe(({ isBehind }, before) => {
      if (isBehind !== before.isBehind) place.current?.toggleAttribute('data-behind', isBehind);
    });
    const leave = [...waiting, behind];
    return () => {
      for (const each of leave) each();
    };
  }, [desk, place]);
}

/** The answer and what is selected: a column beside the sketch, or a sheet pulled up from below it. */
export default function Answer({ isPulled, onPull }: { isPulled: boolean; onPull: (isPulled: boolean) => void }) {
  const face = useChoice('face');
  const isAsking = useChoice('figures') === 'hidden' && face === 'class';
  // what is selected is full of figures; the customer's face opens its fields by itself
  const hasSelection = useDesk((state) => state.selection !== null) && face !== 'customer' && !isAsking;
  const place = useRef<HTMLElement>(null);
  // where all of it scrolls as one, what was just selected comes into view; who follows a finding stays with it
  const shownId = useDesk(({ selection, findingId }) => (findingId === null ? selection?.id : undefined));
  useEffect(() => {
    if (shownId !== undefined && place.current !== null) place.current.scrollTop = 0;
  }, [shownId]);
  useMarkedByHand(place);
  const Face = FACES[face];
  const { summary } = words;
  const classes = ['answer', isPulled && 'answer-pulled', hasSelection && 'answer-selected'];
  return (
    <section ref={place} className={classes.filter(Boolean).join(' ')} aria-label={summary.label}>
      <button type="button" className="answer-pull" aria-expanded={isPulled} onClick={() => onPull(!isPulled)}>
        <Icon name={isPulled ? 'down' : 'up'} />
        <span className="sr-only">{isPulled ? summary.pullDown : summary.pullUp}</span>
      </button>
      {isPulled ? (
        // the shelf with its undo lies under the sheet
        <div className="answer-history">
          <History />
        </div>
      ) : null}
      <Suspense fallback={null}>
        <Face />
      </Suspense>
      {hasSelection ? (
        <button type="button" className="answer-edit" onClick={() => onPull(true)}>
          {summary.edit}
        </button>
      ) : null}
      {hasSelection ? (
        <div className="answer-inspector">
          <Suspense fallback={null}>
            <Answered pace="fields">
              <Inspector />
            </Answered>
          </Suspense>
        </div>
      ) : null}
    </section>
  );
}
