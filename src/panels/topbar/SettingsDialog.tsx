import { useState } from 'react';
import { runAct } from '../../desk/acts/index.ts';
import { toggleBigFingers } from '../../desk/acts/toggles.ts';
import { setTheme, themeNow } from '../../look/theme.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { Tick } from '../controls/Tick.tsx';
import { Dialog } from '../dialog/Dialog.tsx';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { SettingInputs } from './SettingInputs.tsx';
import { SettingSizes } from './SettingSizes.tsx';

/** Kept by the page itself: the sketch reads its colours from there. */
function ThemeChoice() {
  const [theme, choose] = useState(themeNow);
  const { settings } = words;
  return (
    <Choice
      label={settings.theme}
      value={theme}
      options={(['paper', 'sun'] as const).map((value) => ({ value, text: settings.themes[value] }))}
      onTake={(next) => {
        setTheme(next);
        choose(next);
      }}
    />
  );
}

/** How this plan is judged and shown; every change acts at once and can be undone. */
export default function SettingsDialog({ onClose }: { onClose: () => void }) {
  const desk = useDeskStore();
  const bigFingers = useDesk((state) => state.bigFingers);
  const { settings } = words;
  return (
    <Dialog title={settings.title} onClose={onClose} beside>
      <div className="fields">
        <SettingSizes />
        <SettingInputs
          legend={settings.electrical}
          names={['restV', 'chargingV', 'duty', 'dropLimit', 'cutOutV', 'bodyOhm', 'jointOhm', 'linkDropV']}
        />
        <SettingInputs legend={words.fieldLabels.settings.batteries} names={['usableShare', 'peukert']} />
        <SettingInputs legend={settings.temperatures} names={['bayC', 'wingC', 'hotC', 'cabinC', 'cargoC', 'underC']} />
        <fieldset>
          <legend>{settings.page}</legend>
          <ThemeChoice />
          <Tick label={settings.bigFingers} checked={bigFingers} onTake={() => runAct(desk, toggleBigFingers)} />
        </fieldset>
      </div>
    </Dialog>
  );
}
