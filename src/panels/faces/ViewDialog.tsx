import './faces.css';
import { useId } from 'react';
import { runAct } from '../../desk/acts/index.ts';
import { toggleBigFingers } from '../../desk/acts/toggles.ts';
import { type ChoiceName, type ChoiceOf, choicesOf, choose, type Face } from '../../look/choices.ts';
import { words } from '../../words/full.ts';
import { LANGUAGE_NAMES } from '../../words/language.ts';
import { Choice } from '../controls/Choice.tsx';
import { Tick } from '../controls/Tick.tsx';
import { Dialog } from '../dialog/Dialog.tsx';
import { useChoice } from '../useChoice.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';

interface RadiosProps<N extends ChoiceName> {
  name: N;
  legend: string;
  texts: Readonly<Record<ChoiceOf<N>, string>>;
  hints: Readonly<Record<ChoiceOf<N>, string>>;
  onTake?: (value: ChoiceOf<N>) => void;
}

/** One choice of this device; it acts at once. */
function Radios<N extends ChoiceName>({ name, legend, texts, hints, onTake }: RadiosProps<N>) {
  const group = useId();
  const chosen = useChoice(name);
  const values: readonly ChoiceOf<N>[] = choicesOf(name);
  return (
    <fieldset className="view-choices">
      <legend>{legend}</legend>
      <div>
        {values.map((value) => (
          <label key={value} className="choice">
            <input
              type="radio"
              name={group}
              checked={value === chosen}
              aria-describedby={value === chosen ? `${group}-hint` : undefined}
              onChange={() => {
                choose(name, value);
                onTake?.(value);
              }}
            />
            <span>{texts[value]}</span>
          </label>
        ))}
      </div>
      <p className="hint" id={`${group}-hint`}>
        {hints[chosen]}
      </p>
    </fieldset>
  );
}

/** Choices of this device, not of the plan: who looks at it, in which light, with which hand. */
export default function ViewDialog({ onClose }: { onClose: () => void }) {
  const desk = useDeskStore();
  const bigFingers = useDesk((state) => state.bigFingers);
  const language = useChoice('language');
  const { view } = words;
  /** Turned to others, the screen shows nothing half done, and no finding that was being looked at. */
  const turn = (face: Face) => {
    if (face !== 'work') desk.setState({ findingId: null, selection: null, hand: { way: 'move' } });
  };
  return (
    <Dialog title={view.title} onClose={onClose} over="answer">
      <div className="fields">
        <Radios name="face" legend={view.face} texts={view.faces} hints={view.faceHints} onTake={turn} />
        <Radios name="theme" legend={view.theme} texts={view.themes} hints={view.themeHints} />
        <Radios name="side" legend={view.side} texts={view.sides} hints={view.sideHints} />
        <Choice
          label={view.language}
          value={language}
          options={choicesOf('language').map((value) => ({
            value,
            text: value === 'auto' ? view.languageAuto : LANGUAGE_NAMES[value],
          }))}
          onTake={(value) => choose('language', value)}
        />
        <fieldset>
          <legend>{view.touch}</legend>
          <Tick label={view.bigFingers} checked={bigFingers} onTake={() => runAct(desk, toggleBigFingers)} />
        </fieldset>
      </div>
    </Dialog>
  );
}
