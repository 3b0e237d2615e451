import './list.css';
import { useState } from 'react';
import { words } from '../../words/full.ts';
import { usePlan } from '../useDesk.ts';
import { AddForm } from './AddForm.tsx';
import { ConnectForm } from './ConnectForm.tsx';
import { FittingItems } from './FittingItems.tsx';
import { RunItems } from './RunItems.tsx';
import { SplitForm } from './SplitForm.tsx';

/** The plan as a list beside the sketch: everything the sketch can do, by keyboard and screen reader alone. */
export default function List({ onClose, onEdit }: { onClose: () => void; onEdit: () => void }) {
  const plan = usePlan();
  const [said, setSaid] = useState('');
  const { list } = words;
  return (
    <section className="list" aria-label={list.label} data-plan-keys>
      <header className="list-head">
        <h2>{list.label}</h2>
        <button type="button" onClick={onClose}>
          {list.close}
        </button>
      </header>
      <p className="hint">{list.hint}</p>
      <p className="list-said" role="status" aria-live="polite">
        {said}
      </p>
      <FittingItems plan={plan} onSaid={setSaid} onEdit={onEdit} />
      <RunItems plan={plan} onSaid={setSaid} onEdit={onEdit} />
      <AddForm plan={plan} onSaid={setSaid} />
      <ConnectForm plan={plan} onSaid={setSaid} />
      <SplitForm plan={plan} onSaid={setSaid} />
    </section>
  );
}
