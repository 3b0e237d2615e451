import type { FittingOf } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { Tick } from '../controls/Tick.tsx';
import { InputField, LengthInput, MaybeField, MILLI } from './Told.tsx';
import { useFittingChange } from './useChange.ts';

export function AlternatorFields({ alternator }: { alternator: FittingOf<'alternator'> }) {
  const { change } = useFittingChange(alternator.id);
  const text = words.fieldLabels.alternator;
  const of = { ownerId: alternator.id, part: alternator.kind };
  return (
    <>
      <InputField {...of} path="ratedA" input={alternator.ratedA} text={text.ratedA} />
      <InputField
        {...of}
        path="idleA"
        input={alternator.idleA}
        text={text.idleA}
        onClear={() => change({ idleA: null })}
      />
      <InputField {...of} path="hotShare" input={alternator.hotShare} text={text.hotShare} />
      <InputField {...of} path="vehicleA" input={alternator.vehicleA} text={text.vehicleA} />
    </>
  );
}

/** A post or a stud whose battery stands elsewhere: that battery, and the cable the factory laid from it. */
export function RemoteSourceFields({ source }: { source: FittingOf<'jumpPost' | 'takeOff'> }) {
  const text = words.fieldLabels.remoteSource;
  const of = { ownerId: source.id, part: source.kind };
  return (
    <>
      <InputField {...of} path="ccaA" input={source.ccaA} text={text.ccaA} />
      <InputField {...of} path="capacityAh" input={source.capacityAh} text={text.capacityAh} />
      <LengthInput {...of} path="cable.lengthM" input={source.cable.lengthM} text={text.lengthM} />
      <InputField {...of} path="cable.areaMm2" input={source.cable.areaMm2} text={text.areaMm2} />
    </>
  );
}

export function TakeOffFields({ takeOff }: { takeOff: FittingOf<'takeOff'> }) {
  const { change } = useFittingChange(takeOff.id);
  const text = words.fieldLabels.takeOff;
  return (
    <>
      <MaybeField path="takeOff.fuseA" value={takeOff.fuseA} text={text.fuseA} onTake={(fuseA) => change({ fuseA })} />
      <InputField ownerId={takeOff.id} part="takeOff" path="usedA" input={takeOff.usedA} text={text.usedA} />
      <RemoteSourceFields source={takeOff} />
    </>
  );
}

export function ChargerFields({ charger }: { charger: FittingOf<'charger'> }) {
  const text = words.fieldLabels.charger;
  const of = { ownerId: charger.id, part: charger.kind };
  return (
    <>
      <InputField {...of} path="outputMaxA" input={charger.outputMaxA} text={text.outputMaxA} />
      <InputField {...of} path="outputV" input={charger.outputV} text={text.outputV} />
      <InputField {...of} path="efficiency" input={charger.efficiency} text={text.efficiency} />
    </>
  );
}

export function CapacitorFields({ capacitor }: { capacitor: FittingOf<'capacitor'> }) {
  const { change } = useFittingChange(capacitor.id);
  const text = words.fieldLabels.capacitor;
  const of = { ownerId: capacitor.id, part: capacitor.kind };
  return (
    <>
      <InputField {...of} path="capacitanceF" input={capacitor.capacitanceF} text={text.capacitanceF} />
      <InputField {...of} path="esrOhm" input={capacitor.esrOhm} text={text.esrOhm} factor={MILLI} />
      <Tick {...text.precharged} checked={capacitor.precharged} onTake={(precharged) => change({ precharged })} />
    </>
  );
}
