import './newPlan.css';
import { useRef, useState } from 'react';
import { startPlan } from '../../desk/acts/startPlan.ts';
import { choice } from '../../look/choices.ts';
import { DEFAULT_OUTLINES } from '../../plan/outline.ts';
import { mirroredOutline } from '../../plan/ownOutline.ts';
import { MAX_NAME, type Outline } from '../../plan/schema.ts';
import type { UsualStart } from '../../plan/usualStart.ts';
import { words } from '../../words/full.ts';
import { defaultName } from '../../words/index.ts';
import { measuresFor } from '../../words/language.ts';
import { focusFirstInvalid } from '../controls/firstInvalid.ts';
import { TextField } from '../controls/TextField.tsx';
import { Dialog } from '../dialog/Dialog.tsx';
import { TemplateTiles } from '../outline/TemplateTiles.tsx';
import type { TemplateFiles } from '../outline/templates.ts';
import { useDeskStore } from '../useDesk.ts';
import { OutlineSizes, type Sized, sizeProblem } from './OutlineSizes.tsx';
import { StartFields } from './StartFields.tsx';
import { VehicleTiles } from './VehicleTiles.tsx';

const NOTHING: UsualStart = { battery: null, amplifiersW: [] };

/** What to plan for: a vehicle or a bench board, on which side the wheel is, and what is placed at once. */
export default function NewPlanDialog({ templates, onClose }: { templates?: TemplateFiles; onClose: () => void }) {
  const desk = useDeskStore();
  const [outline, setOutline] = useState<Sized>(DEFAULT_OUTLINES.panelVan);
  const [name, setName] = useState('');
  // null until a side is told: a vehicle is then left-hand drive, and a template what it was kept as
  const [isRight, setRight] = useState<boolean | null>(null);
  const [start, setStart] = useState(NOTHING);
  const form = useRef<HTMLFormElement>(null);
  const { newPlanDialog: newPlan, fittings } = words;
  const kind = outline.kind === 'bench' ? 'bench' : outline.body;
  const problem = sizeProblem(outline);

  const measures = measuresFor(choice('language'), navigator.languages);

  const begin = (title: string, on: Outline, mirrored: boolean) => {
    startPlan(desk, { ...measures, name: title, outline: on, mirrored }, { ...start, nameOf: defaultName });
    onClose();
  };

  return (
    <Dialog title={newPlan.title} onClose={onClose}>
      <form
        ref={form}
        className="fields"
        onSubmit={(event) => {
          event.preventDefault();
          const title = name === '' ? fittings.outlines[kind] : name;
          if (!focusFirstInvalid(form.current)) begin(title, outline, kind !== 'bench' && isRight === true);
        }}
      >
        <VehicleTiles kind={kind} onTake={(taken) => setOutline(DEFAULT_OUTLINES[taken])} />
        {templates === undefined ? null : (
          <TemplateTiles
            templates={templates}
            onStart={(kept) => {
              const mirrored = isRight ?? kept.mirrored;
              begin(kept.name, mirrored === kept.mirrored ? kept.outline : mirroredOutline(kept.outline), mirrored);
            }}
          />
        )}
        {outline.kind === 'bench' ? null : (
          <fieldset className="choices">
            <legend>{newPlan.drive}</legend>
            {([false, true] as const).map((right) => (
              <label key={String(right)} className="choice">
                <input
                  type="radio"
                  name="drive"
                  checked={(isRight ?? false) === right}
                  onChange={() => setRight(right)}
                />
                <span>{right ? newPlan.right : newPlan.left}</span>
              </label>
            ))}
          </fieldset>
        )}
        <StartFields start={start} onTake={setStart} />
        <TextField label={newPlan.name} value={name} maxLength={MAX_NAME} onTake={setName} />
        <OutlineSizes outline={outline} showLength={measures.showLength} onTake={setOutline} />
        <p className="hint">{newPlan.kept}</p>
        <div className="dialog-foot">
          <button type="button" onClick={onClose}>
            {newPlan.cancel}
          </button>
          <button type="submit" className="strong" disabled={problem !== null}>
            {newPlan.create}
          </button>
        </div>
      </form>
    </Dialog>
  );
}
