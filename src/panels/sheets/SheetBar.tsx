import './sheets.css';
import { useRef, useState } from 'react';
import { commit } from '../../desk/edit.ts';
import { openSheet } from '../../desk/openSheet.ts';
import { goToSheet, removeSheetOf } from '../../desk/sheets.ts';
import { changeSheet } from '../../plan/edits/changeSheet.ts';
import { removeSheet } from '../../plan/edits/removeSheet.ts';
import { MAX_NAME, type Sheet } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { sheetTitle } from '../../words/index.ts';
import { TextField } from '../controls/TextField.tsx';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { AddSheet } from './AddSheet.tsx';
import { useMore } from './useMore.ts';

/** The open sheet's name, its outline, and its deletion. */
function ChangeSheet({ sheet, onDone }: { sheet: Sheet; onDone: () => void }) {
  const desk = useDeskStore();
  const plan = useDesk((state) => state.plan);
  const mayGo = removeSheet(plan, sheet.id) !== plan;
  const { sheets } = words;
  return (
    <div className="sheets-change">
      <TextField
        label={sheets.name}
        value={sheetTitle(sheet)}
        maxLength={MAX_NAME}
        onTake={(name) => commit(desk, 'renameSheet', (before) => changeSheet(before, sheet.id, { name }))}
      />
      <button type="button" onClick={() => desk.setState({ outlineOf: sheet.id })}>
        {sheets.drawOutline}
      </button>
      <button
        type="button"
        className="danger"
        disabled={!mayGo}
        onClick={() => {
          removeSheetOf(desk, sheet.id, sheetTitle(sheet));
          onDone();
        }}
      >
        {sheets.remove}
      </button>
      <button type="button" onClick={onDone}>
        {sheets.done}
      </button>
      {mayGo ? null : <p className="hint">{sheets.removeRefused}</p>}
    </div>
  );
}

/** The sheets of the plan, one of them open; shown where there is more than one. */
export default function SheetBar({ isWork }: { isWork: boolean }) {
  const desk = useDeskStore();
  const list = useDesk((state) => state.plan.sheets);
  const open = useDesk(openSheet);
  const [more, setMore] = useState<'add' | 'change' | null>(null);
  const strip = useRef<HTMLDivElement>(null);
  // a sheet more or fewer, or another name, changes what fits as well
  const [follows, look] = useMore(strip, `${open.id} ${list.map(sheetTitle).join()}`);
  const { sheets } = words;
  const close = () => setMore(null);
  const toggle = (which: 'add' | 'change') => setMore(more === which ? null : which);
  return (
    <nav className="sheets" aria-label={sheets.label}>
      <div className="sheets-row">
        <div className="sheets-tabs" ref={strip} data-more={follows} onScroll={look}>
          {list.map((sheet) => (
            <button
              key={sheet.id}
              type="button"
              aria-current={sheet.id === open.id ? 'page' : undefined}
              onClick={() => goToSheet(desk, sheet.id)}
            >
              {sheetTitle(sheet)}
            </button>
          ))}
        </div>
        {isWork ? (
          <>
            <button type="button" aria-expanded={more === 'add'} onClick={() => toggle('add')}>
              {sheets.add}
            </button>
            <button
              type="button"
              aria-expanded={more === 'change'}
              aria-label={sheets.edit(sheetTitle(open))}
              onClick={() => toggle('change')}
            >
              {sheets.editShort}
            </button>
          </>
        ) : null}
      </div>
      {isWork && more === 'add' ? <AddSheet onDone={close} /> : null}
      {isWork && more === 'change' ? <ChangeSheet key={open.id} sheet={open} onDone={close} /> : null}
    </nav>
  );
}
