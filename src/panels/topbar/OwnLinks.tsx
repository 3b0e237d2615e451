import { useRef, useState } from 'react';
import { commit } from '../../desk/edit.ts';
import { changeSettings } from '../../plan/edits/changeSettings.ts';
import type { OwnLink, Settings } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { focusFirstInvalid } from '../controls/firstInvalid.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { OwnLinkFields, type ToldLink } from './OwnLinkFields.tsx';

const FAMILIES = ['own1', 'own2', 'own3', 'own4', 'own5', 'own6'] as const satisfies OwnLink['family'][];

const NONE_YET: ToldLink = { name: '', seat: 'holder', ratingsA: [], breakingA: null, ratedV: null };

/** Links and breakers that no list here knows: told by whoever holds them. */
export function OwnLinks() {
  const desk = useDeskStore();
  const now = useDesk((state) => state.plan.settings);
  const [error, setError] = useState('');
  const text = words.fieldLabels.settings;
  const set = (patch: Partial<Settings>) => commit(desk, 'settings', (plan) => changeSettings(plan, patch));
  const free = FAMILIES.find((family) => now.ownLinks.every((one) => one.family !== family));

  const remove = ({ family, name }: OwnLink) => {
    const linkFamilies = now.linkFamilies.filter((one) => one !== family);
    if (linkFamilies.length === 0) return setError(words.settings.familiesLast);
    const isGone = set({ ownLinks: now.ownLinks.filter((one) => one.family !== family), linkFamilies });
    setError(isGone ? '' : text.ownInUse(name));
  };
  return (
    <fieldset>
      <legend>{text.own}</legend>
      <p className="hint">{text.ownHint}</p>
      {now.ownLinks.map((own) => (
        <div key={own.family} className="output" data-own={own.family}>
          <OwnLinkFields
            link={own}
            onTake={(patch) => {
              const ownLinks = now.ownLinks.map((one) => (one === own ? told(own.family, { ...own, ...patch }) : one));
              set({ ownLinks: ownLinks.filter((one) => one !== null) });
            }}
          />
          <button type="button" className="danger" onClick={() => remove(own)}>
            {text.ownRemove(own.name)}
          </button>
        </div>
      ))}
      {error === '' ? null : (
        <p className="error" role="alert">
          {error}
        </p>
      )}
      {free === undefined ? null : (
        <NewFamily
          key={now.ownLinks.length}
          onAdd={(link) => {
            const own = told(free, link);
            if (own === null) return false;
            const linkFamilies = own.seat === 'holder' ? [...now.linkFamilies, free] : now.linkFamilies;
            return set({ ownLinks: [...now.ownLinks, own], linkFamilies });
          }}
        />
      )}
    </fieldset>
  );
}

/** The family as a plan holds it, or null while something is missing. */
function told(family: OwnLink['family'], { name, seat, ratingsA, breakingA, ratedV }: ToldLink): OwnLink | null {
  if (name === '' || ratingsA.length === 0 || ratedV === null) return null;
  return { family, name, seat, ratingsA: [...ratingsA], breakingA, ratedV };
}

function NewFamily({ onAdd }: { onAdd: (link: ToldLink) => boolean }) {
  const [link, setLink] = useState(NONE_YET);
  const [error, setError] = useState('');
  const place = useRef<HTMLDivElement>(null);
  const text = words.fieldLabels.settings;
  return (
    <details className="fold">
      <summary>{text.ownNew}</summary>
      <div className="fields" ref={place}>
        <OwnLinkFields link={link} onTake={(patch) => setLink((before) => ({ ...before, ...patch }))} />
        {error === '' ? null : (
          <p className="error" role="alert">
            {error}
          </p>
        )}
        <button
          type="button"
          onClick={() => {
            if (!focusFirstInvalid(place.current)) setError(onAdd(link) ? '' : text.ownMissing);
          }}
        >
          {text.ownAdd}
        </button>
      </div>
    </details>
  );
}
