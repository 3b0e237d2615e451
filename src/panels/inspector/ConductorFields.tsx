import { KNOWN_GAUGES } from '../../plan/gauges.ts';
import type { Conductor, Plan, Run } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { INSULATION_CLASSES } from '../inputs.ts';
import { useAnswer, useUnits } from '../useDesk.ts';
import { Strands } from './Strands.tsx';
import { MaybeChoice } from './Told.tsx';
import { told, useRunChange } from './useChange.ts';

const MATERIALS = ['copper', 'cca10', 'cca15', 'aluminium'] as const;

/** The size, worked out or fixed by hand; what the conductor is made of; what its insulation bears. */
export function ConductorFields({ run, plan }: { run: Run; plan: Plan }) {
  const change = useRunChange(run.id);
  const units = useUnits();
  const answer = useAnswer().runs.find(({ runId }) => runId === run.id);
  const { inspector, fittings } = words;
  const { conductor } = run;
  const set = (patch: Partial<Conductor>) => change({ conductor: { ...conductor, ...patch } });
  const mark = (origin: keyof typeof fittings.origins) => inspector.origin(fittings.origins[origin]);
  const worked = answer?.gauge ?? null;
  const system = `${plan.settings.sizeSystem}:`;
  const sizes = KNOWN_GAUGES.filter((id) => id.startsWith(system) || id === conductor.size);
  const auto =
    worked === null || conductor.size !== 'auto' ? inspector.sizeAuto : `${inspector.sizeAuto}: ${units.gauge(worked)}`;
  return (
    <>
      <Choice
        label={inspector.size}
        value={conductor.size}
        options={[{ value: 'auto', text: auto }, ...sizes.map((id) => ({ value: id, text: units.gauge(id) }))]}
        onTake={(size) => set({ size })}
      />
      <div className="field-pair">
        <Choice
          label={inspector.material}
          mark={mark(conductor.material.origin)}
          value={conductor.material.value}
          options={MATERIALS.map((value) => ({ value, text: fittings.materials[value] }))}
          onTake={(value) => set({ material: told(value) })}
        />
        <Choice
          label={inspector.insulation}
          mark={mark(conductor.insulationC.origin)}
          value={String(conductor.insulationC.value)}
          options={INSULATION_CLASSES.map((value) => ({ value: String(value), text: `${value} °C` }))}
          onTake={(text) => {
            const value = INSULATION_CLASSES.find((one) => String(one) === text);
            if (value !== undefined) set({ insulationC: told(value) });
          }}
        />
      </div>
    </>
  );
}

/** Of a cable that is there already and unmarked: what it is found to be. */
export function UnmarkedFields({ run, plan }: { run: Run; plan: Plan }) {
  const change = useRunChange(run.id);
  const { conductor } = run;
  const set = (patch: Partial<Conductor>) => change({ conductor: { ...conductor, ...patch } });
  return (
    <>
      <Strands run={run} plan={plan} onTake={set} />
      <MaybeChoice
        text={words.fieldLabels.run.copperThrough}
        value={conductor.copperThrough}
        onTake={(copperThrough) => set({ copperThrough })}
      />
    </>
  );
}
