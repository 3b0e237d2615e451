import { commit } from '../../desk/edit.ts';
import { setInput } from '../../plan/edits/setInput.ts';
import { words } from '../../words/full.ts';
import { nameOfId } from '../../words/index.ts';
import { Choice } from '../controls/Choice.tsx';
import { inputUnit } from '../controls/inputUnit.ts';
import { NumberField } from '../controls/NumberField.tsx';
import { boundsIn, INSULATION_CLASSES } from '../inputs.ts';
import { useDeskStore, usePlan } from '../useDesk.ts';

/** An assumed number, to be told where it is used. The bounds are those of the plan's document. */
export function AssumptionField({ path, value }: { path: string; value: number }) {
  const desk = useDeskStore();
  const plan = usePlan();
  const { min, max } = boundsIn(plan, path);
  const label = words.assumption(path, (id) => nameOfId(plan, id));
  const tell = (told: number) => commit(desk, 'input', (before) => setInput(before, path, told, 'told'));
  if (path.endsWith('.insulationC')) {
    return (
      <Choice
        label={label}
        value={String(value)}
        options={INSULATION_CLASSES.map((one) => ({ value: String(one), text: `${one} °C` }))}
        hint={words.whys.why.editHint}
        onTake={(text) => tell(Number(text))}
      />
    );
  }
  return (
    <NumberField
      label={label}
      value={value}
      min={min}
      max={max}
      unit={inputUnit(path)}
      hint={words.whys.why.editHint}
      onTake={(told) => told !== null && tell(told)}
    />
  );
}
