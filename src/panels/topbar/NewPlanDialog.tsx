import { useRef, useState } from 'react';
import { startPlan } from '../../desk/acts/startPlan.ts';
import { DEFAULT_OUTLINES } from '../../plan/outline.ts';
import { MAX_NAME, type Outline } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { focusFirstInvalid } from '../controls/firstInvalid.ts';
import { TextField } from '../controls/TextField.tsx';
import { Dialog } from '../dialog/Dialog.tsx';
import { LengthField } from '../keypad/LengthField.tsx';
import { useDeskStore } from '../useDesk.ts';

type Vehicle = Extract<Outline, { kind: 'vehicle' }>;
type Bench = Extract<Outline, { kind: 'bench' }>;

/** A size and its bounds; the bounds are the document's. */
const VEHICLE_SIZES = [
  ['lengthM', 2, 12],
  ['widthM', 1, 3],
  ['bayM', 0.3, 3],
  ['cabM', 0.5, 8],
] as const satisfies readonly (readonly [keyof Vehicle, number, number])[];
const BENCH_SIZES = [
  ['lengthM', 0.5, 12],
  ['widthM', 0.3, 5],
] as const satisfies readonly (readonly [keyof Bench, number, number])[];

const bayTooLong = (outline: Outline): boolean =>
  outline.kind === 'vehicle' && outline.bayM + outline.cabM >= outline.lengthM;

/** What to plan for: a vehicle or a bench board, its name, its sizes, and on which side the wheel is. */
export default function NewPlanDialog({ onClose }: { onClose: () => void }) {
  const desk = useDeskStore();
  const [outline, setOutline] = useState<Vehicle | Bench>(DEFAULT_OUTLINES.panelVan);
  const [name, setName] = useState('');
  const [isRight, setRight] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const { newPlanDialog: newPlan, fittings } = words;

  const create = () => {
    if (focusFirstInvalid(form.current)) return;
    startPlan(desk, {
      name: name === '' ? fittings.outlines[outline.kind === 'bench' ? 'bench' : outline.body] : name,
      outline,
      mirrored: isRight && outline.kind !== 'bench',
    });
    onClose();
  };

  return (
    <Dialog title={newPlan.title} onClose={onClose}>
      <form
        ref={form}
        className="fields"
        onSubmit={(event) => {
          event.preventDefault();
          create();
        }}
      >
        <fieldset className="choices">
          <legend>{newPlan.vehicle}</legend>
          {(Object.keys(DEFAULT_OUTLINES) as (keyof typeof DEFAULT_OUTLINES)[]).map((kind) => (
            <label key={kind} className="choice">
              <input
                type="radio"
                name="outline"
                checked={(outline.kind === 'bench' ? 'bench' : outline.body) === kind}
                onChange={() => setOutline(DEFAULT_OUTLINES[kind])}
              />
              <span>{fittings.outlines[kind]}</span>
            </label>
          ))}
        </fieldset>
        {outline.kind === 'bench' ? null : (
          <fieldset className="choices">
            <legend>{newPlan.drive}</legend>
            {([false, true] as const).map((right) => (
              <label key={String(right)} className="choice">
                <input type="radio" name="drive" checked={isRight === right} onChange={() => setRight(right)} />
                <span>{right ? newPlan.right : newPlan.left}</span>
              </label>
            ))}
          </fieldset>
        )}
        <TextField label={newPlan.name} value={name} maxLength={MAX_NAME} onTake={setName} />
        <div className="field-grid">
          {outline.kind === 'bench'
            ? BENCH_SIZES.map(([field, minM, maxM]) => (
                <LengthField
                  key={field}
                  label={newPlan[field]}
                  valueM={outline[field]}
                  minM={minM}
                  maxM={maxM}
                  onTake={(m) => m !== null && setOutline({ ...outline, [field]: m })}
                />
              ))
            : VEHICLE_SIZES.map(([field, minM, maxM]) => (
                <LengthField
                  key={field}
                  label={newPlan[field]}
                  valueM={outline[field]}
                  minM={minM}
                  maxM={maxM}
                  onTake={(m) => m !== null && setOutline({ ...outline, [field]: m })}
                />
              ))}
        </div>
        {bayTooLong(outline) ? (
          <p className="error" role="alert">
            {newPlan.bayTooLong}
          </p>
        ) : null}
        <p className="hint">{newPlan.kept}</p>
        <div className="dialog-foot">
          <button type="button" onClick={onClose}>
            {newPlan.cancel}
          </button>
          <button type="submit" className="strong" disabled={bayTooLong(outline)}>
            {newPlan.create}
          </button>
        </div>
      </form>
    </Dialog>
  );
}
