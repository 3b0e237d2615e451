/** What a sketch hears beside fingers: keys, the page going away, the way of the hand, a fitting carried in. */
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import { receiveCarried } from '../desk/carry.ts';
import type { Desk } from '../desk/desk.ts';
import { openSheet } from '../desk/openSheet.ts';
import { createTable, type Table } from './table.ts';

/** Takes gestures away when the page does: a finger that lifts elsewhere is never heard of again. */
function useTakenAway(table: Table): void {
  useEffect(() => {
    const hidden = () => {
      if (document.hidden) table.input.takeAway();
    };
    // a tablet turned over mid-gesture: what lay under the finger lies elsewhere now
    const turned = matchMedia('(orientation: portrait)');
    turned.addEventListener('change', table.input.takeAway);
    window.addEventListener('blur', table.input.takeAway);
    document.addEventListener('visibilitychange', hidden);
    return () => {
      turned.removeEventListener('change', table.input.takeAway);
      window.removeEventListener('blur', table.input.takeAway);
      document.removeEventListener('visibilitychange', hidden);
    };
  }, [table]);
}

/** A field or a dialog that is open has its own use for the key. */
const isTyping = (target: EventTarget | null): boolean =>
  target instanceof Element &&
  target.closest('dialog, textarea, select, input:not([type="radio"], [type="checkbox"])') !== null;

/** Escape steps back one bend, or drops what is under the finger; nothing else hears of it then. */
function useEscape(table: Table): void {
  useEffect(() => {
    const key = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || isTyping(event.target)) return;
      const name = table.hand.stateName;
      if (name === 'run.drawing' || name === 'run.pickingTerminal' || name === 'move.pickingTerminal')
        table.hand.tell({ kind: 'back' });
      else if (table.input.state === 'dragging' || table.input.state === 'pressed') table.input.takeAway();
      else return;
      event.preventDefault();
      event.stopPropagation();
    };
    window.addEventListener('keydown', key, { capture: true });
    return () => window.removeEventListener('keydown', key, { capture: true });
  }, [table]);
}

function useWayOfHand(table: Table): void {
  const way = useStore(table.desk, (state) => state.hand.way);
  useEffect(() => table.hand.changeWay(way), [table, way]);
}

function useOpenSheet(table: Table): void {
  const sheetId = useStore(table.desk, (state) => openSheet(state).id);
  useEffect(() => table.hand.changeSheet(sheetId), [table, sheetId]);
}

/** A fitting dragged off the shelf goes on under the same finger here. */
function useCarried(table: Table): void {
  useEffect(() => receiveCarried(table.desk, (kind, event, from) => table.carryIn(kind, event, from)), [table]);
}

/** The panes, the input and the hand of one sketch, for as long as it stands on the page. */
export function useTable(desk: Desk): Table {
  const table = useMemo(() => createTable(desk), [desk]);
  useTakenAway(table);
  useEscape(table);
  useWayOfHand(table);
  useOpenSheet(table);
  useCarried(table);
  return table;
}
