import { memo } from 'react';
import type { FuseAnswer } from '../../assess/answer.ts';
import type { Plan } from '../../plan/schema.ts';
import { familyName, words } from '../../words/answer.ts';
import { nameOfId, type Units } from '../../words/index.ts';
import { useFirst } from '../controls/useFirst.tsx';
import { Term, TermNote } from '../help/Term.tsx';
import { useTerm } from '../help/useTerm.ts';
import { useDesk, useUnits } from '../useDesk.ts';
import { Figure } from '../why/Figure.tsx';
import { RowName } from './RowName.tsx';

const dash = '–';

interface FuseRowsProps {
  fuse: FuseAnswer;
  name: string;
  family: string | null;
  isSelected: boolean;
  units: Units;
}

const FuseRows = memo(function FuseRows({ fuse, name, family, isSelected, units }: FuseRowsProps) {
  const { columns } = words.summary;
  const current = (a: number | null) => (a === null ? dash : units.current(a));
  return (
    <tbody
      className={isSelected ? 'row-selected' : undefined}
      data-fuse={fuse.fittingId}
      data-terminal={fuse.terminal ?? undefined}
    >
      <RowName kind="fitting" id={fuse.fittingId} name={name} isSelected={isSelected} columns={3} />
      <tr>
        <td data-field="rating">
          <Figure why={fuse.why} title={`${columns.rating}, ${name}`}>
            {current(fuse.ratingA)}
          </Figure>
          {fuse.chosen ? null : <span className="cell-note">{words.governsRun.fixed}</span>}
        </td>
        <td data-field="needed">
          <Figure why={null} title={columns.needed}>
            {/* one that is joined to nothing needs no rating */}
            {current(fuse.neededA === 0 ? null : fuse.neededA)}
          </Figure>
        </td>
        <td data-field="allowed">
          <Figure why={null} title={columns.allowed}>
            {current(fuse.ceilingA)}
          </Figure>
        </td>
      </tr>
      {family === null ? null : (
        <tr>
          <td colSpan={3} className="cell-note">
            {family}
          </td>
        </tr>
      )}
    </tbody>
  );
});

/** Each fuse: its rating between what the amplifiers need and what the cable allows. */
export const FuseTable = memo(function FuseTable({ fuses, plan }: { fuses: readonly FuseAnswer[]; plan: Plan }) {
  const help = useTerm();
  const units = useUnits();
  const selectedId = useDesk((state) => state.selection?.id);
  const { columns } = words.summary;
  const { shown, more } = useFirst(fuses, ({ fittingId }) => fittingId === selectedId);
  if (fuses.length === 0) return null;
  return (
    <>
      <table className="answer-table">
        <caption>
          <Term id="branchFuse" help={help} isName word={words.summary.fuses} />
        </caption>
        <thead>
          <tr>
            {[columns.rating, columns.needed, columns.allowed].map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
          {help.open === null ? null : (
            <tr>
              <td colSpan={3}>
                <TermNote help={help} />
              </td>
            </tr>
          )}
        </thead>
        {shown.map((fuse) => {
          const owner = nameOfId(plan, fuse.fittingId) ?? '';
          const name = fuse.terminal === null ? owner : words.fittings.terminalOf(owner, fuse.terminal);
          const family = fuse.family === null ? null : familyName(plan, fuse.family);
          return (
            <FuseRows
              key={`${fuse.fittingId}.${fuse.terminal ?? ''}`}
              fuse={fuse}
              name={name}
              family={family}
              isSelected={fuse.fittingId === selectedId}
              units={units}
            />
          );
        })}
      </table>
      {more}
    </>
  );
});
