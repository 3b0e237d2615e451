import { autoLink } from '../../plan/newFitting.ts';
import type { FittingOf, Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { Choice } from '../controls/Choice.tsx';
import { Tick } from '../controls/Tick.tsx';
import { useAnswer } from '../useDesk.ts';
import { LinkFields } from './LinkFields.tsx';
import { InputField, LengthInput, MaybeChoice, MILLI } from './Told.tsx';
import { useFittingChange } from './useChange.ts';

type Battery = FittingOf<'battery'>;

const CHEMISTRIES = ['leadAcid', 'lithium', 'supercapacitor'] as const;
const STANDARDS = ['sae', 'en', 'din', 'iec', 'ca'] as const;

/** A strap that is ticked on: the project's assumption, as for a new battery. */
const USUAL_STRAP = {
  lengthM: { value: 0.4, origin: 'assumed', source: 'feedrunRules' },
  areaMm2: { value: 25, origin: 'assumed', source: 'feedrunRules' },
} as const;

/** Kind, size and resistance: a lead-acid battery is known by its cranking amperes, the others by their resistance. */
function Cells({ battery }: { battery: Battery }) {
  const { change } = useFittingChange(battery.id);
  const text = words.fieldLabels.battery;
  const of = { ownerId: battery.id, part: battery.kind };
  return (
    <>
      <Choice
        {...text.chemistry}
        value={battery.chemistry}
        options={CHEMISTRIES.map((value) => ({ value, text: text.chemistries[value] }))}
        onTake={(chemistry) => change({ chemistry })}
      />
      {battery.chemistry === 'leadAcid' ? (
        <div className="field-pair">
          <InputField {...of} path="ccaA" input={battery.ccaA} text={text.ccaA} />
          <Choice
            {...text.ccaStandard}
            value={battery.ccaStandard}
            options={STANDARDS.map((value) => ({ value, text: text.ccaStandards[value] }))}
            onTake={(ccaStandard) => change({ ccaStandard })}
          />
        </div>
      ) : null}
      <InputField {...of} path="capacityAh" input={battery.capacityAh} text={text.capacityAh} />
      <InputField
        {...of}
        path="internalOhm"
        input={battery.internalOhm}
        text={text.internalOhm}
        factor={MILLI}
        onClear={() => change({ internalOhm: null })}
      />
    </>
  );
}

/** What sits on its posts: a link, a sensor, the factory's strap. */
export function BatteryFields({ battery, plan }: { battery: Battery; plan: Plan }) {
  const { change } = useFittingChange(battery.id);
  const answer = useAnswer().fuses.find(({ fittingId }) => fittingId === battery.id);
  const { inspector, fieldLabels } = words;
  const text = fieldLabels.battery;
  const { strap, postLink } = battery;
  return (
    <>
      <Cells battery={battery} />
      <Tick
        {...text.postLink}
        checked={postLink !== null}
        onTake={(isThere) => change({ postLink: isThere ? autoLink() : null })}
      />
      {postLink === null ? null : (
        <LinkFields
          link={postLink}
          seat="post"
          answer={answer}
          plan={plan}
          prefix={text.postLinkPrefix}
          onTake={(link) => change({ postLink: link })}
        />
      )}
      <MaybeChoice
        text={text.sensedNegative}
        value={battery.sensedNegative}
        onTake={(sensedNegative) => change({ sensedNegative })}
      />
      <Tick
        label={inspector.strap}
        checked={strap !== null}
        onTake={(isThere) =>
          change({
            strap: isThere ? { lengthM: { ...USUAL_STRAP.lengthM }, areaMm2: { ...USUAL_STRAP.areaMm2 } } : null,
          })
        }
      />
      {strap === null ? null : (
        <div className="field-pair">
          <LengthInput
            ownerId={battery.id}
            part="battery"
            path="strap.lengthM"
            input={strap.lengthM}
            text={{ label: inspector.strapLength }}
          />
          <InputField
            ownerId={battery.id}
            part="battery"
            path="strap.areaMm2"
            input={strap.areaMm2}
            text={{ label: inspector.strapArea }}
          />
        </div>
      )}
    </>
  );
}
