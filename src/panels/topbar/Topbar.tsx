import './topbar.css';
import { useRef, useState, useSyncExternalStore } from 'react';
import { commit } from '../../desk/edit.ts';
import { renamePlan } from '../../plan/edits/renamePlan.ts';
import { MAX_NAME } from '../../plan/schema.ts';
import { words } from '../../words/index.ts';
import { useDraft } from '../controls/useDraft.ts';
import { Icon } from '../shelf/Icon.tsx';
import { useDesk, useDeskStore } from '../useDesk.ts';
import type { PlanFiles } from './files.ts';

/** Dialogs that the row at the top opens. */
export type TopbarDialog = 'newPlan' | 'open' | 'settings' | 'legend' | 'view';

/** What stands beside the sketch, or in its place. */
export type WorkPanel = 'list' | 'alternatives';

interface TopbarProps {
  files: PlanFiles;
  panel: WorkPanel | null;
  onPanel: (panel: WorkPanel | null) => void;
  /** The dialog that is open, if it is one of these. */
  dialog: TopbarDialog | null;
  /** Opens it, or closes the sheet that is open. */
  onDialog: (dialog: TopbarDialog) => void;
}

function PlanName() {
  const desk = useDeskStore();
  const name = useDesk((state) => state.plan.name);
  const draft = useDraft<string>(
    name,
    (text) => ({ ok: true, value: text.trim() }),
    (text) => text !== '' && commit(desk, 'rename', (plan) => renamePlan(plan, text)),
  );
  return (
    <input
      className="plan-name"
      type="text"
      aria-label={words.topbar.planName}
      value={draft.text}
      maxLength={MAX_NAME}
      autoComplete="off"
      spellCheck={false}
      onChange={(event) => draft.change(event.target.value)}
      onBlur={() => draft.settle()}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') draft.drop();
      }}
    />
  );
}

function SaveSign({ files }: { files: PlanFiles }) {
  const isExample = useDesk((state) => state.isExample);
  const kind = useSyncExternalStore(files.saveState.subscribe, () => files.saveState.getState().kind);
  const { saveStates, topbar } = words;
  const text = isExample ? saveStates.example : saveStates[kind];
  const short = isExample ? topbar.example : kind === 'saved' ? saveStates.savedShort : null;
  return (
    <span className={`save-sign save-${kind}`} title={text}>
      {short === null ? (
        text
      ) : (
        <>
          {isExample ? null : <Icon name="tick" />}
          <span aria-hidden="true">{short}</span>
          <span className="sr-only">{text}</span>
        </>
      )}
    </span>
  );
}

/** One row: what the plan is called, where one is, and what can be done with the plan as a whole. */
export function Topbar({ files, panel, onPanel, dialog, onDialog }: TopbarProps) {
  const [isMenuOpen, setMenuOpen] = useState(false);
  const menu = useRef<HTMLButtonElement>(null);
  const { topbar, app } = words;
  const pick = (act: () => void) => () => {
    // the entry is about to go: what opens now gives the focus back to what stays
    if (isMenuOpen) menu.current?.focus();
    setMenuOpen(false);
    act();
  };
  const opens = (one: TopbarDialog, isSheet: boolean) => ({
    'aria-haspopup': 'dialog' as const,
    'aria-expanded': isSheet ? dialog === one : undefined,
    onClick: pick(() => onDialog(one)),
  });
  const toggle = (one: WorkPanel) => pick(() => onPanel(panel === one ? null : one));
  return (
    <header className="topbar">
      <h1 className="sr-only">{app.title}</h1>
      <PlanName />
      <SaveSign files={files} />
      <nav aria-label={topbar.views} className="views">
        <span aria-current="page">{app.sketch}</span>
      </nav>
      <button
        ref={menu}
        type="button"
        className="topbar-menu"
        aria-expanded={isMenuOpen}
        aria-controls="topbar-acts"
        onClick={() => setMenuOpen(!isMenuOpen)}
      >
        <Icon name="menu" />
        <span className="sr-only">{topbar.menu}</span>
      </button>
      <div className={isMenuOpen ? 'topbar-acts topbar-acts-open' : 'topbar-acts'} id="topbar-acts">
        <button type="button" {...opens('newPlan', false)}>
          {topbar.newPlan}
        </button>
        <button type="button" {...opens('open', false)}>
          {topbar.open}
        </button>
        <button type="button" onClick={pick(() => files.saveFile())}>
          {topbar.save}
        </button>
        <button type="button" aria-pressed={panel === 'list'} onClick={toggle('list')}>
          {topbar.list}
        </button>
        <button type="button" aria-pressed={panel === 'alternatives'} onClick={toggle('alternatives')}>
          {topbar.alternatives}
        </button>
        <button type="button" {...opens('settings', true)}>
          {topbar.settings}
        </button>
        <button type="button" {...opens('legend', true)}>
          {topbar.legend}
        </button>
        <button type="button" {...opens('view', true)}>
          {topbar.workView}
        </button>
      </div>
    </header>
  );
}
