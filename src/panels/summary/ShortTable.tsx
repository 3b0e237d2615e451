import { memo } from 'react';
import type { ShortAnswer } from '../../assess/answer.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId, type Units } from '../../words/index.ts';
import { useFirst } from '../controls/useFirst.tsx';
import { useDesk, useUnits } from '../useDesk.ts';
import { Figure } from '../why/Figure.tsx';
import { RowName } from './RowName.tsx';

const LONG_S = 120;

/** Two figures are all that an estimate bears. */
function timeSaid(seconds: number, units: Units): string {
  const { shorts } = words;
  if (seconds >= LONG_S) return shorts.minutes(units.number(seconds / 60, 0));
  return shorts.seconds(units.number(Number(seconds.toPrecision(2)), 3));
}

/** The device that clears it, or that would have to. */
function fuseOf({ clearedBy }: ShortAnswer, plan: Plan): string | null {
  if (clearedBy === null) return null;
  const owner = nameOfId(plan, clearedBy.fittingId);
  if (owner === null) return null;
  return clearedBy.terminal === null ? owner : words.fittings.terminalOf(owner, clearedBy.terminal);
}

/** What else is to be known: when it is damaged, who still feeds it, and what no fuse sees. */
function remarksOf(short: ShortAnswer, plan: Plan, units: Units): string[] {
  const { shorts } = words;
  const { damageS, harm, partial, residualA, unprotected } = short;
  // ahead of every fuse that is said already
  const stillFedBy = unprotected ? [] : short.stillFedBy;
  const sources = stillFedBy.map((id) => nameOfId(plan, id) ?? '').join(', ');
  return [
    ...(harm === 'none' || damageS === null ? [] : [shorts.damaged(timeSaid(damageS, units))]),
    ...(stillFedBy.length === 0 ? [] : [shorts.stillFed(units.current(residualA), sources)]),
    ...(partial === null || (partial.settledC !== null && partial.settledC <= partial.limitC)
      ? []
      : [
          partial.settledC === null
            ? shorts.partialRunsAway(units.current(partial.currentA))
            : shorts.partial(
                units.current(partial.currentA),
                units.temperature(partial.settledC),
                units.temperature(partial.limitC),
              ),
        ]),
  ];
}

/** It does harm before a fuse opens, if one does. */
const isHarmed = ({ unprotected, harm }: ShortAnswer): boolean => unprotected || harm !== 'none';

interface ShortRowsProps {
  short: ShortAnswer;
  plan: Plan;
  isSelected: boolean;
  units: Units;
}

const ShortRows = memo(function ShortRows({ short, plan, isSelected, units }: ShortRowsProps) {
  const { shorts } = words;
  const name = nameOfId(plan, short.runId) ?? '';
  const fuse = fuseOf(short, plan);
  const of = (what: string) => `${what}, ${name}`;
  const opens =
    short.slowestS === null
      ? short.withoutLimits
        ? shorts.unknown
        : shorts.never
      : shorts.within(timeSaid(short.slowestS, units));
  return (
    <tbody className={isSelected ? 'row-selected' : undefined} data-short={short.runId} data-harm={short.harm}>
      <RowName kind="run" id={short.runId} name={name} isSelected={isSelected} columns={3} />
      <tr>
        <td data-field="current">
          <Figure why={short.whyLowest} title={of(shorts.columns.current)}>
            {shorts.from(units.current(short.lowestA), units.current(short.highestA))}
          </Figure>
        </td>
        <td data-field="opens">
          <Figure why={short.whySlowest} title={of(shorts.columns.opens)}>
            {short.unprotected ? shorts.never : opens}
          </Figure>
          {fuse === null || short.unprotected ? null : <span className="cell-note">{fuse}</span>}
        </td>
        <td data-field="heat">
          <Figure why={short.whyConductor} title={of(shorts.columns.heat)}>
            {short.melts
              ? shorts.melts
              : short.conductorC === null
                ? words.summary.noFigure
                : units.temperature(short.conductorC)}
          </Figure>
          {short.limitC === null || short.melts ? null : (
            <span className="cell-note">{shorts.ofLimit(units.temperature(short.limitC))}</span>
          )}
        </td>
      </tr>
      <tr>
        <td colSpan={3} className="short-outcome" data-harmed={isHarmed(short)}>
          {[shorts.outcome(short, fuse), ...remarksOf(short, plan, units)].join(' ')}
        </td>
      </tr>
    </tbody>
  );
});

/** Each live cable: what flows into a dead short on it, when its fuse opens, and how hot it is by then. */
export const ShortTable = memo(function ShortTable({
  shorts: list,
  plan,
}: {
  shorts: readonly ShortAnswer[];
  plan: Plan;
}) {
  const units = useUnits();
  const selectedId = useDesk((state) => state.selection?.id);
  const { shorts } = words;
  const { shown, more } = useFirst(list, (short) => isHarmed(short) || short.runId === selectedId);
  if (list.length === 0) return null;
  return (
    <details className="fold" data-fold="shorts">
      <summary>{shorts.title}</summary>
      <p className="hint">{shorts.lead}</p>
      <table className="answer-table">
        <thead>
          <tr>
            {[shorts.columns.current, shorts.columns.opens, shorts.columns.heat].map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
        {shown.map((short) => (
          <ShortRows
            key={short.runId}
            short={short}
            plan={plan}
            isSelected={short.runId === selectedId}
            units={units}
          />
        ))}
      </table>
      {more}
    </details>
  );
});
