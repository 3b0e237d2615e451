import { addBendAct } from '../../desk/acts/addBend.ts';
import { runAct } from '../../desk/acts/index.ts';
import { select } from '../../desk/selection.ts';
import { drawnLengthOf, drawnM, isTaped } from '../../plan/drawnLength.ts';
import { MAX_NAME, type Plan, type Run } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { nameOfId, runTitle, type Units } from '../../words/index.ts';
import { Choice } from '../controls/Choice.tsx';
import { NumberField } from '../controls/NumberField.tsx';
import { TextField } from '../controls/TextField.tsx';
import { Tick } from '../controls/Tick.tsx';
import { inputBounds, lengthBounds } from '../inputs.ts';
import { LengthField } from '../keypad/LengthField.tsx';
import { useAnswer, useDeskStore, useUnits } from '../useDesk.ts';
import { ConductorFields, UnmarkedFields } from './ConductorFields.tsx';
import { EndFields } from './EndFields.tsx';
import { zoneOptions } from './FittingFields.tsx';
import { TapeDoubt } from './TapeDoubt.tsx';
import { MaybeField, MILLI } from './Told.tsx';
import { useRunChange } from './useChange.ts';

const KINDS = ['power', 'ground', 'remote', 'factory'] as const;
const MAX_REASON = 1000;

/** What the length goes by. */
function tapeHint({ tapedM, tapedAs }: Run, drawn: string, plusMinus: string, units: Units): string {
  const { inspector } = words;
  if (tapedM === null) return inspector.drawnCounts(drawn, plusMinus);
  const taped = units.length(tapedM);
  if (tapedAs === 'share') return inspector.tapeShared(taped, plusMinus);
  return tapedAs === 'outdated' ? inspector.tapeOutdated(taped, drawn) : inspector.tapedWins(taped, drawn);
}

function LengthPart({ run, plan }: { run: Run; plan: Plan }) {
  const change = useRunChange(run.id);
  const units = useUnits();
  const answer = useAnswer().runs.find(({ runId }) => runId === run.id);
  const { inspector } = words;
  const byDrawing = drawnM(drawnLengthOf(plan, run));
  const drawn = units.length(byDrawing);
  return (
    <>
      <LengthField
        label={inspector.taped}
        term="cutLength"
        valueM={run.tapedM}
        {...lengthBounds('run.tapedM')}
        mayBeEmpty
        hint={tapeHint(run, drawn, units.length(answer?.length.plusMinusM ?? 0), units)}
        onTake={(tapedM) => change({ tapedM })}
        question={
          run.tapedM === null || !isTaped(run) ? null : (
            <TapeDoubt tapedM={run.tapedM} drawnM={byDrawing} onTake={(tapedM) => change({ tapedM })} />
          )
        }
      />
      {run.tapedM === null || isTaped(run) ? null : (
        <button type="button" onClick={() => change({ tapedAs: 'run' })}>
          {inspector.tapeHolds(units.length(run.tapedM))}
        </button>
      )}
      {run.tapedM === null ? null : (
        <button type="button" onClick={() => change({ tapedM: null })}>
          {inspector.clearTape}
        </button>
      )}
      <div className="field-pair">
        <LengthField
          label={inspector.rise}
          valueM={run.riseM}
          {...lengthBounds('run.riseM')}
          onTake={(riseM) => riseM !== null && change({ riseM })}
        />
        <NumberField
          label={inspector.slack}
          term="slack"
          value={run.slackPercent}
          {...inputBounds('run.slackPercent')}
          onTake={(slackPercent) => slackPercent !== null && change({ slackPercent })}
        />
      </div>
    </>
  );
}

function Ways({ run }: { run: Run }) {
  const change = useRunChange(run.id);
  const answer = useAnswer();
  const { inspector } = words;
  const isUnprotected = (answer.runs.find(({ runId }) => runId === run.id)?.unprotectedM ?? 0) > 0;
  return (
    <>
      <Choice
        label={inspector.zone}
        value={run.zone}
        options={zoneOptions(answer.zones[run.id])}
        onTake={(zone) => change({ zone })}
      />
      <Tick
        label={inspector.sheathed}
        hint={inspector.sheathedHint}
        checked={run.sheathed}
        onTake={(sheathed) => change({ sheathed })}
      />
      {isUnprotected || run.nearerImpossible !== null ? (
        <TextField
          label={inspector.nearer}
          value={run.nearerImpossible ?? ''}
          maxLength={MAX_REASON}
          onTake={(reason) => change({ nearerImpossible: reason === '' ? null : reason })}
        />
      ) : null}
      <Tick label={inspector.loom} term="loom" checked={run.inLoom} onTake={(inLoom) => change({ inLoom })} />
      <Tick label={inspector.carpet} checked={run.underCarpet} onTake={(underCarpet) => change({ underCarpet })} />
    </>
  );
}

/** How it is laid: with how many others, and how tightly bent. */
function Laid({ run }: { run: Run }) {
  const change = useRunChange(run.id);
  const text = words.fieldLabels.run;
  return (
    <div className="field-pair">
      <NumberField
        {...text.bundled}
        term="bundle"
        value={run.bundled}
        {...inputBounds('run.bundled')}
        onTake={(bundled) => bundled !== null && change({ bundled: Math.round(bundled) })}
      />
      <MaybeField
        path="run.bendRadiusMm"
        value={run.bendRadiusMm}
        text={text.bendRadiusMm}
        onTake={(bendRadiusMm) => change({ bendRadiusMm })}
      />
    </div>
  );
}

/** What joins it at either end, measured as a drop over a current. */
function Joints({ run, plan }: { run: Run; plan: Plan }) {
  const change = useRunChange(run.id);
  const { fieldLabels, fittings } = words;
  const text = fieldLabels.run;
  const at = ({ fittingId, terminal }: Run['from']) => fittings.terminalOf(nameOfId(plan, fittingId) ?? '', terminal);
  return (
    <fieldset className="outputs">
      <legend>{text.joints}</legend>
      <p className="hint">{text.jointsHint}</p>
      <MaybeField
        path="run.fromJointOhm"
        value={run.fromJointOhm}
        text={text.joint(at(run.from))}
        factor={MILLI}
        onTake={(fromJointOhm) => change({ fromJointOhm })}
      />
      <MaybeField
        path="run.toJointOhm"
        value={run.toJointOhm}
        text={text.joint(at(run.to))}
        factor={MILLI}
        onTake={(toJointOhm) => change({ toJointOhm })}
      />
    </fieldset>
  );
}

export function RunFields({ run, plan }: { run: Run; plan: Plan }) {
  const desk = useDeskStore();
  const change = useRunChange(run.id);
  const { inspector, fittings } = words;
  return (
    <div className="fields">
      <LengthPart run={run} plan={plan} />
      <ConductorFields run={run} plan={plan} />
      <Ways run={run} />
      <TextField
        label={inspector.name}
        value={runTitle(plan, run)}
        maxLength={MAX_NAME}
        // the name made from the ends is nobody's own: taken over as typed, it stays made
        onTake={(name) => change({ name: name === runTitle(plan, { ...run, name: '' }) ? '' : name })}
      />
      <Choice
        label={inspector.kind}
        value={run.kind}
        options={KINDS.map((value) => ({ value, text: fittings.runKinds[value] }))}
        {...(run.kind === 'factory' ? { hint: words.fieldLabels.run.factoryHint } : {})}
        onTake={(kind) => change({ kind })}
      />
      <EndFields run={run} plan={plan} />
      <details className="fold">
        <summary>{words.fieldLabels.run.more}</summary>
        <div className="fields">
          <Laid run={run} />
          <UnmarkedFields run={run} plan={plan} />
          <Joints run={run} plan={plan} />
        </div>
      </details>
      <div className="chips">
        {[...run.bends.keys()].map((index) => (
          <button key={index} type="button" onClick={() => select(desk, { kind: 'bend', id: run.id, index })}>
            {inspector.bendShort(index + 1)}
          </button>
        ))}
        <button type="button" disabled={run.locked} onClick={() => runAct(desk, addBendAct)}>
          {inspector.addBend}
        </button>
      </div>
    </div>
  );
}
