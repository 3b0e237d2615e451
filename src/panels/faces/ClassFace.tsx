import './faces.css';
import { runAct } from '../../desk/acts/index.ts';
import { removeSelected } from '../../desk/acts/removeSelected.ts';
import { answerOf } from '../../desk/answer.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { usePaced } from '../Answered.tsx';
import { Headline } from '../summary/Headline.tsx';
import { Summary } from '../summary/Summary.tsx';
import { useChoice } from '../useChoice.ts';
import { useDesk, useDeskStore, usePlan } from '../useDesk.ts';

const FIGURES = ['feed', 'mainFuse', 'worstDrop', 'unprotected'] as const;

function Hidden({ label }: { label: string }) {
  return (
    <li>
      <span className="figure-label">{label}</span>
      <span className="figure-value">
        <span aria-hidden="true">?</span>
        <span className="sr-only">{words.classFace.hiddenValue}</span>
      </span>
    </li>
  );
}

/** What is selected, by name only: its fields are full of figures. A lesson asks what burns without it. */
function Selected() {
  const desk = useDeskStore();
  const plan = usePlan();
  const selection = useDesk((state) => state.selection);
  const canGo = useDesk((state) => removeSelected.allowed(state));
  if (selection === null) return null;
  const { inspector } = words;
  return (
    <section className="hidden-selected" aria-label={inspector.label}>
      <h3>{nameOfId(plan, selection.id)}</h3>
      <button type="button" className="danger" disabled={!canGo} onClick={() => runAct(desk, removeSelected)}>
        {selection.kind === 'bend' ? inspector.removeBend : inspector.remove}
      </button>
    </section>
  );
}

/** Asked before told: the names of the figures, without the figures and without the verdict. */
function Asking() {
  const plan = usePaced('fields');
  const { amplifiers } = answerOf(plan);
  const { classFace, summary } = words;
  return (
    <>
      <header className="headline">
        <h2>{classFace.hidden}</h2>
        <p>{classFace.hiddenHint}</p>
      </header>
      <div className="answer-scroll">
        {/* ahead of what says nothing: a small screen shows no more of it */}
        <Selected />
        <ul className="hidden-figures">
          {FIGURES.map((id) => (
            <Hidden key={id} label={summary[id]} />
          ))}
          {amplifiers.map(({ fittingId }) => (
            <Hidden key={fittingId} label={nameOfId(plan, fittingId) ?? ''} />
          ))}
        </ul>
      </div>
    </>
  );
}

/** The answer for a class: the whole of it, or only what is asked. */
export default function ClassFace() {
  if (useChoice('figures') === 'hidden') return <Asking />;
  return (
    <>
      <Headline />
      <div className="answer-scroll">
        <Summary />
      </div>
    </>
  );
}
