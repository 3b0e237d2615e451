import './faces.css';
import { lazy, Suspense, useState } from 'react';
import type { Assessment } from '../../assess/answer.ts';
import { select } from '../../desk/selection.ts';
import type { Plan } from '../../plan/schema.ts';
import { headlineOf, notCheckedOf, notToldOf } from '../../words/answer.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { Answered } from '../Answered.tsx';
import { SeverityMark } from '../severity/SeverityMark.tsx';
import { VERDICT_SEVERITY } from '../summary/Headline.tsx';
import { useAnswer, useDesk, useDeskStore, usePlan, useUnits } from '../useDesk.ts';
import { Protection } from './Protection.tsx';
import { topicsOf, toSettle } from './topics.ts';

const Inspector = lazy(() => import('../inspector/Inspector.tsx'));

/** Never calmer than the truth: what has to be settled comes before anything that was found in order. */
function verdictOf(answer: Assessment, plan: Plan): string {
  const points = toSettle(answer.findings).length;
  if (points > 0) return words.customer.notFinished(points);
  return answer.headline.kind === 'provisional'
    ? words.customer.toMeasure(answer.headline.count)
    : headlineOf(answer, plan);
}

function System({ plan }: { plan: Plan }) {
  const units = useUnits();
  const desk = useDeskStore();
  const selectedId = useDesk((state) => state.selection?.id ?? null);
  const amplifiers = plan.fittings.filter((fitting) => fitting.kind === 'amplifier');
  const { customer } = words;
  const rated = amplifiers.flatMap(({ ratedW }) => (ratedW === null ? [] : [ratedW.value]));
  const isWhole = rated.length === amplifiers.length && rated.length > 1;
  return (
    <section className="customer-part">
      <h3>{customer.system}</h3>
      {amplifiers.length === 0 ? <p>{customer.noAmplifier}</p> : null}
      <ul>
        {amplifiers.map(({ id, ratedW }) => (
          <li key={id}>
            <button
              type="button"
              className="customer-amplifier"
              aria-pressed={selectedId === id}
              onClick={() => select(desk, { kind: 'fitting', id })}
            >
              <span>{nameOfId(plan, id)}</span>
              <b>{ratedW === null ? customer.outputOpen : units.power(ratedW.value)}</b>
            </button>
          </li>
        ))}
      </ul>
      {isWhole ? <p>{customer.total(units.power(rated.reduce((sum, watts) => sum + watts, 0)))}</p> : null}
    </section>
  );
}

function Feed({ answer }: { answer: Assessment }) {
  const units = useUnits();
  const { customer, summary } = words;
  const { value, provisional, places } = answer.figures.feed;
  const run = answer.runs.find(({ runId }) => runId === places[0]?.id);
  const area = run?.areaMm2 ?? null;
  const full = run?.fullA ?? null;
  if (typeof value !== 'string') return <p>{customer.feedOpen}</p>;
  return (
    <>
      <p className="customer-figure">{units.gauge(value)}</p>
      <p>
        {[area === null || value.startsWith('mm2:') ? '' : units.area(area), provisional ? summary.provisional : '']
          .filter(Boolean)
          .join(', ')}
      </p>
      {full === null ? null : <p>{customer.carries(units.current(full))}</p>}
    </>
  );
}

function StillToSettle({ answer }: { answer: Assessment }) {
  const { customer } = words;
  const topics = topicsOf(answer.findings);
  const lines = [
    ...topics.map(({ topic, count }) => customer.topics[topic](count)),
    ...(answer.notTold.length === 0 ? [] : [customer.notTold(notToldOf(answer))]),
    ...(answer.rulesNotChecked.length === 0 ? [] : [customer.notChecked(notCheckedOf(answer))]),
  ];
  if (lines.length === 0) return null;
  return (
    <section className="customer-part">
      <h3>{customer.open}</h3>
      <ul className="customer-lines">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

/** What is picked out can be changed, an amplifier swapped say; its fields stay folded until asked for. */
function Change({ plan }: { plan: Plan }) {
  const selection = useDesk((state) => state.selection);
  const [openId, setOpenId] = useState<string | null>(null);
  const name = selection === null ? null : nameOfId(plan, selection.id);
  if (selection === null || name === null) return null;
  const isOpen = openId === selection.id;
  return (
    <div className="customer-change">
      <button type="button" aria-expanded={isOpen} onClick={() => setOpenId(isOpen ? null : selection.id)}>
        {isOpen ? words.customer.changeClose : words.customer.change(name)}
      </button>
      {isOpen ? (
        <div className="customer-fields">
          <Suspense fallback={null}>
            <Inspector />
          </Suspense>
        </div>
      ) : null}
    </div>
  );
}

/** What the fuses protect, and the feed: of the answer in full, which is known when a finger rests. */
function InFull() {
  const plan = usePlan();
  const answer = useAnswer();
  return (
    <div className="customer-in-full">
      <Protection plan={plan} answer={answer} />
      <section className="customer-part">
        <h3>{words.customer.feed}</h3>
        <Feed answer={answer} />
      </section>
    </div>
  );
}

/** The screen turned to the customer: what the system is, what protects the car, what is still to settle. */
export default function CustomerFace() {
  const plan = usePlan();
  const answer = useAnswer();
  const mark = VERDICT_SEVERITY[answer.headline.kind];
  const isEmpty = plan.fittings.length === 0;
  return (
    <>
      <header className={`headline headline-${answer.headline.kind}`}>
        <h2 data-figure="headline">
          {mark === null ? null : <SeverityMark severity={mark} wordless />}
          <span>{verdictOf(answer, plan)}</span>
        </h2>
      </header>
      <div className="answer-scroll">
        <div className="customer">
          <System plan={plan} />
          <Answered pace="fields">{isEmpty ? null : <InFull />}</Answered>
          <StillToSettle answer={answer} />
          <p className="caution">{words.cautions.plan}</p>
        </div>
      </div>
      <Answered pace="fields">
        <Change plan={plan} />
      </Answered>
    </>
  );
}
