import { runAct } from '../../desk/acts/index.ts';
import { removeSelected } from '../../desk/acts/removeSelected.ts';
import { select } from '../../desk/selection.ts';
import type { Run, TerminalRef } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId, runTitle } from '../../words/index.ts';
import { useFirst } from '../controls/useFirst.tsx';
import { useDesk, useDeskStore } from '../useDesk.ts';
import type { ItemsProps } from './FittingItems.tsx';
import { ProposedActs, ProposedMark, useIsProposed, useProposedCount } from './Proposed.tsx';

function RunItem({ run, plan, onSaid, onEdit }: { run: Run } & ItemsProps) {
  const desk = useDeskStore();
  const isSelected = useDesk((state) => state.selection?.id === run.id);
  const isProposed = useIsProposed(run.id);
  const { list, fittings, inspector } = words;
  const title = runTitle(plan, run);
  const end = ({ fittingId, terminal }: TerminalRef) => fittings.terminalOf(nameOfId(plan, fittingId) ?? '', terminal);
  const pick = () => select(desk, { kind: 'run', id: run.id });
  return (
    <li className={isSelected ? 'list-item list-item-selected' : 'list-item'} data-run-item={run.id}>
      <span className="list-name">
        {title} {isProposed ? <ProposedMark /> : null}
      </span>
      <span className="hint">
        {fittings.runKinds[run.kind]}, {list.joins(end(run.from), end(run.to))}, {inspector.bends(run.bends.length)}
      </span>
      <span className="list-acts">
        <button
          type="button"
          aria-label={list.edit(title)}
          onClick={() => {
            pick();
            onEdit();
          }}
        >
          {list.editShort}
        </button>
        {isProposed ? (
          <ProposedActs id={run.id} name={title} onSaid={onSaid} />
        ) : (
          <button
            type="button"
            aria-label={`${inspector.remove} ${title}`}
            disabled={run.locked}
            onClick={() => {
              pick();
              if (runAct(desk, removeSelected)) onSaid(list.removed(title));
            }}
          >
            {inspector.remove}
          </button>
        )}
      </span>
    </li>
  );
}

export function RunItems({ plan, onSaid, onEdit }: ItemsProps) {
  const proposed = useProposedCount('run');
  const selectedId = useDesk((state) => state.selection?.id);
  const { shown, more } = useFirst(plan.runs, ({ id }) => id === selectedId);
  return (
    <>
      <h3>{words.list.runs(plan.runs.length - proposed, proposed)}</h3>
      <ul className="list-items">
        {shown.map((run) => (
          <RunItem key={run.id} run={run} plan={plan} onSaid={onSaid} onEdit={onEdit} />
        ))}
      </ul>
      {more}
    </>
  );
}
