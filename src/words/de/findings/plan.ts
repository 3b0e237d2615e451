/** Findings on what is drawn and on what was told. */
import type { Told } from '../../told.ts';
import { terminal } from '../fittings.ts';
import { after, type FindingTable, withOthers } from './finding.ts';

const CHANGES: Readonly<Record<string, string>> = {
  size: 'Querschnitt',
  material: 'Metall',
  class: 'Isolierklasse',
};

const isReversed = (told: Told): boolean => told.text('reversed') === 'yes';

export const plan: FindingTable<
  | 'not-fed'
  | 'loose-end'
  | 'no-rating'
  | 'ratings-differ'
  | 'load-unknown'
  | 'ask-external-fuse'
  | 'firewall-no-grommet'
  | 'pass-through-shared'
  | 'cable-changes'
  | 'ground-on-sensor'
> = {
  'not-fed': {
    sentence: (told) =>
      isReversed(told)
        ? `${told.place(0)}: verpolt, der Pluspol der Batterie liegt an der Masseklemme.`
        : `${told.place(0)}: mit keiner Batterie verbunden.`,
    remedy: (told) =>
      isReversed(told)
        ? 'Die beiden Leitungen tauschen: die abgesicherte Zuleitung an die Plusklemme, die andere an die Masseklemme.'
        : 'Die Leitung zeichnen, die den Strom bringt.',
  },
  'loose-end': {
    sentence: (told) => {
      const loose = told.list('terminals').map(terminal).join(' und ');
      return loose === ''
        ? `${told.place(0)}: führt nirgendwohin.`
        : `${told.place(0)}: nicht angeschlossen: ${loose}.`;
    },
    remedy: () => 'Die Leitung fertig zeichnen oder löschen, was nicht gebraucht wird.',
  },
  'no-rating': {
    sentence: (told) =>
      `${told.place(0)}: die Nennleistung fehlt; so lassen sich Leitung und Sicherung nicht berechnen.`,
    remedy: () => 'Die Nennleistung an der angeschlossenen Last eintragen, oder die Sicherungen am Gerät.',
  },
  'ratings-differ': {
    sentence: (told) =>
      `${told.place(0)}: nach der Nennleistung ${told.current('ratedA', 'ein Strom')}, die eigenen Sicherungen ergeben ${told.current('fusesA', 'einen anderen')}: eines davon stimmt nicht.`,
    remedy: () => 'Beides am Gerät nachsehen: die Leistung an der angeschlossenen Last und jede Sicherung.',
  },
  'load-unknown': {
    sentence: (told) => `${told.place(0)}: die angeschlossene Last ist nicht angegeben.`,
    remedy: () => 'Die Last eintragen; eine kleinere Impedanz zieht mehr Strom.',
  },
  'ask-external-fuse': {
    sentence: (told) =>
      `${told.place(0)}: keine eigene Sicherung, und die größte äußere Sicherung ist nicht angegeben.`,
    remedy: () => 'Den Wert beim Hersteller erfragen und eintragen.',
  },
  'firewall-no-grommet': {
    sentence: (told) => `${told.place(0)}: führt ohne Durchführung durch die Spritzwand.`,
    remedy: () =>
      'An der Spritzwand eine Durchführung auf die Leitung setzen: blanke Blechkanten schneiden die Isolierung durch.',
  },
  'pass-through-shared': {
    sentence: (told) =>
      told.text('short') === 'yes'
        ? `${told.place(0)}: ${told.number('runs') ?? 'mehrere'} Leitungen treffen sich, Zuleitung und Masse darunter: so gezeichnet ist das ein Kurzschluss, und nichts weiter wird berechnet.`
        : `${told.place(0)}: ${told.number('runs') ?? 'mehrere'} Leitungen treffen sich und sind damit alle verbunden: was darüber gesagt ist, gilt nicht.`,
    remedy: () =>
      'Jeder Leitung ihre eigene Durchführung geben; wo eine Leitung sich teilt, einen Verteilerblock setzen.',
  },
  'cable-changes': {
    sentence: (told) => {
      const changes = told.list('changes').map((change) => CHANGES[change] ?? change);
      return `${told.place(0)} und ${told.placeCount > 2 ? 'die anderen Stücke' : told.place(1)} sind eine Leitung, unterscheiden sich aber${after(' in:', changes.join(' und '))}.`;
    },
    remedy: () =>
      'Eine Durchführung verbindet nichts: allen Stücken denselben Querschnitt, dasselbe Metall und dieselbe Klasse geben.',
  },
  'ground-on-sensor': {
    sentence: (told) => {
      const runs = told.number('runs') ?? 1;
      const which = withOthers(told.nameOfKind('run') ?? 'eine Masseleitung', runs - 1);
      const go = runs > 1 ? 'führen' : 'führt';
      return told.severity === 'note'
        ? `${told.place(0)}: ob der Minuspol einen Sensor trägt, ist nicht angegeben, und ${which} ${go} darauf.`
        : `${told.place(0)}: der Minuspol trägt den Batteriesensor des Fahrzeugs, und ${which} ${go} auf den Pol: was dort fließt, wird nie mitgezählt.`;
    },
    remedy: (told) =>
      told.severity === 'note'
        ? 'Nachsehen und eintragen. Mit Sensor kommt die Masse auf die Karosserieseite.'
        : 'Auf die Karosserieseite des Sensors legen: dorthin, wo das Masseband der Batterie an die Karosserie geht.',
  },
};
