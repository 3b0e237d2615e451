/** Findings on batteries, alternators, capacitors, contacts and joints. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, ofPlace, said, withOthers } from './finding.ts';

const MILLI = 1e-3;

function supplyWiring(told: Told): string {
  const supplies = told.namesOfKinds('charger', 'alternator');
  const supply = supplies.length === 0 ? 'Ladewandler' : supplies.join(' und ');
  const at = fuseAtPlace(told);
  const opens = told.text('what') === 'opens';
  const [ownA, allA] = [told.number('supplyA') ?? 0, told.number(opens ? 'fullA' : 'heatingA') ?? 0];
  // music on the same way, beyond rounding
  const shared =
    allA > 1.005 * ownA && ownA > 0 ? `, davon ${told.current('supplyA')} für ${supply}` : `, für ${supply}`;
  switch (told.text('what')) {
    case 'opens':
      return `${at}${after(', mit', told.current('ratingA'))}: kleiner als der volle Strom${after(' von', told.current('fullA'))}${shared}.`;
    case 'forLong':
      return `${at}${after(', mit', told.current('ratingA'))}: auf Dauer ${told.current('heatingA', 'zu viel')}${shared}.`;
    case 'carries':
      return `${at}: auf Dauer ${told.current('heatingA', 'mehr als erlaubt')}${shared}; hier sind ${told.current('ampacityA', 'weniger')} erlaubt.`;
    default: {
      const others = (told.number('parts') ?? 1) - 1;
      return others > 0
        ? `${withOthers(at, others)} im Weg von ${supply}: nichts gewählt, obwohl bis zu ${told.current('supplyA', 'sein ganzer Strom')} hindurchfließen.`
        : `${at}: nichts gewählt, obwohl ${supply} ${told.current('supplyA', 'Strom')} ${supplies.length > 1 ? 'hindurchschicken' : 'hindurchschickt'}.`;
    }
  }
}

/** A fuse is set to a rating, a cable for a current; of several parts each to its own. */
function setByHand(told: Told): string {
  const least = (index: number): string => {
    const needed = told.current(ofPlace('neededA', index));
    return needed === ''
      ? after('für mindestens', told.current(ofPlace('heatingA', index)))
      : `auf mindestens ${needed}`;
  };
  const parts = told.number('parts') ?? 1;
  if (parts === 1) return `: von Hand festlegen${after(',', least(0))}`;
  const each = Array.from({ length: parts }, (_, index) => said(fuseAtPlace(told, index), least(index)));
  return `. Von Hand festlegen: ${each.join('; ')}`;
}

export const supply: FindingTable<
  | 'charging-deficit'
  | 'capacitor-precharge'
  | 'capacitor-unfused'
  | 'joint-heat'
  | 'contact-overloaded'
  | 'takeoff-overloaded'
  | 'switch-open'
  | 'supply-wiring'
> = {
  'charging-deficit': {
    sentence: (told) =>
      `${told.text('speed') === 'cruise' ? 'Während der Fahrt' : 'Im Leerlauf'} ziehen Musik und Fahrzeug im Mittel ${told.current('demandA', 'mehr')}, und ${told.place(0)} bringt heiß ${told.current('outputA', 'weniger')}: die Batterie entlädt sich mit ${told.current('deficitA', 'dem Unterschied')}.`,
    remedy: (told) =>
      told.text('speed') === 'cruise'
        ? 'Einen Generator mit höherem Nennstrom nehmen oder im Mittel leiser spielen.'
        : 'Bei Leerlauf leiser spielen oder einen Generator mit mehr Strom im Leerlauf nehmen.',
  },
  'capacitor-precharge': {
    sentence: (told) =>
      `${told.place(0)}: kein Vorladen angegeben; leer angeschlossen zieht der Kondensator einen Augenblick lang so viel wie ein Kurzschluss.`,
    remedy: (told) => {
      const [ohm, seconds] = [told.number('prechargeOhm'), told.number('seconds')];
      const by = ohm === null ? 'einen Widerstand' : `einen Widerstand von ${told.units.resistance(ohm)}`;
      const time = seconds === null ? '' : `, ${told.units.number(seconds, 0)} s lang`;
      return `Erst über ${by} laden${time}, dann die Sicherung einsetzen; abhaken, dass es so geschieht.`;
    },
  },
  'capacitor-unfused': {
    sentence: (told) =>
      `${told.place(0)}: treibt bei einem Kurzschluss das ${told.units.number(told.number('ratio') ?? 1, 1)}-fache dessen, was die Leitung verträgt (${told.named('runId') ?? 'am Kondensator'}), und dazwischen liegt keine Sicherung.`,
    remedy: (told) => `Wie an einer Batterie eine Sicherung setzen bei ${told.place(0)}.`,
  },
  'joint-heat': {
    sentence: (told) => {
      const ohm = told.number('jointOhm');
      const which = withOthers(told.place(0), (told.number('runs') ?? 1) - 1);
      const of = ohm === null ? '' : ` mit ${told.units.number(ohm / MILLI, 2)} mΩ`;
      return `${which}: eine Verbindungsstelle${of} setzt ${told.power('powerW', 'zu viel')} in Wärme um${after(' bei', told.current('currentA'))}; keine Sicherung löst dafür je aus.`;
    },
    remedy: (told) =>
      told.text('joint') === 'measured'
        ? 'Reinigen, neu verpressen und festziehen, dann noch einmal messen.'
        : 'Die Verbindungsstellen unter Last messen und eintragen.',
  },
  'contact-overloaded': {
    sentence: (told) =>
      `${told.place(0)}: Nennstrom ${told.current('ratedA', 'zu klein')}, bei voller Leistung fließen ${told.current('currentA', 'mehr')}.`,
    remedy: () => 'Eine Ausführung mit höherem Nennstrom nehmen oder die Zuleitung aufteilen.',
  },
  'takeoff-overloaded': {
    sentence: (told) =>
      told.number('fuseA') === null
        ? `${told.place(0)}: der Nennstrom der Werkssicherung ist nicht angegeben; ob sie ${told.current('oursA', 'das')} zusätzlich trägt, lässt sich nicht sagen.`
        : `${told.place(0)}: Nennstrom der Werkssicherung ${told.current('fuseA', 'zu klein')}; mit ihren eigenen ${told.current('usedA', 'Verbrauchern')} trägt sie ${told.current('fullA', 'mehr')} bei voller Leistung, auf Dauer ${told.current('heatingA', 'zu viel')}.`,
    remedy: (told) =>
      told.number('fuseA') === null
        ? 'Den Nennstrom von der Sicherung ablesen und eintragen.'
        : 'Von der Batterie selbst speisen. Nie eine größere Sicherung einsetzen.',
  },
  'supply-wiring': {
    sentence: supplyWiring,
    remedy: (told) => {
      const needed = told.current('neededA');
      if (told.text('what') === 'undecided')
        return `Nach dem Strom von Ladewandler oder Generator wird nichts gewählt${setByHand(told)}.`;
      if (told.text('what') === 'carries')
        return 'Größeren Querschnitt, bessere Isolierklasse oder kühleren Weg nehmen.';
      return `${needed === '' ? 'Größere Sicherung' : `Mindestens ${needed}`} einsetzen, wenn die Leitung das verträgt; sonst auch größeren Querschnitt.`;
    },
  },
  'switch-open': {
    sentence: (told) => `${told.place(0)}: offen gezeichnet; alles ist geschlossen berechnet.`,
    remedy: () => 'Schließen, bevor etwas spielt, oder geschlossen zeichnen.',
  },
};
