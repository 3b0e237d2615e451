import './more.css';
import { useEffect, useRef } from 'react';
import type { FittingKind } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { AddSheet } from '../sheets/AddSheet.tsx';
import { FittingIcon } from './FittingIcon.tsx';
import { kindsIn, MORE_GROUPS } from './kinds.ts';
import { useTileDrag } from './useTileDrag.ts';

interface MoreFittingsProps {
  placed: FittingKind | null;
  onTake: (kind: FittingKind) => void;
  /** Something else was begun from here: the sheet is wanted in sight. */
  onDone: () => void;
  onClose: () => void;
}

/** The fittings that do not stand on the shelf, by what they do. Not a dialog: the sketch beside it stays in use. */
export default function MoreFittings({ placed, onTake, onDone, onClose }: MoreFittingsProps) {
  const sheet = useRef<HTMLElement>(null);
  const close = useRef(onClose);
  close.current = onClose;
  const { shelf, fittings, fittingGroups } = words;
  const drag = useTileDrag(onDone);

  useEffect(() => {
    const opener = document.activeElement;
    const here = sheet.current;
    here?.querySelector<HTMLElement>('[aria-pressed="true"], [aria-pressed]')?.focus();
    const onPress = ({ target }: PointerEvent) => {
      const isInside = target instanceof Element && target.closest('.more, .more-tile') !== null;
      if (!isInside) close.current();
    };
    document.addEventListener('pointerdown', onPress);
    return () => {
      document.removeEventListener('pointerdown', onPress);
      const hadFocus = here?.contains(document.activeElement) ?? false;
      const isLost = hadFocus || document.activeElement === document.body;
      if (isLost && opener instanceof HTMLElement && opener.isConnected) opener.focus({ preventScroll: true });
    };
  }, []);

  return (
    <section
      ref={sheet}
      id="more-fittings"
      className="more"
      aria-label={shelf.moreFittings}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        onClose();
      }}
    >
      <header className="more-head">
        <h2>{shelf.moreFittings}</h2>
        <button type="button" onClick={onClose}>
          {words.topbar.close}
        </button>
      </header>
      {MORE_GROUPS.map((group) => (
        <fieldset key={group}>
          <legend>{fittingGroups[group]}</legend>
          <div className="more-kinds">
            {kindsIn(group).map((kind) => (
              <button
                key={kind}
                type="button"
                className="tile"
                aria-pressed={kind === placed}
                data-choice={kind}
                {...drag(kind)}
                onClick={() => onTake(kind)}
              >
                <FittingIcon kind={kind} />
                <span>{fittings.kinds[kind]}</span>
              </button>
            ))}
          </div>
        </fieldset>
      ))}
      <fieldset>
        <legend>{words.sheets.addTitle}</legend>
        <AddSheet onDone={onDone} />
      </fieldset>
    </section>
  );
}
