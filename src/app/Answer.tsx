import { lazy, Suspense } from 'react';
import { History } from '../panels/shelf/History.tsx';
import { Icon } from '../panels/shelf/Icon.tsx';
import { Headline } from '../panels/summary/Headline.tsx';
import { Summary } from '../panels/summary/Summary.tsx';
import { useDesk } from '../panels/useDesk.ts';
import { words } from '../words/answer.ts';

const Inspector = lazy(() => import('../panels/inspector/Inspector.tsx'));

/** The answer and what is selected: a column beside the sketch, or a sheet pulled up from below it. */
export default function Answer({ isPulled, onPull }: { isPulled: boolean; onPull: (isPulled: boolean) => void }) {
  const hasSelection = useDesk((state) => state.selection !== null);
  const { summary } = words;
  return (
    <section
      className={`answer${isPulled ? ' answer-pulled' : ''}${hasSelection ? ' answer-selected' : ''}`}
      aria-label={summary.label}
    >
      <button type="button" className="answer-pull" aria-expanded={isPulled} onClick={() => onPull(!isPulled)}>
        <Icon name={isPulled ? 'down' : 'up'} />
        <span className="sr-only">{isPulled ? summary.pullDown : summary.pullUp}</span>
      </button>
      <Headline />
      {isPulled ? (
        // the shelf with its undo lies under the sheet
        <div className="answer-history">
          <History />
        </div>
      ) : null}
      {hasSelection ? (
        <button type="button" className="answer-edit" onClick={() => onPull(true)}>
          {summary.edit}
        </button>
      ) : null}
      <div className="answer-scroll">
        <Summary />
      </div>
      {hasSelection ? (
        <div className="answer-inspector">
          <Suspense fallback={null}>
            <Inspector />
          </Suspense>
        </div>
      ) : null}
    </section>
  );
}
