import { useId, useState } from 'react';
import { connect } from '../../desk/connect.ts';
import { wholePlan } from '../../desk/whole.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { Choice } from '../controls/Choice.tsx';
import { terminalOptions } from '../terminals.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { readBends } from './bends.ts';
import type { ListPartProps } from './FittingItems.tsx';

const NONE = '';

export function ConnectForm({ plan, onSaid }: ListPartProps) {
  const desk = useDeskStore();
  const showLength = useDesk((state) => state.plan.settings.showLength);
  const [fromKey, setFrom] = useState(NONE);
  const [toKey, setTo] = useState(NONE);
  const [bendText, setBendText] = useState('');
  const [error, setError] = useState<string | null>(null);
  const id = useId();
  const { list } = words;

  const terminals = terminalOptions(plan);
  const from = terminals.find(({ value }) => value === fromKey);
  const others = terminals.filter(({ ref }) => ref.fittingId !== from?.ref.fittingId);
  const to = others.find(({ value }) => value === toKey);
  const choose = { value: NONE, text: list.choose };

  const send = () => {
    if (from === undefined || to === undefined) {
      setError(list.chooseBoth);
      return;
    }
    const read = readBends(bendText, showLength === 'm' ? 'm' : 'in');
    if (!read.ok) {
      setError(read.error);
      return;
    }
    const result = connect(desk, from.ref, to.ref, read.bends, null, '');
    if (!result.ok) {
      setError(words.refusals[result.reason]);
      return;
    }
    setError(null);
    setFrom(NONE);
    setTo(NONE);
    setBendText('');
    onSaid(list.connected(nameOfId(wholePlan(desk.getState()), result.runId) ?? ''));
  };

  return (
    <form
      className="list-form"
      aria-label={list.connect}
      onSubmit={(event) => {
        event.preventDefault();
        send();
      }}
    >
      <h3>{list.connect}</h3>
      <Choice label={list.from} value={from?.value ?? NONE} options={[choose, ...terminals]} onTake={setFrom} />
      <Choice label={list.to} value={to?.value ?? NONE} options={[choose, ...others]} onTake={setTo} />
      <div className="field">
        <label htmlFor={id}>{list.bends}</label>
        <textarea
          id={id}
          rows={3}
          value={bendText}
          aria-describedby={`${id}-hint`}
          aria-invalid={error !== null}
          onChange={(event) => setBendText(event.target.value)}
        />
        <span className="hint" id={`${id}-hint`}>
          {list.bendsHint}
        </span>
      </div>
      {error === null ? null : (
        <p className="error" role="alert">
          {error}
        </p>
      )}
      <button type="submit" className="strong">
        {list.connectDo}
      </button>
    </form>
  );
}
