import { fittingById, runById } from '../../plan/byId.ts';
import './inspector.css';
import { memo } from 'react';
import { runAct } from '../../desk/acts/index.ts';
import { lockSelected } from '../../desk/acts/lockSelected.ts';
import { removeSelected } from '../../desk/acts/removeSelected.ts';
import type { Selection } from '../../desk/desk.ts';
import { select } from '../../desk/selection.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { runTitle } from '../../words/index.ts';
import { shownName } from '../../words/names.ts';
import { Tick } from '../controls/Tick.tsx';
import { useDesk, useDeskStore, usePlan } from '../useDesk.ts';
import { BendFields } from './BendFields.tsx';
import { FittingFields } from './FittingFields.tsx';
import { RunFields } from './RunFields.tsx';

function titleOf(plan: Plan, selection: Selection): string {
  if (selection.kind === 'fitting') {
    const fitting = fittingById(plan, selection.id);
    return fitting === undefined ? '' : shownName(plan, fitting);
  }
  const run = runById(plan, selection.id);
  if (run === undefined) return '';
  const title = runTitle(plan, run);
  return selection.kind === 'run' ? title : words.inspector.bend(selection.index + 1, title);
}

function isLockedNow(plan: Plan, { kind, id }: Selection): boolean {
  return (kind === 'fitting' ? fittingById(plan, id)?.locked : runById(plan, id)?.locked) ?? false;
}

function Fields({ plan, selection }: { plan: Plan; selection: Selection }) {
  if (selection.kind === 'fitting') {
    const fitting = fittingById(plan, selection.id);
    return fitting === undefined ? null : <FittingFields key={fitting.id} fitting={fitting} plan={plan} />;
  }
  const run = runById(plan, selection.id);
  if (run === undefined) return null;
  if (selection.kind === 'run') return <RunFields key={run.id} run={run} plan={plan} />;
  return <BendFields key={`${run.id}.${selection.index}`} run={run} index={selection.index} />;
}

/** What is selected, all of it, to be edited. */
function Inspector() {
  const desk = useDeskStore();
  const plan = usePlan();
  const selection = useDesk((state) => state.selection);
  if (selection === null) return null;
  const { inspector } = words;
  const isLocked = isLockedNow(plan, selection);
  return (
    <section className="inspector" aria-label={inspector.label} data-selected={selection.id}>
      <header className="inspector-head">
        <h2>{titleOf(plan, selection)}</h2>
        <button type="button" onClick={() => select(desk, null)}>
          {words.topbar.close}
        </button>
      </header>
      <Fields plan={plan} selection={selection} />
      <div className="inspector-foot">
        {selection.kind === 'bend' ? null : (
          <Tick
            label={inspector.locked}
            hint={inspector.lockedHint}
            checked={isLocked}
            onTake={() => runAct(desk, lockSelected)}
          />
        )}
        <button type="button" className="danger" disabled={isLocked} onClick={() => runAct(desk, removeSelected)}>
          {selection.kind === 'bend' ? inspector.removeBend : inspector.remove}
        </button>
      </div>
    </section>
  );
}

export default memo(Inspector);
