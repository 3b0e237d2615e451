import { lazy, Suspense, useCallback, useEffect, useState } from 'react';
import '../look/look.css';
import '../look/controls.css';
import '../look/fieldPairs.css';
import '../look/severity.css';
import './App.css';
import './sheet.css';
import './sideways.css';
import type { Desk } from '../desk/desk.ts';
import { showInspectorBy } from '../desk/inspect.ts';
import { PLAN_KEYS_ATTRIBUTE } from '../desk/planKeys.ts';
import { DeskProvider } from '../panels/DeskProvider.tsx';
import { goToInspector } from '../panels/inspector/goToInspector.ts';
import { MessageBar } from '../panels/message/MessageBar.tsx';
import { Shelf } from '../panels/shelf/Shelf.tsx';
import { Topbar, type TopbarDialog, type WorkPanel } from '../panels/topbar/Topbar.tsx';
import { useChoice } from '../panels/useChoice.ts';
import { useDesk } from '../panels/useDesk.ts';
import { type OpenWhy, WhyContext } from '../panels/why/useWhy.ts';
import { words } from '../words/index.ts';
import { AnswerReady } from './AnswerReady.tsx';
import { DropHint } from './DropHint.tsx';
import type { Keeping } from './keeping.ts';
import { useLocale } from './language.ts';
import type { Opened } from './OpenedDialog.tsx';

// on its way from the start, like what works it out: the frame is on screen before either
const answerRoom = import('./Answer.tsx');
answerRoom.catch(() => undefined);
const Answer = lazy(() => answerRoom);
const sketchRoom = import('../sketch/Sketch.tsx');
sketchRoom.catch(() => undefined);
// its labels say names by the words of the answer
const Sketch = lazy(() => answerRoom.then(() => sketchRoom));

// what the first paint does not need
const List = lazy(() => import('../panels/list/List.tsx'));
const Alternatives = lazy(() => import('../panels/alternatives/Alternatives.tsx'));
const SheetBar = lazy(() => import('../panels/sheets/SheetBar.tsx'));
const OutlineEditor = lazy(() => import('../panels/outline/OutlineEditor.tsx'));
const Guide = lazy(() => import('../panels/guide/Guide.tsx'));
const FaceBar = lazy(() => import('../panels/faces/FaceBar.tsx'));
const OpenedDialog = lazy(() => import('./OpenedDialog.tsx'));

/** The page before there is an answer to show. */
const Frame = () => (
  <>
    <main className="work">
      <div className="sketch-place" />
    </main>
    <section className="answer" aria-busy="true" />
  </>
);

export function App({ desk, store }: { desk: Desk; store: Keeping }) {
  return (
    <DeskProvider desk={desk}>
      <Page desk={desk} files={store} />
    </DeskProvider>
  );
}

function Page({ desk, files }: { desk: Desk; files: Keeping }) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const [panel, setPanel] = useState<WorkPanel | null>(null);
  const [isPulled, setPulled] = useState(false);
  const bigFingers = useDesk((state) => state.bigFingers);
  const planName = useDesk((state) => state.plan.name);
  const isWork = useChoice('face') === 'work';
  const isGuided = useChoice('guide') === 'open' && isWork;
  const hasSheets = useDesk((state) => state.plan.sheets.length > 1 && state.outlineOf === null);
  const outlineOf = useDesk((state) => state.outlineOf);
  const openWhy = useCallback<OpenWhy>((whyId, title) => setOpened({ kind: 'why', whyId, title }), []);
  const dialog = opened === null || opened.kind === 'why' ? null : opened.kind;
  // pressed again, its button puts a sheet away
  const toggleDialog = useCallback(
    (kind: TopbarDialog) => setOpened((now) => (now?.kind === kind ? null : { kind })),
    [],
  );
  const edit = useCallback(() => {
    setPulled(true);
    goToInspector();
  }, []);
  const showPanel = useCallback((shown: WorkPanel | null) => {
    setPanel(shown);
    if (shown !== null) setPulled(false);
  }, []);
  const closePanel = useCallback(() => setPanel(null), []);
  const close = useCallback(() => setOpened(null), []);

  useEffect(() => showInspectorBy(desk, () => setPulled(true)), [desk]);

  // what was asked for is not to open under the sheet
  useEffect(() => {
    if (isGuided) setPulled(false);
  }, [isGuided]);

  const locale = useLocale();

  const title = words.app.pageTitle(planName);
  useEffect(() => {
    document.title = title;
  }, [title]);

  return (
    <WhyContext value={openWhy}>
      {/* what stands on the page is made anew in another language; an open dialog stays open */}
      <div
        key={locale}
        className={isWork && panel !== null ? `app app-${panel}` : 'app'}
        data-fingers={bigFingers ? 'big' : 'fine'}
        data-pulled={isPulled}
        data-guided={isGuided}
      >
        {isWork ? (
          <Topbar files={files} panel={panel} onPanel={showPanel} dialog={dialog} onDialog={toggleDialog} />
        ) : (
          <Suspense fallback={<header className="topbar" />}>
            <FaceBar isViewOpen={dialog === 'view'} onView={() => toggleDialog('view')} />
          </Suspense>
        )}
        <Shelf />
        {/* one boundary: shown apart, the verdict may stand there half a second before a finger finds the sketch */}
        <Suspense fallback={<Frame />}>
          <AnswerReady>
            <main className="work">
              <div className="sketch-place" data-sheets={hasSheets} {...{ [PLAN_KEYS_ATTRIBUTE]: '' }}>
                {hasSheets ? (
                  <Suspense fallback={<div className="sheets" />}>
                    <SheetBar isWork={isWork} />
                  </Suspense>
                ) : null}
                {outlineOf === null ? (
                  <Sketch desk={desk} />
                ) : (
                  <Suspense fallback={null}>
                    <OutlineEditor key={outlineOf} sheetId={outlineOf} templates={files.templates} />
                  </Suspense>
                )}
              </div>
              {isWork && panel !== null ? (
                <Suspense fallback={null}>
                  {panel === 'list' ? (
                    <List onClose={closePanel} onEdit={edit} />
                  ) : (
                    <Alternatives onClose={closePanel} />
                  )}
                </Suspense>
              ) : null}
              {isGuided ? (
                <Suspense fallback={null}>
                  <Guide onNewPlan={() => setOpened({ kind: 'newPlan' })} onEdit={edit} />
                </Suspense>
              ) : null}
            </main>
            <Answer isPulled={isPulled} onPull={setPulled} />
          </AnswerReady>
        </Suspense>
        <MessageBar />
        <DropHint />
        {opened === null ? null : (
          <Suspense fallback={null}>
            <OpenedDialog opened={opened} files={files} onClose={close} />
          </Suspense>
        )}
      </div>
    </WhyContext>
  );
}
