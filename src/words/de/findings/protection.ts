/** Findings on fuses and on what no fuse protects. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, said, volts, withOthers } from './finding.ts';

const sourceName = (told: Told): string => told.nameOfKind('battery') ?? 'der Quelle';
const fuseName = (told: Told): string => told.nameOfKind('fuse') ?? told.nameOfKind('block') ?? 'Die Sicherung davor';
const cableName = (told: Told): string => told.nameOfKind('run') ?? 'die Leitung';

function unprotectedSentence(told: Told): string {
  const length = told.lengthBeside('unprotectedM', 'limitM', 'zu viel');
  const source = sourceName(told);
  const where =
    told.text('endsAt') === 'nothing'
      ? `${length} Leitung ab ${source} stehen unter Spannung und enden ohne Sicherung.`
      : `Die erste Sicherung kommt nach ${length} Leitung ab ${source}.`;
  return said(
    where,
    told.severity === 'stop' ? 'Berührt diese Strecke die Karosserie, brennt sie, und nichts löst aus.' : '',
  );
}

function unprotectedRemedy(told: Told): string {
  const limit = told.length('limitM', '45 cm');
  const [lengthM, limitM] = [told.number('unprotectedM'), told.number('limitM')];
  if (told.severity === 'note') {
    return limitM === 0
      ? 'Näher ist besser: das Ziel ist direkt am Pol.'
      : `Näher ist besser: das Ziel sind höchstens ${limit} Leitung.`;
  }
  if (lengthM !== null && limitM !== null && lengthM <= limitM) {
    return `Nachmessen: nur mit höchstens ${limit} ist es zulässig. Sicherung näher setzen genügt auch.`;
  }
  if (told.severity === 'fix')
    return `Sicherung näher setzen, innerhalb ${limit}, oder an der Leitung eintragen, warum es näher nicht geht.`;
  const isSheathed = told.text('sheathed') === 'yes';
  return `Sicherung näher setzen, innerhalb ${limit}${isSheathed ? '; ein Schutzrohr gleicht mehr nicht aus' : ''}.`;
}

export const protection: FindingTable<
  | 'unprotected-length'
  | 'no-device'
  | 'fuse-over-conductor'
  | 'step-down'
  | 'fuse-under-load'
  | 'fuse-over-maker'
  | 'parallel-one-fuse'
  | 'source-short'
  | 'series-batteries'
  | 'positive-earth'
> = {
  'unprotected-length': { sentence: unprotectedSentence, remedy: unprotectedRemedy },
  'no-device': {
    sentence: (told) =>
      told.text('endsAt') === 'nothing' && told.placeKind(told.placeCount - 1) !== 'charger'
        ? `${told.length('lengthM', 'Eine Strecke')} Leitung ab ${sourceName(told)}: unter Spannung ohne Sicherung, und ohne Ziel.`
        : `${cableName(told)}: keine Sicherung. Ab ${sourceName(told)} löst nichts aus, wenn die Leitung die Karosserie berührt.`,
    remedy: (told) =>
      told.severity === 'note'
        ? 'Fertig verlegen, mit einer Sicherung am Anfang, oder abnehmen.'
        : `Eine Sicherung auf die Leitung setzen, innerhalb ${told.length('limitM', '45 cm')} ab ${sourceName(told)}.`,
  },
  'fuse-over-conductor': {
    sentence: (told) =>
      `${fuseName(told)} lässt ${told.current('ratingA', 'mehr')} zu; ${cableName(told)} verträgt ${told.current('ceilingA', 'weniger')}. Die Leitung brennt, bevor die Sicherung auslöst.`,
    remedy: (told) => {
      const [amplifier, largest] = [told.named('ampId'), told.current('largestA')];
      if (amplifier !== null)
        return `In die Zuleitung (${amplifier}) eine ${largest === '' ? 'kleinere Sicherung' : `Sicherung von höchstens ${largest}`} setzen oder die Masseleitung mit größerem Querschnitt legen.`;
      return largest === ''
        ? 'Kleinere Sicherung einsetzen oder größeren Querschnitt legen.'
        : `Eine Sicherung von höchstens ${largest} einsetzen oder größeren Querschnitt legen.`;
    },
  },
  'step-down': {
    sentence: (told) =>
      said(
        `${cableName(told)}: dünner als die Leitung davor, verträgt ${told.current('ceilingA', 'weniger')}; ${fuseName(told)} lässt ${told.current('ratingA', 'mehr')} hinein.`,
        told.severity === 'note' ? 'Als Anschlussende ist sie kurz genug.' : '',
      ),
    remedy: (told) =>
      told.severity === 'note'
        ? `Unter ${told.length('limitM', '17,8 cm')} halten.`
        : `Am Anfang eine eigene Sicherung setzen${after(', höchstens', told.current('largestA'))}, oder mit der dickeren Leitung weiterfahren.`,
  },
  'fuse-under-load': {
    sentence: (told) => {
      const fuse = `${fuseAtPlace(told)}${after(', mit', told.current('ratingA'))}`;
      if (told.text('alone') === 'yes') {
        return `${fuse}: löst aus, wenn eine Batterie leer oder abgeklemmt ist und die andere allein speist: das sind ${told.current('fullA', 'mehr')}.`;
      }
      return told.severity === 'stop'
        ? `${fuse}: kleiner als der volle Strom${after(' von', told.current('fullA'))}.`
        : `${fuse}: auf Dauer ${told.current('heatingA', 'zu viel')}; an dieser Stelle trägt sie ${told.current('forLongA', 'weniger')}.`;
    },
    remedy: (told) => {
      if (told.number('fitsA') !== null)
        return `Eine mit ${told.current('fitsA')} einsetzen, oder sie berechnen lassen.`;
      const [amplifier, cable] = [told.named('ampId'), told.named('runId')];
      return amplifier === null
        ? `Größeren Querschnitt legen${cable === null ? '' : ` (${cable})`}, damit eine größere Sicherung erlaubt ist, oder die Zuleitung aufteilen. Nie nur die Sicherung vergrößern.`
        : `Der Hersteller erlaubt höchstens ${told.current('makerMaxA', 'das Angegebene')} (${amplifier}): diesen Wert, die Leistung und die Last prüfen. Nie nur die Sicherung vergrößern.`;
    },
  },
  'fuse-over-maker': {
    sentence: (told) =>
      `${fuseName(told)} lässt ${told.current('ratingA', 'mehr')} zu; bei ${told.nameOfKind('amplifier') ?? 'der Endstufe'} erlaubt der Hersteller ${told.current('makerMaxA', 'weniger')}.`,
    remedy: (told) =>
      `Eine Sicherung von höchstens ${told.current('makerMaxA', 'dem Wert des Herstellers')} einsetzen.`,
  },
  'parallel-one-fuse': {
    sentence: (told) => {
      const runs = told.number('runs') ?? 2;
      const which =
        runs === 2 && told.placeKind(1) === 'run'
          ? `${told.place(0)} und ${told.place(1)}`
          : withOthers(told.place(0), runs - 1);
      const one =
        told.severity === 'note'
          ? 'jede trägt allein alles'
          : `eine allein verträgt ${told.current('ampacityA', 'weniger')}`;
      const fuse =
        told.nameOfKind('fuse') ?? told.nameOfKind('block') ?? told.nameOfKind('breaker') ?? 'dieselbe Sicherung';
      return `${which}: nebeneinander hinter einer Sicherung. ${fuse} lässt ${told.current('limitA', 'mehr')} zu; ${one}.`;
    },
    remedy: () => 'Jeder am Anfang eine eigene Sicherung geben: löst sich eine, übernimmt die andere alles.',
  },
  'source-short': {
    sentence: (told) =>
      `${cableName(told)}: verbindet Plus von ${sourceName(told)} unmittelbar mit der Karosserie oder einem Minuspol.`,
    remedy: () => 'Die Leitung an einem Ende abnehmen.',
  },
  'series-batteries': {
    sentence: (told) => {
      const which =
        told.placeCount === 2
          ? `${told.place(0)} und ${told.place(1)}`
          : withOthers(told.place(0), told.placeCount - 1);
      return `${which}: in Reihe geschaltet; an den Verbrauchern liegt ${told.number('count') ?? 'mehr'}-mal ${volts(told, 'systemV', 'die Bordspannung')}.`;
    },
    remedy: () =>
      'Parallel schalten, jede mit eigener Sicherung. Eine gewollte Reihenschaltung wird als eine Batterie mit ihrer ganzen Spannung gezeichnet.',
  },
  'positive-earth': {
    sentence: (told) =>
      `${told.place(0)}: Plus liegt an der Karosserie, Minus nicht: mit Plus an Masse wird hier nichts berechnet.`,
    remedy: () =>
      'Minus an die Karosserie legen und von Plus speisen; ein Fahrzeug mit Plus an Masse wird hier nicht geplant.',
  },
};
