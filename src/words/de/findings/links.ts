/** Findings on the fuse-links themselves: what is made, for what, and where they sit. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, said, volts } from './finding.ts';

const SPLIT =
  'Zuleitung aufteilen: zwei Zuleitungen, jede mit eigener Sicherung an der Batterie und eigener Leitung. Nie zwei Einsätze nebeneinander.';

/** 'Der nächste Nennstrom ist 200 A.', 'Die nächsten Nennströme sind 125 A und 150 A.'; '' where no link is held at all. */
function nearest(told: Told, where = ''): string {
  const offered = [told.current('belowA'), told.current('aboveA')].filter((figure) => figure !== '');
  if (offered.length === 0) return '';
  const what = offered.length > 1 ? `Die nächsten Nennströme${where} sind` : `Der nächste Nennstrom${where} ist`;
  return `${what} ${offered.join(' und ')}.`;
}

function notHeldRemedy(told: Told): string {
  const heldBy = told.list('heldBy').map(told.family);
  if (heldBy.length > 0) {
    return said(`Zu den Sicherungen im Bestand eine davon nehmen: ${heldBy.join('; ')}.`, nearest(told, ' im Bestand'));
  }
  const offered = nearest(told);
  return offered === ''
    ? 'Eine andere Bauart nehmen.'
    : `${offered} Ob sie so groß sein darf, entscheidet die Leitung.`;
}

function noneQualifies(told: Told): string {
  const at = fuseAtPlace(told);
  const needed = `nötig sind mindestens ${told.current('neededA', 'mehr')}`;
  const largest = told.current('largestA');
  switch (told.text('ends')) {
    case 'everywhere':
      return `${at}: eine solche Sicherung gibt es nicht; ${needed}${after(', der größte Einsatz hat', largest)}.`;
    case 'inStock':
      return `${at}: keine Sicherung im Bestand passt; ${needed}${after(', die größte davon hat', largest)}.`;
    default:
      return `${at}: keine Sicherung im Bestand passt; ${needed}, und ${told.text('cap') === 'maker' ? 'der Hersteller der Endstufe' : 'die Leitung'} erlaubt ${told.current('ceilingA', 'weniger')}.`;
  }
}

export const links: FindingTable<
  'no-fuse-qualifies' | 'rating-not-held' | 'link-under-voltage' | 'holder-too-hot' | 'fuse-in-return'
> = {
  'no-fuse-qualifies': {
    sentence: noneQualifies,
    remedy: (told) => {
      switch (told.text('ends')) {
        case 'everywhere':
          return SPLIT;
        case 'inStock':
          return 'In den Einstellungen mehr Bauarten von Sicherungen zulassen, oder die Zuleitung aufteilen. Nie zwei Einsätze nebeneinander.';
        default:
          return 'Größeren Querschnitt nehmen, in den Einstellungen mehr Bauarten von Sicherungen zulassen, oder die Zuleitung aufteilen.';
      }
    },
  },
  'rating-not-held': {
    sentence: (told) => {
      const set = `${fuseAtPlace(told)}: auf ${told.current('ratingA', 'einen eigenen Nennstrom')} festgelegt`;
      if (told.severity === 'note') return `${set}; keine Sicherung im Bestand hat das.`;
      const family = told.text('family');
      return `${set}; einen solchen Einsatz gibt es nicht${family === null ? '' : ` (${told.family(family)})`}.`;
    },
    remedy: notHeldRemedy,
  },
  'link-under-voltage': {
    sentence: (told) =>
      `${fuseAtPlace(told)}: für ${volts(told, 'ratedV', 'weniger')} gemacht, das System hat ${volts(told, 'systemV', 'mehr')}: nach dem Schmelzen kann ein Lichtbogen stehen bleiben.`,
    remedy: (told) => `Einen Einsatz für mindestens ${volts(told, 'systemV', 'die Bordspannung')} nehmen.`,
  },
  'holder-too-hot': {
    sentence: (told) =>
      `${fuseAtPlace(told)}: am Halter ${told.temperature('holderC', 'große Hitze')}; über ${told.temperature('limitC', '125 °C')} ist nirgends veröffentlicht, was eine Sicherung trägt.`,
    remedy: () => 'An eine kühlere Stelle setzen oder dort messen: bei dieser Hitze ist kein Nennstrom belegt.',
  },
  'fuse-in-return': {
    sentence: (told) =>
      `${fuseAtPlace(told)}: sitzt in der Rückleitung. Keine Leitung der Zuleitung ist damit geschützt; löst sie aus, sucht der Strom den Rückweg über die Signalleitungen.`,
    remedy: () => 'Aus der Masse herausnehmen und die Zuleitung an der Batterie sichern.',
  },
};
