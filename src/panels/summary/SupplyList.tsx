import { memo } from 'react';
import type { SupplyAnswer } from '../../assess/answer.ts';
import type { Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId, type Units } from '../../words/index.ts';
import { useUnits } from '../useDesk.ts';
import { Figure } from '../why/Figure.tsx';

interface Row {
  readonly label: string;
  readonly value: string;
  readonly why: string | null;
  readonly note?: string;
}

/** A row, where there is a figure. */
const row = (label: string, value: number | null, say: (value: number) => string, why: string | null = null): Row[] =>
  value === null ? [] : [{ label, value: say(value), why }];

function rowsOf(supply: SupplyAnswer, plan: Plan, units: Units): Row[] {
  const { rows, saturated } = words.supplied;
  const { minutes } = words.shorts;
  const nameOf = (id: string): string => nameOfId(plan, id) ?? '';
  return [
    ...row(rows.postsOff, supply.postsV.off, units.voltage),
    ...row(rows.postsIdle, supply.postsV.idle, units.voltage),
    ...row(rows.postsCruise, supply.postsV.cruise, units.voltage),
    ...row(rows.meanOff, supply.meanOffA, units.current),
    ...row(rows.meanRunning, supply.meanRunningA, units.current),
    ...supply.groups.flatMap(({ fittingIds, minutesOff, whyPlay }) =>
      row(
        rows.minutes(fittingIds.map(nameOf).join(' + ')),
        minutesOff,
        (value) => minutes(units.number(value, 0)),
        whyPlay,
      ),
    ),
    ...supply.alternators.flatMap((one) => {
      const name = nameOf(one.fittingId);
      const withNote = (of: Row[], isSaturated: boolean | null): Row[] =>
        isSaturated === true ? of.map((each) => ({ ...each, note: saturated })) : of;
      return [
        ...withNote(row(rows.idleHot(name), one.idleHotA, units.current, one.whyIdleHot), one.saturatedIdle),
        ...withNote(row(rows.cruiseHot(name), one.cruiseHotA, units.current, one.whyCruiseHot), one.saturatedCruise),
      ];
    }),
    ...row(rows.deficitIdle, supply.deficitIdleA, units.current, supply.whyDeficitIdle),
    ...row(rows.deficitCruise, supply.deficitCruiseA, units.current, supply.whyDeficitCruise),
  ];
}

/** What music asks of the batteries and alternators, and how long it can go on. */
export const SupplyList = memo(function SupplyList({ supply, plan }: { supply: SupplyAnswer; plan: Plan }) {
  const units = useUnits();
  const { supplied } = words;
  const rows = rowsOf(supply, plan, units);
  if (rows.length === 0) return null;
  return (
    <details className="fold" data-fold="supply">
      <summary>{supplied.title}</summary>
      <p className="hint">{supplied.lead}</p>
      <dl className="assumptions">
        {rows.map(({ label, value, why, note }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <Figure why={why} title={label}>
                {value}
              </Figure>
              {note === undefined ? null : <span className="cell-note">{note}</span>}
            </dd>
          </div>
        ))}
      </dl>
      {supply.alternators.length === 0 ? <p className="hint">{supplied.noAlternator}</p> : null}
    </details>
  );
});
