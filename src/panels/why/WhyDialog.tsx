import './why.css';
import { useStore } from 'zustand';
import type { Why, WhyStep } from '../../calc/why.ts';
import { undoAct } from '../../desk/acts/history.ts';
import { runAct } from '../../desk/acts/index.ts';
import { words } from '../../words/full.ts';
import { Dialog } from '../dialog/Dialog.tsx';
import { useAnswer, useDeskStore, useUnits } from '../useDesk.ts';
import { AssumptionField } from './AssumptionField.tsx';

/** A step's value as it can be worked out again: six figures, lists in brackets. */
function Value({ step }: { step: WhyStep }) {
  const units = useUnits();
  const { value } = step;
  const text =
    typeof value === 'number' ? units.exact(value) : `[${units.list(value.map((member) => units.exact(member)))}]`;
  const sign = words.whys.unitSigns[step.unit];
  return (
    <>
      <span data-value>{text}</span>
      {sign === '' ? null : <span data-unit={step.unit}> {sign}</span>}
    </>
  );
}

/** Origins that a source's own trust already tells. */
const TOLD_BY_SOURCE: ReadonlySet<WhyStep['origin']> = new Set(['published', 'choice', 'memory'] as const);

function Origin({ step: { origin, source } }: { step: WhyStep }) {
  const parts = [
    origin === undefined || (source !== undefined && TOLD_BY_SOURCE.has(origin)) ? '' : words.whys.originWords[origin],
    source === undefined ? '' : words.sourceLine(source),
  ].filter((part) => part !== '');
  return parts.length === 0 ? null : <span className="hint">{parts.join(': ')}</span>;
}

/** A change made here can leave nothing to explain; the way back stands beside the news. */
function NoFigure() {
  const desk = useDeskStore();
  const canUndo = useStore(desk.temporal, (state) => state.pastStates.length > 0);
  return (
    <>
      <p>{words.whys.why.none}</p>
      <button type="button" className="strong" disabled={!canUndo} onClick={() => runAct(desk, undoAct)}>
        {words.history.undo}
      </button>
    </>
  );
}

function StepRow({ step, isResult }: { step: WhyStep; isResult: boolean }) {
  return (
    <tr data-symbol={step.symbol} data-result={isResult || undefined} className={isResult ? 'why-result' : undefined}>
      <th scope="row">
        <span>{words.whys.step(step.label ?? step.symbol)}</span>
        <code className="why-symbol">{step.symbol}</code>
      </th>
      <td>
        {step.expression === undefined ? null : (
          <code className="why-expression">
            = <span data-expression>{step.expression}</span>
          </code>
        )}
        <span className="why-value">
          {step.expression === undefined ? '' : '= '}
          <Value step={step} />
        </span>
        <Origin step={step} />
        {step.edit === undefined || typeof step.value !== 'number' ? null : (
          <AssumptionField path={step.edit} value={step.value} />
        )}
      </td>
    </tr>
  );
}

function Steps({ why }: { why: Why }) {
  const { whys } = words;
  const inputs = why.steps.filter(({ expression }) => expression === undefined);
  const worked = why.steps.filter(({ expression }) => expression !== undefined);
  const result = why.steps.filter(({ symbol }) => symbol === why.result);
  const table = (caption: string, steps: readonly WhyStep[]) => (
    <table className="why-table">
      <caption>{caption}</caption>
      <tbody>
        {steps.map((step) => (
          <StepRow key={step.symbol} step={step} isResult={step.symbol === why.result} />
        ))}
      </tbody>
    </table>
  );
  return (
    <>
      {result.map((step) => (
        <p key={step.symbol} className="why-headline">
          <span>
            <Value step={step} />
          </span>
          {step.expression === undefined ? null : (
            <code>
              {step.symbol} = {step.expression}
            </code>
          )}
        </p>
      ))}
      {inputs.length === 0 ? null : table(whys.why.inputs, inputs)}
      {worked.length === 0 ? null : table(whys.why.working, worked)}
    </>
  );
}

/** The reason behind a figure, live: change an assumption and the figure follows. Closing it changes nothing. */
export default function WhyDialog({ whyId, title, onClose }: { whyId: string; title: string; onClose: () => void }) {
  const why = useAnswer().whys[whyId];
  return (
    <Dialog title={words.whys.why.title(title)} onClose={onClose} beside>
      <div className="why" data-why={whyId}>
        {why === undefined ? <NoFigure /> : <Steps why={why} />}
      </div>
    </Dialog>
  );
}
