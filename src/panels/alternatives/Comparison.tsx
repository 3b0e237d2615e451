import type { Assessment, Figure } from '../../assess/answer.ts';
import { answerOf } from '../../desk/answer.ts';
import type { Alternative } from '../../plan/alternatives/alternative.ts';
import type { Plan } from '../../plan/schema.ts';
import { headlineOf } from '../../words/answer.ts';
import { words } from '../../words/full.ts';
import { nameOfId, type Units, unitsFor } from '../../words/index.ts';
import { SeverityMark } from '../severity/SeverityMark.tsx';
import { figureSaid } from '../summary/figureSaid.ts';
import { VERDICT_SEVERITY } from '../summary/Headline.tsx';
import { FindingChanges } from './FindingChanges.tsx';

interface Column {
  readonly id: string;
  readonly name: string;
  readonly what: string;
  readonly plan: Plan;
  readonly answer: Assessment;
  readonly units: Units;
}

interface Row {
  readonly key: string;
  readonly label: string;
  said(column: Column): string;
  /** The larger the worse; null where a figure is neither good nor bad by itself, or where there is none. */
  weigh?(column: Column): number | null;
}

/** From the calmest to the gravest; among those of one kind the count decides. */
const GRAVITY = { empty: 0, nothing: 0, provisional: 1, fix: 2, stop: 3 } as const;
const MOST_FINDINGS = 1e6;

const verdictSaid = ({ answer, plan }: Column): string => {
  const { whole, parted } = words.alternatives.longest;
  return headlineOf(answer, plan).replace(whole, parted);
};

const numberOf = ({ value }: Figure): number | null => (typeof value === 'number' ? value : null);

const NO_BREAK = '\u00a0';

const fusesSaid = ({ answer, units }: Column): string =>
  units.list(
    answer.fuses.map(({ ratingA }) =>
      ratingA === null ? words.summary.noFigure : units.current(ratingA).replace(' ', NO_BREAK),
    ),
  );

const voltsAt = ({ answer }: Column, fittingId: string): number | null =>
  answer.amplifiers.find((one) => one.fittingId === fittingId)?.terminalV ?? null;

function rowsOf({ plan, answer }: Column): Row[] {
  const { alternatives, summary } = words;
  const figure = (key: keyof Assessment['figures'], label: string): Row => ({
    key,
    label,
    said: (column) => figureSaid(column.answer.figures[key], column.units),
  });
  const lessIsBetter = (key: keyof Assessment['figures'], label: string): Row => ({
    ...figure(key, label),
    weigh: (column) => numberOf(column.answer.figures[key]),
  });
  return [
    {
      key: 'verdict',
      label: alternatives.verdict,
      said: verdictSaid,
      weigh: ({ answer: { headline } }) => GRAVITY[headline.kind] * MOST_FINDINGS + headline.count,
    },
    figure('feed', summary.feed),
    figure('mainFuse', summary.mainFuse),
    lessIsBetter('worstDrop', summary.worstDrop),
    lessIsBetter('unprotected', summary.unprotected),
    { key: 'fuses', label: alternatives.fuses, said: fusesSaid },
    ...answer.amplifiers.map(
      ({ fittingId }): Row => ({
        key: fittingId,
        label: alternatives.terminal(nameOfId(plan, fittingId) ?? fittingId),
        said: (column) => {
          const volts = voltsAt(column, fittingId);
          return volts === null ? words.summary.noFigure : column.units.voltage(volts);
        },
        weigh: (column) => {
          const volts = voltsAt(column, fittingId);
          return volts === null ? null : -volts;
        },
      }),
    ),
  ];
}

const columnOf = (id: string, name: string, what: string, plan: Plan): Column => ({
  ...{ id, name, what, plan },
  answer: answerOf(plan),
  units: unitsFor(plan),
});

type Change = 'same' | 'better' | 'worse' | 'changed';

/** How a column differs from the plan in one row, as far as can be read: what is shown alike is the same. */
function changeOf(row: Row, present: Column, column: Column): Change {
  if (row.said(column) === row.said(present)) return 'same';
  const [before, now] = [row.weigh?.(present) ?? null, row.weigh?.(column) ?? null];
  if (before === null || now === null || before === now) return 'changed';
  return now < before ? 'better' : 'worse';
}

/** A figure, or the verdict with its mark; behind it, in a word, whether that is better or worse than the plan. */
function Said({ row, column, change }: { row: Row; column: Column; change: Change }) {
  const { better, worse } = words.alternatives;
  const { kind } = column.answer.headline;
  const severity = row.key === 'verdict' ? VERDICT_SEVERITY[kind] : null;
  return (
    <>
      {severity === null ? null : <SeverityMark severity={severity} wordless />}
      <span>{row.said(column)}</span>
      {change === 'better' || change === 'worse' ? (
        <span className="change-word">{change === 'better' ? better : worse}</span>
      ) : null}
    </>
  );
}

const verdictClass = (row: Row, { answer }: Column): string =>
  row.key === 'verdict' ? ` verdict headline-${answer.headline.kind}` : '';

/** The plan and its alternatives, a column each; what differs from the plan stands out. */
export function Comparison(props: {
  plan: Plan;
  alternatives: readonly Alternative[];
  onAccept: (plan: Plan) => void;
}) {
  const { plan, alternatives, onAccept } = props;
  const say = words.alternatives;
  const present = columnOf('present', say.present, '', plan);
  const others = alternatives.flatMap(({ id, plan: other }) =>
    other === null ? [] : [columnOf(id, say.names[id], say.what[id], other)],
  );
  const missing = alternatives.filter((one) => one.plan === null);
  return (
    <>
      <table>
        <thead>
          <tr>
            <th scope="col">{say.figure}</th>
            {[present, ...others].map(({ id, name, what }) => (
              <th key={id} scope="col">
                {name}
                {what === '' ? null : <span className="hint">{what}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rowsOf(present).map((row) => {
            return (
              <tr key={row.key}>
                <th scope="row">{row.label}</th>
                {[present, ...others].map((column) => {
                  const change = changeOf(row, present, column);
                  return (
                    <td key={column.id} className={`${change}${verdictClass(row, column)}`} data-column={column.name}>
                      <div>
                        <Said row={row} column={column} change={change} />
                      </div>
                    </td>
                  );
                })}
              </tr>
            );
          })}
          <tr className="alternatives-change">
            <th scope="row">{say.found}</th>
            <td />
            {others.map(({ id, name, plan: there, answer }) => (
              <td key={id} data-column={name}>
                <FindingChanges from={present.answer} to={answer} plan={there} />
              </td>
            ))}
          </tr>
          <tr className="alternatives-change">
            <th scope="row">{say.gone}</th>
            <td />
            {others.map(({ id, name, answer }) => (
              <td key={id} data-column={name}>
                <FindingChanges from={answer} to={present.answer} plan={plan} />
              </td>
            ))}
          </tr>
          <tr>
            <th scope="row">
              <span className="sr-only">{say.accept}</span>
            </th>
            <td />
            {others.map((column) => (
              <td key={column.id} data-column={column.name}>
                <button
                  type="button"
                  className="strong"
                  aria-label={say.acceptOf(column.name)}
                  onClick={() => onAccept(column.plan)}
                >
                  {say.accept}
                  <span className="alternatives-accepted">
                    : <span>{column.name}</span>
                  </span>
                </button>
              </td>
            ))}
          </tr>
        </tbody>
      </table>
      {missing.map(({ id }) => (
        <p key={id} className="hint">
          <b>{say.names[id]}:</b> {say.none[id]}
        </p>
      ))}
    </>
  );
}
