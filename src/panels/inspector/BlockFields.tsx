import { useState } from 'react';
import { commit } from '../../desk/edit.ts';
import { runsAt } from '../../plan/byId.ts';
import { addOutput } from '../../plan/edits/addOutput.ts';
import { removeOutput } from '../../plan/edits/removeOutput.ts';
import { autoLink } from '../../plan/newFitting.ts';
import type { FittingOf, Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { Tick } from '../controls/Tick.tsx';
import { useAnswer, useDeskStore } from '../useDesk.ts';
import { LinkFields } from './LinkFields.tsx';
import { MaybeGauge } from './Told.tsx';
import { useFittingChange } from './useChange.ts';

const MAX_OUTPUTS = 24;

/** The outputs of a block: each straight onto the bus or through a link of its own. */
export function BlockFields({ block, plan }: { block: FittingOf<'block'>; plan: Plan }) {
  const desk = useDeskStore();
  const { change } = useFittingChange(block.id);
  const { fuses } = useAnswer();
  const [refusal, setRefusal] = useState('');
  const { inspector } = words;

  const remove = (terminal: string, number: string) => {
    const isUsed = runsAt(plan, block.id).some((run) =>
      [run.from, run.to].some((end) => end.fittingId === block.id && end.terminal === terminal),
    );
    if (isUsed) setRefusal(inspector.outputInUse(number));
    else if (block.outputs.length === 1) setRefusal(inspector.lastOutput);
    else {
      setRefusal('');
      commit(desk, 'removeOutput', (before) => removeOutput(before, block.id, terminal));
    }
  };

  return (
    <fieldset className="outputs">
      <legend>{inspector.outputs}</legend>
      {block.outputs.map(({ terminal, link }) => {
        const number = terminal.slice('out'.length);
        const setLink = (next: typeof link) =>
          change({
            outputs: block.outputs.map((output) => (output.terminal === terminal ? { terminal, link: next } : output)),
          });
        return (
          <div className="output" key={terminal}>
            <div className="output-head">
              <Tick
                label={inspector.outputFused(number)}
                checked={link !== null}
                onTake={(isFused) => setLink(isFused ? autoLink() : null)}
              />
              <button
                type="button"
                aria-label={inspector.removeOutput(number)}
                onClick={() => remove(terminal, number)}
              >
                ×
              </button>
            </div>
            {link === null ? null : (
              <LinkFields
                link={link}
                answer={fuses.find((fuse) => fuse.fittingId === block.id && fuse.terminal === terminal)}
                plan={plan}
                prefix={inspector.output(number)}
                onTake={setLink}
              />
            )}
          </div>
        );
      })}
      {refusal === '' ? null : (
        <p className="error" role="alert">
          {refusal}
        </p>
      )}
      <button
        type="button"
        disabled={block.outputs.length >= MAX_OUTPUTS}
        onClick={() => commit(desk, 'addOutput', (before) => addOutput(before, block.id))}
      >
        {inspector.addOutput}
      </button>
      <MaybeGauge
        text={words.fieldLabels.outputsTake}
        value={block.outputsTake}
        onTake={(outputsTake) => change({ outputsTake })}
      />
    </fieldset>
  );
}
