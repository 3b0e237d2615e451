import type { Assessment } from '../../assess/answer.ts';
import { answerOf } from '../../desk/answer.ts';
import type { Alternative } from '../../plan/alternatives/alternative.ts';
import type { Plan } from '../../plan/schema.ts';
import { headlineOf } from '../../words/answer.ts';
import { words } from '../../words/full.ts';
import { nameOfId, type Units, unitsFor } from '../../words/index.ts';
import { figureSaid } from '../summary/figureSaid.ts';
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
}

const fusesSaid = ({ answer, units }: Column): string =>
  units.list(answer.fuses.map(({ ratingA }) => (ratingA === null ? words.summary.noFigure : units.current(ratingA))));

function rowsOf({ plan, answer }: Column): Row[] {
  const { alternatives, summary } = words;
  const figure = (key: keyof Assessment['figures'], label: string): Row => ({
    key,
    label,
    said: (column) => figureSaid(column.answer.figures[key], column.units),
  });
  return [
    { key: 'verdict', label: alternatives.verdict, said: (column) => headlineOf(column.answer) },
    figure('feed', summary.feed),
    figure('mainFuse', summary.mainFuse),
    figure('worstDrop', summary.worstDrop),
    figure('unprotected', summary.unprotected),
    { key: 'fuses', label: alternatives.fuses, said: fusesSaid },
    ...answer.amplifiers.map(
      ({ fittingId }): Row => ({
        key: fittingId,
        label: alternatives.terminal(nameOfId(plan, fittingId) ?? fittingId),
        said: (column) => {
          const volts = column.answer.amplifiers.find((one) => one.fittingId === fittingId)?.terminalV ?? null;
          return volts === null ? words.summary.noFigure : column.units.voltage(volts);
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
            const now = row.said(present);
            return (
              <tr key={row.key}>
                <th scope="row">{row.label}</th>
                <td data-column={present.name}>{now}</td>
                {others.map((column) => {
                  const said = row.said(column);
                  return (
                    <td key={column.id} className={said === now ? 'same' : 'changed'} data-column={column.name}>
                      {said}
                    </td>
                  );
                })}
              </tr>
            );
          })}
          <tr>
            <th scope="row">{say.found}</th>
            <td />
            {others.map(({ id, name, plan: there, answer }) => (
              <td key={id} data-column={name}>
                <FindingChanges from={present.answer} to={answer} plan={there} />
              </td>
            ))}
          </tr>
          <tr>
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
