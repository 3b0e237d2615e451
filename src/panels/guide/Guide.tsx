import './guide.css';
import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { stepBack } from '../../desk/acts/hand.ts';
import { answerOf } from '../../desk/answer.ts';
import { choose } from '../../look/choices.ts';
import { words } from '../../words/full.ts';
import { useDeskStore } from '../useDesk.ts';
import { stepAct } from './stepAct.ts';
import { currentStep, doneSteps, STEPS } from './steps.ts';

interface GuideProps {
  onNewPlan: () => void;
  /** Shows the fields of what is selected. */
  onEdit: () => void;
}

const leave = (): void => choose('guide', 'left');

/** Escape leaves, unless there is something else to step back from first. */
function useEscape(): void {
  const desk = useDeskStore();
  useEffect(() => {
    const onKeyDown = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || event.defaultPrevented || stepBack.allowed(desk.getState())) return;
      if (document.querySelector('dialog[open]') === null) leave();
    };
    window.addEventListener('keydown', onKeyDown);
    return () => window.removeEventListener('keydown', onKeyDown);
  }, [desk]);
}

/** A first plan step by step: it watches the plan, takes up tools, and is left at any moment. */
export default function Guide({ onNewPlan, onEdit }: GuideProps) {
  const desk = useDeskStore();
  const state = useStore(desk);
  const [isFolded, setFolded] = useState(false);
  useEscape();
  const { guide } = words;
  // of the plan itself: what is only proposed, or still under the finger, is not done
  const seen = { plan: state.plan, isExample: state.isExample, answer: answerOf(state.plan) };
  const done = doneSteps(seen);
  const index = currentStep(seen);
  const { id } = STEPS[index] ?? STEPS[0];
  const { title, text } = guide.steps[id];
  const act = stepAct(id, state, desk, { onNewPlan, onEdit, onLeave: leave });
  return (
    <aside className="guide" aria-label={guide.label}>
      <header className="guide-head">
        <h2>{guide.step(index + 1, STEPS.length, title)}</h2>
        <button type="button" aria-expanded={!isFolded} onClick={() => setFolded(!isFolded)}>
          {isFolded ? guide.unfold : guide.fold}
        </button>
        <button type="button" aria-keyshortcuts="Escape" onClick={leave}>
          {guide.leave}
        </button>
      </header>
      {isFolded ? null : (
        <div className="guide-body" data-holds={(act.now !== undefined && state.hand.way === 'place') || undefined}>
          <p role="status">{act.now ?? text}</p>
          <button type="button" className={act.now === undefined ? 'strong' : undefined} onClick={act.run}>
            {act.text}
          </button>
        </div>
      )}
      <ol className="guide-steps" aria-label={guide.stepsLabel}>
        {STEPS.map((step, at) => (
          <li key={step.id} data-step={step.id} data-state={done[at] ? 'done' : at === index ? 'now' : 'open'}>
            <span className="sr-only">
              {guide.steps[step.id].title}: {done[at] ? guide.isDone : at === index ? guide.isNow : guide.isOpen}
            </span>
          </li>
        ))}
      </ol>
    </aside>
  );
}
