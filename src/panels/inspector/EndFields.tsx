import { useState } from 'react';
import { connectRefusal } from '../../desk/connect.ts';
import { commit } from '../../desk/edit.ts';
import { reconnectRun } from '../../plan/edits/reconnectRun.ts';
import type { Plan, Run } from '../../plan/schema.ts';
import { terminalKey } from '../../plan/terminals.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { terminalOptions } from '../terminals.ts';
import { useDeskStore } from '../useDesk.ts';

/** The two terminals a run joins. */
export function EndFields({ run, plan }: { run: Run; plan: Plan }) {
  const desk = useDeskStore();
  const [error, setError] = useState<string | null>(null);
  const terminals = terminalOptions(plan);
  const { inspector, refusals } = words;
  const reconnect = (end: 'from' | 'to', key: string) => {
    const ref = terminals.find(({ value }) => value === key)?.ref;
    if (ref === undefined) return;
    const others = { ...plan, runs: plan.runs.filter(({ id }) => id !== run.id) };
    const reason = end === 'from' ? connectRefusal(others, ref, run.to) : connectRefusal(others, run.from, ref);
    setError(reason === null ? null : refusals[reason]);
    if (reason === null) commit(desk, 'reconnect', (before) => reconnectRun(before, run.id, end, ref));
  };
  return (
    <>
      <Choice
        label={inspector.from}
        value={terminalKey(run.from)}
        options={terminals}
        onTake={(key) => reconnect('from', key)}
      />
      <Choice
        label={inspector.to}
        value={terminalKey(run.to)}
        options={terminals}
        onTake={(key) => reconnect('to', key)}
      />
      {error === null ? null : (
        <p className="error" role="alert">
          {error}
        </p>
      )}
    </>
  );
}
