import { useState } from 'react';
import { commit } from '../../desk/edit.ts';
import { changeSettings } from '../../plan/edits/changeSettings.ts';
import { defaultStock, KNOWN_GAUGES } from '../../plan/gauges.ts';
import type { LinkFamily, Settings } from '../../plan/schema.ts';
import { capitalised, familyName } from '../../words/answer.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { Tick } from '../controls/Tick.tsx';
import { useDesk, useDeskStore, useUnits } from '../useDesk.ts';
import { OwnLinks } from './OwnLinks.tsx';

const FAMILIES: readonly LinkFamily[] = [
  'iso8820-3-F',
  'iso8820-3-C',
  'iso8820-3-E',
  'iso8820-5-SF30',
  'slotted-short',
  'iso8820-5-SF51',
  'ul248-15-T',
  'slotted-long',
];

const VOLTAGES = [12, 24] as const;

interface StockProps<T extends string> {
  legend: string;
  all: readonly { value: T; text: string }[];
  chosen: readonly T[];
  keepOne: string;
  isWide?: boolean;
  onTake: (chosen: T[]) => void;
}

/** Ticks for what is in stock; the last one stays. */
function Stock<T extends string>({ legend, all, chosen, keepOne, isWide = false, onTake }: StockProps<T>) {
  const [refusal, setRefusal] = useState('');
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div className={isWide ? 'stock stock-wide' : 'stock'}>
        {all.map(({ value, text }) => (
          <Tick
            key={value}
            label={text}
            checked={chosen.includes(value)}
            onTake={(isIn) => {
              // in the order of the list, so that equal choices are equal plans
              const next = all.map((one) => one.value).filter((one) => (one === value ? isIn : chosen.includes(one)));
              setRefusal(next.length === 0 ? keepOne : '');
              if (next.length > 0) onTake(next);
            }}
          />
        ))}
      </div>
      {refusal === '' ? null : (
        <p className="error" role="alert">
          {refusal}
        </p>
      )}
    </fieldset>
  );
}

/** Rule set, units, and what the shop holds. */
export function SettingSizes() {
  const desk = useDeskStore();
  const units = useUnits();
  const plan = useDesk((state) => state.plan);
  const now = plan.settings;
  const own = now.ownLinks.filter(({ seat }) => seat === 'holder').map(({ family }) => family);
  const { settings, fittings, fieldLabels } = words;
  const set = (patch: Partial<Settings>) => commit(desk, 'settings', (plan) => changeSettings(plan, patch));
  const sizes = KNOWN_GAUGES.filter((id) => id.startsWith(`${now.sizeSystem}:`) || now.stock.includes(id));
  return (
    <>
      <Choice
        label={settings.ruleSet}
        value={now.ruleSet}
        options={(['vehicle', 'boatCfr', 'boatAbyc'] as const).map((value) => ({
          value,
          text: capitalised(fittings.ruleSets[value]),
        }))}
        onTake={(ruleSet) => set({ ruleSet })}
      />
      <Choice
        label={fieldLabels.settings.systemV}
        hint={fieldLabels.settings.systemVHint}
        value={String(now.systemV)}
        options={VOLTAGES.map((v) => ({ value: String(v), text: fieldLabels.settings.volts(v) }))}
        onTake={(text) => {
          const systemV = VOLTAGES.find((v) => String(v) === text);
          if (systemV !== undefined) set({ systemV });
        }}
      />
      <div className="field-grid">
        <Choice
          label={settings.lengths}
          value={now.showLength}
          options={[
            { value: 'm', text: capitalised(settings.metres) },
            { value: 'ft-in', text: capitalised(settings.feet) },
          ]}
          onTake={(showLength) => set({ showLength })}
        />
        <Choice
          label={settings.sizes}
          value={now.sizeSystem}
          options={(['sae', 'awg', 'mm2'] as const).map((value) => ({ value, text: settings[value] }))}
          onTake={(sizeSystem) => set({ sizeSystem, stock: defaultStock(sizeSystem) })}
        />
      </div>
      <Stock
        legend={settings.stock}
        all={sizes.map((value) => ({ value, text: units.gauge(value) }))}
        chosen={now.stock}
        keepOne={settings.stockLast}
        onTake={(stock) => set({ stock })}
      />
      <Stock
        legend={settings.families}
        all={[...FAMILIES, ...own].map((value) => ({ value, text: familyName(plan, value) }))}
        chosen={now.linkFamilies}
        keepOne={settings.familiesLast}
        isWide
        onTake={(linkFamilies) => set({ linkFamilies })}
      />
      <OwnLinks />
      <Tick
        label={settings.engine}
        hint={settings.engineHint}
        checked={now.engineAlwaysRunning}
        onTake={(engineAlwaysRunning) => set({ engineAlwaysRunning })}
      />
    </>
  );
}
