import './outline.css';
import { useState } from 'react';
import { type Aftermath, commit } from '../../desk/edit.ts';
import { changeOutline, sheetsOfVehicle } from '../../plan/edits/changeOutline.ts';
import { ownFault, ownFrom, stretched } from '../../plan/ownOutline.ts';
import type { Outline, OutlineOf, Sheet } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { LengthField } from '../keypad/LengthField.tsx';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { CornerFields } from './CornerFields.tsx';
import { EdgePicture } from './EdgePicture.tsx';
import { cargoXM, withCargo, withFirewall } from './grips.ts';
import { KeepTemplate } from './KeepTemplate.tsx';
import type { TemplateFiles } from './templates.ts';
import { useSteps } from './useSteps.ts';

type Own = OutlineOf<'own'>;

/** The rectangle that an outline fills. */
const rectangle = ({ lengthM, widthM, ...rest }: Own): Own => ({
  ...rest,
  lengthM,
  widthM,
  edge: [
    { xM: 0, yM: 0 },
    { xM: lengthM, yM: 0 },
    { xM: lengthM, yM: widthM },
    { xM: 0, yM: widthM },
  ],
});

/** Length, width, height, and where the firewall and the cargo are; the bounds are the document's. */
function Sizes({ own, onTake }: { own: Own; onTake: (own: Own) => void }) {
  const { outlineEditor: say } = words;
  const lines = { minM: 0.1, maxM: Math.max(0.2, own.lengthM - 0.1), mayBeEmpty: true, hint: say.none };
  return (
    <div className="outline-fields">
      <LengthField
        label={say.lengthM}
        valueM={own.lengthM}
        minM={0.5}
        maxM={12}
        onTake={(m) => m !== null && onTake(stretched(own, m, own.widthM))}
      />
      <LengthField
        label={say.widthM}
        valueM={own.widthM}
        minM={0.3}
        maxM={5}
        onTake={(m) => m !== null && onTake(stretched(own, own.lengthM, m))}
      />
      <LengthField
        label={say.heightM}
        valueM={own.heightM}
        minM={0.3}
        maxM={4}
        onTake={(heightM) => heightM !== null && onTake({ ...own, heightM })}
      />
      <LengthField {...lines} label={say.firewall} valueM={own.bayM} onTake={(m) => onTake(withFirewall(own, m))} />
      {own.bayM === null ? null : (
        <LengthField {...lines} label={say.cargo} valueM={cargoXM(own)} onTake={(m) => onTake(withCargo(own, m))} />
      )}
    </div>
  );
}

function Editor({ sheet, templates }: { sheet: Sheet; templates: TemplateFiles }) {
  const desk = useDeskStore();
  const planName = useDesk((state) => state.plan.name);
  const shownOn = useDesk((state) => sheetsOfVehicle(state.plan, sheet.id).length);
  const steps = useSteps<Own>(ownFrom(sheet.outline));
  const [wished, setCorner] = useState(0);
  const [isRefused, setRefused] = useState(false);
  const own = steps.now;
  // a corner may have gone with an undo
  const corner = Math.min(wished, own.edge.length - 1);
  const fault = ownFault(own);
  const { outlineEditor: say } = words;
  const take = (next: Own) => {
    setRefused(false);
    steps.take(next);
  };
  const close = () => desk.setState({ outlineOf: null });
  const use = () => {
    const outline: Outline = own;
    const others = shownOn > 1;
    const aftermath: Aftermath = others ? { message: { id: 'sheetsFollowed', params: {}, undo: true } } : {};
    const isSame = JSON.stringify(sheet.outline) === JSON.stringify(outline);
    if (
      isSame ||
      commit(desk, others ? 'outlineOfAll' : 'outline', (plan) => changeOutline(plan, sheet.id, outline), aftermath)
    )
      close();
    else setRefused(true);
  };
  return (
    <section
      className="outline"
      aria-label={say.title}
      onKeyDown={(event) => {
        if (event.key.toLowerCase() !== 'z' || !(event.ctrlKey || event.metaKey)) return;
        if (event.target instanceof HTMLInputElement) return;
        // the plan's own undo waits until the outline is used
        event.preventDefault();
        if (event.shiftKey) steps.redo();
        else steps.undo();
      }}
    >
      <header className="outline-head">
        <h2>{say.title}</h2>
        <button type="button" aria-label={say.undo} disabled={!steps.canUndo} onClick={steps.undo}>
          {words.history.undo}
        </button>
        <button type="button" aria-label={say.redo} disabled={!steps.canRedo} onClick={steps.redo}>
          {words.history.redo}
        </button>
        <button type="button" onClick={() => take(rectangle(own))}>
          {say.rectangle}
        </button>
        <button type="button" onClick={close}>
          {say.cancel}
        </button>
        <button type="button" className="strong" disabled={fault !== null} onClick={use}>
          {shownOn > 1 ? say.onAllSheets(shownOn) : say.use}
        </button>
      </header>
      <EdgePicture own={own} selected={corner} onTake={take} onSelect={setCorner} />
      <div className="outline-panel">
        {fault === null && !isRefused ? (
          <p className="hint">{say.hint}</p>
        ) : (
          <p className="error" role="alert">
            {fault === null ? say.refused : say.faults[fault]}
          </p>
        )}
        <CornerFields own={own} index={corner} onTake={take} onSelect={setCorner} />
        <Sizes own={own} onTake={take} />
        <KeepTemplate
          outline={own}
          mirrored={sheet.mirrored}
          name={planName}
          isFaulty={fault !== null}
          templates={templates}
        />
      </div>
    </section>
  );
}

/** Draws an outline of one's own for a sheet, from the one it has; nothing of the plan changes until it is used. */
export default function OutlineEditor({ sheetId, templates }: { sheetId: string; templates: TemplateFiles }) {
  const sheet = useDesk(({ plan }) => plan.sheets.find(({ id }) => id === sheetId));
  return sheet === undefined ? null : <Editor sheet={sheet} templates={templates} />;
}
