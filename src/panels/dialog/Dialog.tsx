import './dialog.css';
import './choices.css';
import { type KeyboardEvent, type ReactNode, useEffect, useId, useLayoutEffect, useRef, useState } from 'react';
import { choice } from '../../look/choices.ts';
import { words } from '../../words/index.ts';
import { useElsewhere } from './useElsewhere.ts';

interface DialogProps {
  title: string;
  onClose: () => void;
  children: ReactNode;
  /** Stands beside the answer, so that its figures stay in view. */
  beside?: boolean;
  /**
   * A sheet at the edge, so that what it changes is seen as it changes: over one column, or from below. The page beside
   * it stays in use.
   */
  over?: 'tools' | 'answer';
}

/** By the gesture with which a device goes back, where the browser knows it. */
const CLOSED_BY_REQUEST = { closedby: 'closerequest' } as const;

/** The button whose dialog is open, should the one that opened it have gone with another language or face. */
const opensNow = (): HTMLElement | null => document.querySelector('[aria-haspopup="dialog"][aria-expanded="true"]');

/** Gives the focus back to what opened the dialog, unless it has gone elsewhere of its own. */
function giveBack(dialog: HTMLElement, opener: Element | null): void {
  const { activeElement } = document;
  if (activeElement !== document.body && !dialog.contains(activeElement)) return;
  const to = opener !== document.body && opener?.isConnected ? opener : opensNow();
  if (to instanceof HTMLElement) to.focus({ preventScroll: true });
}

/**
 * The platform's own dialog. Where something is to be chosen first it is modal: it keeps the focus inside, and nothing
 * behind it moves. A sheet is not: it goes by Escape, by a tap beside it, or when the focus goes elsewhere.
 */
export function Dialog({ title, onClose, children, beside = false, over }: DialogProps) {
  const ref = useRef<HTMLDialogElement>(null);
  const isSheet = over !== undefined;
  // chosen once: a sheet in which the hand is changed does not jump from under the finger
  const [side] = useState(() => choice('side'));
  const titleId = useId();
  const classes = ['dialog', beside && 'dialog-beside', over && `dialog-sheet dialog-over-${over} dialog-${side}`];
  useLayoutEffect(() => {
    const dialog = ref.current;
    if (dialog === null) return;
    const opener = document.activeElement;
    if (isSheet) dialog.show();
    else dialog.showModal();
    return () => {
      giveBack(dialog, opener);
      dialog.close();
    };
  }, [isSheet]);
  useElsewhere(ref, isSheet, onClose);
  useEscape(isSheet, onClose);
  return (
    <dialog
      ref={ref}
      className={classes.filter(Boolean).join(' ')}
      aria-labelledby={titleId}
      {...CLOSED_BY_REQUEST}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
      onClick={(event) => {
        // a press on the backdrop has the dialog itself as its target
        if (!isSheet && event.target === ref.current) onClose();
      }}
      onKeyDown={(event: KeyboardEvent) => {
        event.stopPropagation();
        if (!isSheet || event.key !== 'Escape') return;
        event.preventDefault();
        onClose();
      }}
    >
      <div className="dialog-body">
        <div className="dialog-head">
          <h2 id={titleId}>{title}</h2>
          <button type="button" onClick={onClose}>
            {words.topbar.close}
          </button>
        </div>
        {children}
      </div>
    </dialog>
  );
}

/** Escape anywhere on the page, unless there is something else to step back from first. */
function useEscape(isOn: boolean, onEscape: () => void): void {
  useEffect(() => {
    if (!isOn) return;
    const onKeyDown = (event: globalThis.KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented) return;
      event.preventDefault();
      onEscape();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [isOn, onEscape]);
}
