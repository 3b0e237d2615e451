/** Findings on a short to the body: what opens, what burns, and what a link can break. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, said, withOthers } from './finding.ts';

/** The family of links told, or '' when none is. */
function familyOf(told: Told, param: string): string {
  const id = told.text(param);
  return id === null ? '' : told.family(id);
}

const fuse = (told: Told): string =>
  told.nameOfKind('fuse') ?? told.nameOfKind('block') ?? told.nameOfKind('breaker') ?? 'die Sicherung davor';

/** The first of several runs, with the number of the others. */
const runsOf = (told: Told): string => withOthers(told.place(0), (told.number('runs') ?? 1) - 1);

function notCleared(told: Told): string {
  const current = told.current('currentA', 'was die Batterien geben');
  if (told.text('verdict') === 'nothingOpens') {
    const settles = after('; die Leitung erreicht dabei', told.temperature('conductorC'));
    return `${told.place(0)}: mit kalten, gealterten Batterien zieht ein Kurzschluss am fernen Ende nur ${current}; dabei muss keine Sicherung auslösen${settles}.`;
  }
  return `${told.place(0)}: ein Kurzschluss mit ${current} schädigt die Isolierung; erst danach löst ${fuse(told)} gewiss aus.`;
}

function breaking(told: Told): string {
  const at = fuseAtPlace(told);
  const others = (told.number('links') ?? 1) - 1;
  const alike = others > 0 ? `Ebenso bei ${others} weiteren.` : '';
  const breaks = `${at}: angegebenes Ausschaltvermögen ${told.current('breakingA', 'zu klein')}`;
  switch (told.text('verdict')) {
    case 'belowTable':
      return `${breaks}; die Tabelle der Bootsnorm verlangt ${told.current('askedA', 'mehr')} für eine ${told.text('place') === 'main' ? 'Hauptsicherung' : 'Abgangssicherung'} bei ${told.current('ccaA', 'so viel')} Kaltstartstrom.`;
    case 'belowDoubled':
      return `${breaks}; ein satter Kurzschluss dahinter zieht ${told.current('estimateA', 'mehr')}, und selbst bei doppeltem Batteriewiderstand noch ${told.current('doubledA', 'mehr als das')}.`;
    case 'belowEstimate':
      return said(
        `${breaks}; ein satter Kurzschluss gleich dahinter ist auf ${told.current('estimateA', 'mehr')} geschätzt, auf den Faktor zwei genau.`,
        alike,
      );
    default:
      return said(
        `${at}: Ausschaltvermögen nicht angegeben; ein satter Kurzschluss gleich dahinter ist auf ${told.current('estimateA', 'viel')} geschätzt.`,
        alike,
      );
  }
}

function breakingRemedy(told: Told): string {
  const [family, rating] = [familyOf(told, 'helpFamily'), told.current('helpRatingA')];
  const take =
    family === ''
      ? 'Kein Einsatz im Bestand hat ein so hohes angegebenes Ausschaltvermögen.'
      : `Eine Bauart mit ausreichendem angegebenem Ausschaltvermögen einsetzen, etwa ${family}${after(' mit', rating)}.`;
  return said(take, told.text('verdict') === 'notStated' ? 'Oder den Wert beim Hersteller erfragen.' : '');
}

export const short: FindingTable<
  'short-not-cleared' | 'short-uncertain' | 'back-fed' | 'breaking-capacity' | 'selectivity' | 'overload-heating'
> = {
  'short-not-cleared': {
    sentence: notCleared,
    remedy: (told) =>
      told.text('verdict') === 'nothingOpens'
        ? 'Eine kleinere Sicherung, mehr Querschnitt oder eine kürzere Leitung lässt sie auslösen; die Leitung dort führen, wo nichts scheuert.'
        : 'Kleinere oder flinkere Sicherung einsetzen oder größeren Querschnitt legen.',
  },
  'short-uncertain': {
    sentence: (told) =>
      told.text('reason') === 'noLimits'
        ? `${runsOf(told)}: ob ein Kurzschluss rechtzeitig abgeschaltet wird, lässt sich nicht sagen: für die Bauart der Sicherung liegen keine Zeitgrenzen vor.`
        : `${runsOf(told)}: ob ein Kurzschluss${after(' mit', told.current('currentA'))} rechtzeitig abgeschaltet wird, lässt sich aus den Grenzen der Norm nicht sagen.`,
    remedy: (told) =>
      told.text('reason') === 'noLimits'
        ? 'Die Kennlinie des Herstellers neben die Leitung legen oder eine Bauart mit veröffentlichten Grenzen nehmen.'
        : 'Die Kennlinie des Herstellers neben die Leitung legen, oder die nächstkleinere Sicherung oder mehr Querschnitt nehmen.',
  },
  'back-fed': {
    sentence: (told) => {
      const left = told.current('residualA', 'Strom');
      const by =
        told.nameOfKind('battery') ?? told.nameOfKind('jumpPost') ?? told.nameOfKind('takeOff') ?? 'eine andere Quelle';
      return told.text('by') === 'source'
        ? `${told.place(0)}: hat die Sicherung ausgelöst, speist ${by} einen Kurzschluss dort weiter: bis ${left}, und in diesem Weg löst nichts aus.`
        : `${told.place(0)}: hat eine Sicherung ausgelöst, speist die andere Batterie einen Kurzschluss dort weiter: mindestens ${left}; dabei muss ${fuse(told)} nicht auslösen.`;
    },
    remedy: () => 'Jede Quelle braucht nahe am Pol eine eigene Sicherung, klein genug, um allein auszulösen.',
  },
  'breaking-capacity': { sentence: breaking, remedy: breakingRemedy },
  selectivity: {
    sentence: (told) =>
      `${told.place(0)}: bei einem Kurzschluss hinter ${(told.number('branches') ?? 1) > 1 ? `einer von ${told.number('branches')} Abgangssicherungen` : 'der Abgangssicherung'} löst vielleicht auch diese aus; die Grenzen der Norm schließen es nicht aus.`,
    remedy: () => 'Dadurch brennt nichts, aber alles fällt aus. Die Kennlinien der Hersteller sagen vielleicht mehr.',
  },
  'overload-heating': {
    sentence: (told) => {
      const hot = told.temperature('conductorC');
      const held = `${told.place(0)}: bei ${told.current('currentA', 'dem 1,35-fachen Nennstrom')} muss ${fuse(told)} nicht auslösen`;
      return hot === ''
        ? `${held}; die Leitung heizt sich dabei auf, bis sie versagt.`
        : `${held}; die Leitung erreicht dabei ${hot}${after(', die Isolierung verträgt einige Stunden lang', told.temperature('limitC'))}.`;
    },
    remedy: () => 'Größeren Querschnitt, bessere Isolierklasse, kühleren Weg oder kleinere Sicherung nehmen.',
  },
};
