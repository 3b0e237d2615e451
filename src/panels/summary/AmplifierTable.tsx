import { memo } from 'react';
import type { AmplifierAnswer } from '../../assess/answer.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/answer.ts';
import { nameOfId, type Units } from '../../words/index.ts';
import { useFirst } from '../controls/useFirst.tsx';
import { useDesk, useUnits } from '../useDesk.ts';
import { Figure } from '../why/Figure.tsx';
import { RowName } from './RowName.tsx';

const dash = '–';

interface AmplifierRowsProps {
  amplifier: AmplifierAnswer;
  name: string;
  isSelected: boolean;
  units: Units;
}

const AmplifierRows = memo(function AmplifierRows({ amplifier, name, isSelected, units }: AmplifierRowsProps) {
  const { columns } = words.summary;
  const voltage = (v: number | null) => (v === null ? dash : units.voltage(v));
  const share = (percent: number | null) =>
    percent === null ? null : <span className="cell-note">{units.percent(percent)}</span>;
  return (
    <tbody className={isSelected ? 'row-selected' : undefined} data-amplifier={amplifier.fittingId}>
      <RowName kind="fitting" id={amplifier.fittingId} name={name} isSelected={isSelected} columns={4} />
      <tr>
        <td data-field="current">
          <Figure why={amplifier.whyCurrent} title={`${columns.current}, ${name}`}>
            {amplifier.fullA === null ? dash : units.current(amplifier.fullA)}
          </Figure>
        </td>
        <td data-field="cables">
          <Figure why={amplifier.whyDrop} title={`${columns.drop}, ${name}`}>
            {voltage(amplifier.dropCablesV)}
          </Figure>
          {share(amplifier.dropCablesPercent)}
        </td>
        <td data-field="whole">
          <Figure why={null} title={columns.whole}>
            {voltage(amplifier.dropWholeV)}
          </Figure>
          {share(amplifier.dropWholePercent)}
        </td>
        <td data-field="voltage">
          <Figure why={null} title={columns.voltage}>
            {voltage(amplifier.terminalV)}
          </Figure>
        </td>
      </tr>
    </tbody>
  );
});

interface AmplifierTableProps {
  amplifiers: readonly AmplifierAnswer[];
  plan: Plan;
}

/** Each amplifier: current, drop over the cables, over the whole way, and what is left at its terminals. */
export const AmplifierTable = memo(function AmplifierTable({ amplifiers, plan }: AmplifierTableProps) {
  const units = useUnits();
  const selectedId = useDesk((state) => state.selection?.id);
  const { columns } = words.summary;
  const { shown, more } = useFirst(amplifiers, ({ fittingId }) => fittingId === selectedId);
  if (amplifiers.length === 0) return null;
  return (
    <>
      <table className="answer-table">
        <caption>{words.summary.amplifiers}</caption>
        <thead>
          <tr>
            {[columns.current, columns.cables, columns.whole, columns.voltage].map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        {shown.map((amplifier) => (
          <AmplifierRows
            key={amplifier.fittingId}
            amplifier={amplifier}
            name={nameOfId(plan, amplifier.fittingId) ?? ''}
            isSelected={amplifier.fittingId === selectedId}
            units={units}
          />
        ))}
      </table>
      {more}
    </>
  );
});
