import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import { loadAssess } from '../desk/answer.ts';
import { openOnDesk } from '../desk/edit.ts';
import { choice } from '../look/choices.ts';
import { newId, newPlan } from '../plan/create.ts';
import { DEFAULT_OUTLINES } from '../plan/outline.ts';
import { openStore } from '../storage/store.ts';
import { openTabs } from '../storage/tabs.ts';
import { words } from '../words/index.ts';
import { measuresFor } from '../words/language.ts';
import { App } from './App.tsx';
import { listenForFiles } from './dropFile.ts';
import { ErrorBoundary, StartFailed } from './ErrorBoundary.tsx';
import { exampleHere } from './example.ts';
import { startLanguage } from './language.ts';
import { keepKeys } from './lateKeys.ts';
import { start } from './start.ts';

/** Beside the page, wherever that is served from. */
const EXAMPLE_ADDRESS = './demo.plan.json';

async function fetchExample(): Promise<string> {
  const answer = await fetch(EXAMPLE_ADDRESS);
  if (!answer.ok) throw new Error(`${EXAMPLE_ADDRESS}: ${answer.status}`);
  return answer.text();
}

/** Some browsers have no idle time to tell of. */
const whenIdle = (run: () => Promise<unknown>): void => {
  const calmly = () => void run().catch(() => undefined);
  if ('requestIdleCallback' in window) window.requestIdleCallback(calmly, { timeout: 3000 });
  else setTimeout(calmly, 1000);
};

const element = document.getElementById('root');
if (element === null) throw new Error('index.html has no element #root.');
const root = createRoot(element);

// on its way while the plan is looked up; whoever shows an answer waits for it, and hears of a failure
loadAssess().catch(() => undefined);

try {
  await startLanguage();
  const { desk, keeping } = await start({
    openStore,
    openTabs,
    fetchExample,
    adaptExample: exampleHere,
    emptyName: words.newPlan.untitled,
    coarsePointer: window.matchMedia('(pointer: coarse)').matches,
    now: Date.now,
    page: document,
  });
  const startEmpty = () =>
    openOnDesk(
      desk,
      newPlan({
        ...measuresFor(choice('language'), navigator.languages),
        ...{ id: newId(), sheetId: newId(), name: words.newPlan.untitled },
        ...{ outline: DEFAULT_OUTLINES.panelVan, mirrored: false },
      }),
      { isExample: false },
    );
  // when there is nothing better to do: the page works drafts out by itself until then
  whenIdle(() => import('../desk/answering.ts').then(({ answerDrafts }) => answerDrafts(desk)));
  // so that the first dialog is fetched in one go
  whenIdle(() => import('./OpenedDialog.tsx'));
  keepKeys(desk, window);
  listenForFiles(keeping, window);
  root.render(
    <StrictMode>
      <ErrorBoundary onSave={keeping.saveFile} onEmpty={startEmpty}>
        <App desk={desk} store={keeping} />
      </ErrorBoundary>
    </StrictMode>,
  );
} catch (error) {
  root.render(<StartFailed error={error instanceof Error ? error : new Error(String(error))} />);
}
