import { useState } from 'react';
import { useStore } from 'zustand';
import { openSheet } from '../desk/openSheet.ts';
import { sheetTitle, words } from '../words/index.ts';
import type { Table } from './table.ts';

/** While a run is drawn and has a bend: it goes on from there on another sheet, the one or one of several. */
export function ContinueOn({ table }: { table: Table }) {
  const [isOpen, setOpen] = useState(false);
  const sheets = useStore(table.desk, (state) => state.plan.sheets);
  const here = useStore(table.desk, openSheet);
  const hasBend = useStore(table.seen, ({ state }) => state.name === 'run.drawing' && state.trace.bends.length > 0);
  const [first, ...more] = sheets.filter(({ id }) => id !== here.id);
  if (first === undefined || !hasBend) return null;
  const { drawing } = words.sketch;
  const goOn = (sheetId: string) => {
    setOpen(false);
    table.hand.tell({ kind: 'continue', sheetId });
  };
  if (isOpen && more.length > 0) {
    return [first, ...more].map((sheet) => (
      <button key={sheet.id} type="button" onClick={() => goOn(sheet.id)}>
        {drawing.continueOn(sheetTitle(sheet))}
      </button>
    ));
  }
  return (
    <button type="button" onClick={() => (more.length === 0 ? goOn(first.id) : setOpen(true))}>
      {drawing.continue}
    </button>
  );
}
