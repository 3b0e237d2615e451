import { useRef, useState } from 'react';
import { words } from '../../words/full.ts';
import type { KeptPlanEntry } from '../topbar/files.ts';
import { RenameForm } from './RenameForm.tsx';
import { Thumbnail } from './Thumbnail.tsx';

interface KeptPlanProps {
  entry: KeptPlanEntry;
  /** It lies on the desk, and is renamed there. */
  isOpen: boolean;
  onOpen: () => void;
  onDuplicate: (name: string) => void;
  onRename: (name: string) => Promise<boolean>;
  onRemove: () => void;
}

const clock = (time: number): string =>
  new Intl.DateTimeFormat(words.locale, { dateStyle: 'medium', timeStyle: 'short' }).format(time);

/** A plan with its picture, and what can be done with it. */
export function KeptPlan({ entry, isOpen, onOpen, onDuplicate, onRename, onRemove }: KeptPlanProps) {
  const [isNaming, setNaming] = useState(false);
  const renameButton = useRef<HTMLButtonElement>(null);
  const { openDialog } = words;
  const { plan, time } = entry;
  const name = plan?.name ?? openDialog.unreadable;
  return (
    <li className="kept-plan" data-plan={entry.planId}>
      <button type="button" className="kept-plan-open" disabled={plan === null || isOpen} onClick={onOpen}>
        {plan === null ? <span className="kept-plan-picture" /> : <Thumbnail plan={plan} />}
        <span>
          <b>{name}</b>
          <span className="hint">{isOpen ? openDialog.isOpen : openDialog.saved(clock(time))}</span>
        </span>
      </button>
      {isNaming ? (
        <RenameForm
          name={name}
          onKeep={(taken) => {
            setNaming(false);
            if (taken !== '' && taken !== name) void onRename(taken);
          }}
          onLeave={() => {
            setNaming(false);
            renameButton.current?.focus();
          }}
        />
      ) : null}
      <div className="kept-plan-acts">
        <button type="button" disabled={plan === null} onClick={() => onDuplicate(openDialog.copyOf(name))}>
          {openDialog.duplicate}
          <span className="sr-only"> {name}</span>
        </button>
        {isOpen ? null : (
          <button
            ref={renameButton}
            type="button"
            disabled={plan === null}
            aria-expanded={isNaming}
            onClick={() => setNaming(!isNaming)}
          >
            {openDialog.rename}
            <span className="sr-only"> {name}</span>
          </button>
        )}
        <button type="button" className="danger" onClick={onRemove}>
          {openDialog.remove}
          <span className="sr-only"> {name}</span>
        </button>
      </div>
    </li>
  );
}
