import { memo } from 'react';
import type { RunAnswer } from '../../assess/answer.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/answer.ts';
import { nameOfId, type Units } from '../../words/index.ts';
import { useFirst } from '../controls/useFirst.tsx';
import { Term, TermNote } from '../help/Term.tsx';
import { useTerm } from '../help/useTerm.ts';
import { useDesk, useUnits } from '../useDesk.ts';
import { Figure } from '../why/Figure.tsx';
import { RowName } from './RowName.tsx';

const dash = '–';

interface RunRowsProps {
  run: RunAnswer;
  name: string;
  isSelected: boolean;
  /** What bound the choice takes its time to be worked out: not while a finger drags. */
  hasGoverns: boolean;
  units: Units;
}

const RunRows = memo(function RunRows({ run, name, isSelected, hasGoverns, units }: RunRowsProps) {
  const { columns } = words.summary;
  const of = (what: string) => `${what}, ${name}`;
  return (
    <tbody className={isSelected ? 'row-selected' : undefined} data-run={run.runId}>
      <RowName kind="run" id={run.runId} name={name} isSelected={isSelected} columns={4} />
      <tr>
        <td data-field="gauge">
          <Figure why={run.whySize} title={of(columns.gauge)}>
            {run.gauge === null ? dash : units.gauge(run.gauge)}
          </Figure>
          {!hasGoverns || run.governs === null ? null : (
            <span className="cell-note">{words.governsRun[run.governs]}</span>
          )}
        </td>
        <td data-field="length">
          <Figure why={run.whyLength} title={of(columns.length)}>
            {units.length(run.length.lengthM)}
          </Figure>
          <span className="cell-note">
            {run.length.origin === 'taped' ? words.summary.taped : words.fittings.origins.drawn}
          </span>
        </td>
        <td data-field="drop">
          <Figure why={run.whyDrop} title={of(columns.drop)}>
            {run.dropV === null ? dash : units.voltage(run.dropV)}
          </Figure>
          {run.dropPercent === null ? null : <span className="cell-note">{units.percent(run.dropPercent)}</span>}
        </td>
        <td data-field="current">
          <Figure why={run.whyAmpacity} title={of(columns.current)}>
            {run.fullA === null ? dash : units.current(run.fullA)}
          </Figure>
          {run.ampacityA === null ? null : (
            <span className="cell-note">{words.summary.mayCarry(units.current(run.ampacityA))}</span>
          )}
        </td>
      </tr>
    </tbody>
  );
});

/** Each run: gauge, length, drop, current. */
export const RunTable = memo(function RunTable({ runs, plan }: { runs: readonly RunAnswer[]; plan: Plan }) {
  const help = useTerm();
  const units = useUnits();
  // heard once for the table: a listener for each row would be called with every move of a finger
  const selectedId = useDesk((state) => state.selection?.id);
  const isStill = useDesk((state) => state.draft === null);
  const { columns } = words.summary;
  const { shown, more } = useFirst(runs, ({ runId, unprotectedM }) => unprotectedM > 0 || runId === selectedId);
  if (runs.length === 0) return null;
  return (
    <>
      <table className="answer-table run-table">
        <caption>
          <Term id="run" help={help} isName word={words.summary.runs} />
        </caption>
        <thead>
          <tr>
            <th scope="col">
              <Term id="gauge" help={help} isName word={columns.gauge} />
            </th>
            {[columns.length, columns.drop].map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
            <th scope="col">
              <Term id="ampacity" help={help} isName word={columns.current} />
            </th>
          </tr>
          {help.open === null ? null : (
            <tr>
              <td colSpan={4}>
                <TermNote help={help} />
              </td>
            </tr>
          )}
        </thead>
        {shown.map((run) => (
          <RunRows
            key={run.runId}
            run={run}
            name={nameOfId(plan, run.runId) ?? ''}
            isSelected={run.runId === selectedId}
            hasGoverns={isStill}
            units={units}
          />
        ))}
      </table>
      {more}
    </>
  );
});
