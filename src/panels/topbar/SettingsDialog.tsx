import { words } from '../../words/full.ts';
import { Dialog } from '../dialog/Dialog.tsx';
import { SettingInputs } from './SettingInputs.tsx';
import { SettingSizes } from './SettingSizes.tsx';

/** How this plan is judged and shown; every change acts at once and can be undone. */
export default function SettingsDialog({ onClose }: { onClose: () => void }) {
  const { settings } = words;
  return (
    <Dialog title={settings.title} onClose={onClose} over="tools">
      <div className="fields">
        <SettingSizes />
        <SettingInputs
          legend={settings.electrical}
          names={['restV', 'chargingV', 'duty', 'dropLimit', 'cutOutV', 'bodyOhm', 'jointOhm', 'linkDropV']}
        />
        <SettingInputs legend={words.fieldLabels.settings.batteries} names={['usableShare', 'peukert']} />
        <SettingInputs
          term="derating"
          legend={settings.temperatures}
          names={['bayC', 'wingC', 'hotC', 'cabinC', 'cargoC', 'underC']}
        />
      </div>
    </Dialog>
  );
}
