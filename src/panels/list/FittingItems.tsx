import { runAct } from '../../desk/acts/index.ts';
import { removeSelected } from '../../desk/acts/removeSelected.ts';
import { select } from '../../desk/selection.ts';
import type { Fitting, Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { useFirst } from '../controls/useFirst.tsx';
import { axesOf } from '../inspector/PlaceFields.tsx';
import { useDesk, useDeskStore, useUnits } from '../useDesk.ts';
import { ProposedActs, ProposedMark, useIsProposed, useProposedCount } from './Proposed.tsx';

export interface ListPartProps {
  plan: Plan;
  /** Says what came of an act, once. */
  onSaid: (said: string) => void;
}

export interface ItemsProps extends ListPartProps {
  /** Brings the fields of what was just selected into view. */
  onEdit: () => void;
}

function FittingItem({ fitting, name, onSaid, onEdit }: { fitting: Fitting; name: string } & Omit<ItemsProps, 'plan'>) {
  const desk = useDeskStore();
  const units = useUnits();
  const isSelected = useDesk((state) => state.selection?.id === fitting.id);
  const isProposed = useIsProposed(fitting.id);
  const { list, fittings, inspector } = words;
  const sheet = useDesk(({ plan }) => plan.sheets.find(({ id }) => id === fitting.sheetId) ?? plan.sheets[0]);
  const axes = sheet === undefined ? 'vehicle' : axesOf(sheet);
  const pick = () => select(desk, { kind: 'fitting', id: fitting.id });
  return (
    <li className={isSelected ? 'list-item list-item-selected' : 'list-item'} data-fitting={fitting.id}>
      <span className="list-name">
        {name} {isProposed ? <ProposedMark /> : null}
      </span>
      <span className="hint">
        {fittings.kinds[fitting.kind]}, {list.at[axes](units.length(fitting.at.xM), units.length(fitting.at.yM))}
      </span>
      <span className="list-acts">
        <button
          type="button"
          aria-label={list.edit(name)}
          onClick={() => {
            pick();
            onEdit();
          }}
        >
          {list.editShort}
        </button>
        {isProposed ? (
          <ProposedActs id={fitting.id} name={name} onSaid={onSaid} />
        ) : (
          <button
            type="button"
            aria-label={`${inspector.remove} ${name}`}
            disabled={fitting.locked}
            onClick={() => {
              pick();
              if (runAct(desk, removeSelected)) onSaid(list.removed(name));
            }}
          >
            {inspector.remove}
          </button>
        )}
      </span>
    </li>
  );
}

export function FittingItems({ plan, onSaid, onEdit }: ItemsProps) {
  const proposed = useProposedCount('fitting');
  const selectedId = useDesk((state) => state.selection?.id);
  const { shown, more } = useFirst(plan.fittings, ({ id }) => id === selectedId);
  return (
    <>
      <h3>{words.list.fittings(plan.fittings.length - proposed, proposed)}</h3>
      <ul className="list-items">
        {shown.map((fitting) => (
          <FittingItem
            key={fitting.id}
            fitting={fitting}
            name={nameOfId(plan, fitting.id) ?? ''}
            onSaid={onSaid}
            onEdit={onEdit}
          />
        ))}
      </ul>
      {more}
    </>
  );
}
