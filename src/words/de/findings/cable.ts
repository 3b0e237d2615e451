/** Findings on conductors: size, drop, heat, ground. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, said, withOthers } from './finding.ts';

const BINDS: Readonly<Record<string, string>> = {
  drop: 'maßgebend ist der Spannungsfall',
  fuse: 'maßgebend ist die nötige Sicherung',
  ampacity: 'maßgebend ist die Strombelastbarkeit',
  heating: 'maßgebend ist die Wärme ringsum',
  ground: 'maßgebend ist die Zuleitung, zu der sie passen muss',
};

const METALS: Readonly<Record<string, string>> = {
  copper: 'Kupfer',
  cca10: 'kupferkaschiertes Aluminium (10 %)',
  cca15: 'kupferkaschiertes Aluminium (15 %)',
  aluminium: 'Aluminium',
};
const isOneMetal = (told: Told): boolean => told.text('metal') === told.text('feedMetal');
const of = (told: Told, size: string, metal: string): string =>
  said(told.gauge(size), METALS[told.text(metal) ?? ''] ?? '');

/** The air is as hot as the class. */
function nothingCarried(told: Told): string {
  const runs = withOthers(told.place(0), told.placeCount - 1);
  const air = told.temperature('airC', 'so heiß, wie die Isolierung werden darf');
  const classC = told.temperature('classC', 'weniger');
  const mark =
    told.text('unmarked') === 'yes'
      ? `eine Leitung ohne Aufdruck zählt bis ${classC}`
      : `die Isolierung ist für ${classC} gemacht`;
  return `${runs}: keine Strombelastbarkeit, denn die Luft hat dort ${air}, und ${mark}.`;
}

/** '; ebenso 2 weitere über 5,0 %' of the others that one note is for. */
function moreLosing(told: Told): string {
  const others = (told.number('loads') ?? 1) - 1;
  return others > 0 ? `; ebenso ${others} weitere über ${told.percent('limitPercent', '5 %')}` : '';
}

function heatingSentence(told: Told): string {
  const held =
    told.text('held') === 'fuseRating'
      ? `bei ${told.current('currentA', 'dem Nennstrom')}, die ihre Sicherung durchlässt, `
      : '';
  const hot = told.temperature('conductorC');
  return hot === ''
    ? `${told.place(0)}: ${held}keine Temperatur, bei der die Erwärmung endet. Die Leitung heizt sich auf, bis sie versagt.`
    : `${told.place(0)}: ${held}Erwärmung auf ${hot}${after('; die Isolierung ist gemacht für', told.temperature('classC'))}.`;
}

const COOLER = 'Größeren Querschnitt, bessere Isolierklasse oder kühleren Weg nehmen.';

export const cable: FindingTable<
  | 'no-size-in-stock'
  | 'drop-cables'
  | 'drop-whole'
  | 'below-cut-out'
  | 'cannot-carry'
  | 'ampacity'
  | 'heating'
  | 'ground-missing'
  | 'ground-smaller'
  | 'strap-smaller'
  | 'unmarked-cable'
  | 'small-separate-run'
> = {
  'no-size-in-stock': {
    sentence: (told) => {
      const binds = BINDS[told.text('binds') ?? ''];
      return `${withOthers(told.place(0), told.placeCount - 1)}: keine Leitung im Bestand reicht${binds === undefined ? '' : `; ${binds}`}.`;
    },
    remedy: (told) => {
      const amplifier = told.named('ampId');
      if (amplifier !== null)
        return `Mehrere Sicherungen speisen ${amplifier} gemeinsam: unmittelbar davor eine eigene Sicherung setzen, nicht größer als nötig.`;
      return told.text('binds') === 'fuse'
        ? 'Zuleitung auf zwei aufteilen, jede mit eigener Sicherung und Leitung; oder bessere Isolierklasse oder kühleren Weg wählen.'
        : 'Zuleitung aufteilen, bessere Isolierklasse wählen oder einen kürzeren oder kühleren Weg suchen.';
    },
  },
  'drop-cables': {
    sentence: (told) =>
      `${told.place(0)}: auf den Leitungen hin und zurück gehen ${told.voltage('dropV', 'zu viele Volt')} verloren${after(', das sind', told.percent('dropPercent'))}; die Grenze ist ${told.percent('limitPercent', '3 %')}.`,
    remedy: () => 'Größeren Querschnitt oder kürzere Leitung nehmen, in der Zuleitung oder in der Masse.',
  },
  'drop-whole': {
    sentence: (told) =>
      `Vom Batteriepol bis ${told.place(0)} gehen ${told.voltage('dropV', 'viele Volt')} verloren${after(', das sind', told.percent('dropPercent'))}${moreLosing(told)}: Leitungen, Verbindungsstellen, Sicherungen und Karosserie zusammen.`,
    remedy: () =>
      'Beim größten Anteil anfangen: Masseleitung zurück zur Batterie, weniger Verbindungsstellen, größerer Querschnitt.',
  },
  'below-cut-out': {
    sentence: (told) =>
      `${told.place(0)}: bei voller Leistung kommen ${told.voltage('terminalV', 'zu wenig Volt')} an; unter ${told.voltage('cutOutV', 'der Abschaltspannung')} schaltet das Gerät ab.`,
    remedy: () => 'Größeren Querschnitt, kürzere Leitung oder stärkere Batterie nehmen, oder den Motor laufen lassen.',
  },
  'cannot-carry': {
    sentence: (told) => {
      const share = told.percent('carriedPercent');
      const working = told.percent('workingPercent');
      const works =
        working === ''
          ? ''
          : ` Soll jeder Verstärker über seiner Abschaltspannung von ${told.voltage('cutOutV')} bleiben, gehen höchstens ${working}.`;
      return `Volle Leistung braucht ${told.power('powerW', 'mehr als das')}; diese Leitungen übertragen bei keiner Spannung mehr als ${share === '' ? 'einen Teil' : share} davon.${works}`;
    },
    remedy: () => 'Viel größeren Querschnitt oder kürzere Leitungen nehmen, oder die Zuleitung aufteilen.',
  },
  ampacity: {
    sentence: (told) =>
      told.number('ampacityA') === 0
        ? nothingCarried(told)
        : `${told.place(0)}: ${told.current('currentA', 'mehr als erlaubt')} auf Dauer; hier sind ${told.current('ampacityA', 'weniger')} erlaubt.`,
    remedy: (told) => {
      if (told.number('ampacityA') !== 0) return COOLER;
      return told.text('unmarked') === 'yes'
        ? 'Leitung mit Aufdruck für diese Wärme nehmen, etwa 105 °C, oder einen kühleren Weg suchen; steht eine Klasse darauf, sie eintragen.'
        : 'Leitung besserer Klasse nehmen, etwa 105 °C, oder einen kühleren Weg suchen. Mehr Querschnitt derselben Klasse hilft nicht.';
    },
  },
  heating: {
    sentence: heatingSentence,
    remedy: () => COOLER,
  },
  'ground-missing': {
    sentence: (told) =>
      told.placeKind(0) === 'battery'
        ? `${told.place(0)}: der Minuspol ist mit nichts verbunden.`
        : `${told.place(0)}: kein Weg zurück zur Batterie.`,
    remedy: (told) =>
      told.placeKind(0) === 'battery'
        ? 'Masseleitung zur Karosserie legen oder das Masseband ab Werk angeben.'
        : 'Masseleitung zu einem Massepunkt der Karosserie oder zur Batterie legen.',
  },
  'ground-smaller': {
    sentence: (told) =>
      isOneMetal(told)
        ? `${told.place(0)}${after(', mit', told.gauge('gauge'))}: dünner als die Zuleitung, deren Strom zurückfließt${after(', mit', told.gauge('feedGauge'))}.`
        : `${told.place(0)}${after(', mit', of(told, 'gauge', 'metal'))}: leitet schlechter als die Zuleitung, deren Strom zurückfließt${after(', mit', of(told, 'feedGauge', 'feedMetal'))}.`,
    remedy: (told) =>
      isOneMetal(told)
        ? 'Die Masse ist nicht dünner als die Zuleitung ihrer Endstufe.'
        : 'Kaschiertes oder blankes Aluminium leitet etwa sechs Zehntel von Kupfer: dicker wählen oder Kupfer nehmen.',
  },
  'strap-smaller': {
    sentence: (told) => {
      const mm2 = told.number('areaMm2');
      const strap = told.placeKind(0) === 'run' ? told.place(0) : `Masseband ab Werk bei ${told.place(0)}`;
      const size = mm2 === null ? '' : `, ${told.units.area(mm2)}`;
      return told.number('heatingA') === null
        ? `${strap}${size}: dünner als die Zuleitung, deren Strom zurückfließt${after(', mit', told.gauge('feedGauge'))}.`
        : `${strap}${size}: führt auf Dauer ${told.current('heatingA')} zurück und verträgt ${told.current('strapA', 'weniger')}.`;
    },
    remedy: (told) =>
      `Ein zweites Band daneben legen, vom Minuspol zur Karosserie${after(', mit', told.gauge('feedGauge'))}. Das ab Werk bleibt, wo es ist.`,
  },
  'unmarked-cable': {
    sentence: (told) =>
      told.text('proven') === 'yes'
        ? `${told.place(0)}: zählt als 60-°C-Leitung ohne Aufdruck; ihre Drähte belegen den Querschnitt.`
        : `${told.place(0)}: zählt als 60-°C-Leitung ohne Aufdruck, der Querschnitt als nicht belegt.`,
    remedy: (told) =>
      told.text('proven') === 'yes'
        ? 'Die Klasse eintragen, wenn sie aufgedruckt ist.'
        : 'Einen Draht blank schaben: durchgehend Kupfer? Drähte zählen, Durchmesser messen, Querschnitt und Klasse eintragen.',
  },
  'small-separate-run': {
    sentence: (told) => `${told.place(0)}: dünner als 16 AWG; so viel verlangt eine einzeln verlegte Leitung.`,
    remedy: () => '16 AWG oder dicker nehmen; das bricht nicht so leicht.',
  },
};
