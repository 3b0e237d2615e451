import './list.css';
import { useState } from 'react';
import { words } from '../../words/full.ts';
import { Answered } from '../Answered.tsx';
import { usePlan } from '../useDesk.ts';
import { AddForm } from './AddForm.tsx';
import { ConnectForm } from './ConnectForm.tsx';
import { FittingItems } from './FittingItems.tsx';
import { RunItems } from './RunItems.tsx';
import { SplitForm } from './SplitForm.tsx';

interface ListProps {
  onClose: () => void;
  onEdit: () => void;
}

/** The plan as a list beside the sketch: everything the sketch can do, by keyboard and screen reader alone. */
export default function List(props: ListProps) {
  return (
    <Answered pace="fields">
      <Listed {...props} />
    </Answered>
  );
}

function Listed({ onClose, onEdit }: ListProps) {
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
