import { lazy, Suspense, useCallback, useEffect, useState } from 'react';
import '../look/look.css';
import './App.css';
import type { Desk } from '../desk/desk.ts';
import { PLAN_KEYS_ATTRIBUTE } from '../desk/keys.ts';
import { restoreTheme } from '../look/theme.ts';
import { goToInspector } from '../panels/inspector/goToInspector.ts';
import { MessageBar } from '../panels/message/MessageBar.tsx';
import { Shelf } from '../panels/shelf/Shelf.tsx';
import { Topbar, type TopbarDialog } from '../panels/topbar/Topbar.tsx';
import { DeskContext, useDesk } from '../panels/useDesk.ts';
import { type OpenWhy, WhyContext } from '../panels/why/useWhy.ts';
import { Sketch } from '../sketch/Sketch.tsx';
import { words } from '../words/index.ts';
import { AnswerReady } from './AnswerReady.tsx';
import { DropHint } from './DropHint.tsx';
import type { Keeping } from './keeping.ts';

// on its way from the start, like what works it out: the frame is on screen before either
const answerRoom = import('./Answer.tsx');
answerRoom.catch(() => undefined);
const Answer = lazy(() => answerRoom);

// what the first paint does not need
const List = lazy(() => import('../panels/list/List.tsx'));
const WhyDialog = lazy(() => import('../panels/why/WhyDialog.tsx'));
const NewPlanDialog = lazy(() => import('../panels/topbar/NewPlanDialog.tsx'));
const OpenDialog = lazy(() => import('../panels/topbar/OpenDialog.tsx'));
const SettingsDialog = lazy(() => import('../panels/topbar/SettingsDialog.tsx'));
const LegendDialog = lazy(() => import('../panels/topbar/LegendDialog.tsx'));

type Opened = { kind: TopbarDialog } | { kind: 'why'; whyId: string; title: string };

function OpenedDialog({ opened, files, onClose }: { opened: Opened; files: Keeping; onClose: () => void }) {
  switch (opened.kind) {
    case 'why':
      return <WhyDialog whyId={opened.whyId} title={opened.title} onClose={onClose} />;
    case 'newPlan':
      return <NewPlanDialog onClose={onClose} />;
    case 'open':
      return <OpenDialog files={files} onClose={onClose} />;
    case 'settings':
      return <SettingsDialog onClose={onClose} />;
    case 'legend':
      return <LegendDialog onClose={onClose} />;
  }
}

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
    <DeskContext value={desk}>
      <Page desk={desk} files={store} />
    </DeskContext>
  );
}

function Page({ desk, files }: { desk: Desk; files: Keeping }) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const [isListOpen, setListOpen] = useState(false);
  const [isPulled, setPulled] = useState(false);
  const bigFingers = useDesk((state) => state.bigFingers);
  const planName = useDesk((state) => state.plan.name);
  const openWhy = useCallback<OpenWhy>((whyId, title) => setOpened({ kind: 'why', whyId, title }), []);
  const edit = useCallback(() => {
    setPulled(true);
    goToInspector();
  }, []);
  const showList = useCallback((isOpen: boolean) => {
    setListOpen(isOpen);
    if (isOpen) setPulled(false);
  }, []);
  const close = useCallback(() => setOpened(null), []);

  useEffect(restoreTheme, []);

  useEffect(() => {
    document.title = words.app.pageTitle(planName);
  }, [planName]);

  return (
    <WhyContext value={openWhy}>
      <div className={isListOpen ? 'app app-list' : 'app'} data-fingers={bigFingers ? 'big' : 'fine'}>
        <Topbar files={files} isListOpen={isListOpen} onList={showList} onDialog={(kind) => setOpened({ kind })} />
        <Shelf />
        {/* one boundary: shown apart, the verdict may stand there half a second before a finger finds the sketch */}
        <Suspense fallback={<Frame />}>
          <AnswerReady>
            <main className="work">
              <div className="sketch-place" {...{ [PLAN_KEYS_ATTRIBUTE]: '' }}>
                <Sketch desk={desk} />
              </div>
              {isListOpen ? (
                <Suspense fallback={null}>
                  <List onClose={() => showList(false)} onEdit={edit} />
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
