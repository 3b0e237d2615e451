import { commit } from '../../desk/edit.ts';
import { setInput } from '../../plan/edits/setInput.ts';
import type { TermId } from '../../words/en/glossary.ts';
import { words } from '../../words/full.ts';
import { inputUnit } from '../controls/inputUnit.ts';
import { NumberField } from '../controls/NumberField.tsx';
import { Labelled } from '../help/Labelled.tsx';
import { inputBounds } from '../inputs.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';

type Name = keyof typeof words.settings.inputs;

/** Assumed values of the settings, each with its mark and its source. */
export function SettingInputs({ legend, names, term }: { legend: string; term?: TermId; names: readonly Name[] }) {
  const desk = useDeskStore();
  const settings = useDesk((state) => state.plan.settings);
  return (
    <fieldset>
      <legend>
        <Labelled term={term} word={legend}>
          {legend}
        </Labelled>
      </legend>
      <div className="field-grid">
        {names.map((name) => {
          const { value, origin, source } = settings[name];
          const path = `settings.${name}`;
          return (
            <NumberField
              key={name}
              label={words.settings.inputs[name]}
              value={value}
              {...inputBounds(path)}
              unit={inputUnit(path)}
              mark={words.inspector.origin(words.fittings.origins[origin])}
              {...(source === undefined ? {} : { hint: words.sourceNote(source) })}
              onTake={(told) => {
                if (told !== null) commit(desk, 'input', (plan) => setInput(plan, path, told, 'told'));
              }}
            />
          );
        })}
      </div>
    </fieldset>
  );
}
