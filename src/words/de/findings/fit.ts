/** Findings on how cable is laid and ended, and on cable that is less than what it is taken as. */
import type { Told } from '../../told.ts';
import { terminalOf } from '../fittings.ts';
import { after, type FindingTable, withOthers } from './finding.ts';

const mm = (told: Told, name: string, otherwise: string): string => {
  const value = told.number(name);
  return value === null ? otherwise : `${told.units.number(value, 1)} mm`;
};

const area = (told: Told, name: string, otherwise: string): string => {
  const value = told.number(name);
  return value === null ? otherwise : told.units.area(value);
};

/** What the fuses let in, of a cable that is less than it is taken as; '' where it is no more than that carries. */
function letIn(told: Told, otherwise: string): string {
  if (told.severity !== 'stop') return otherwise;
  const carries = after(', und sie verträgt', told.current('ampacityA'));
  return `Ihre Sicherung lässt ${told.current('limitA', 'mehr')} hinein${carries}: sie verbrennt, bevor die Sicherung auslöst.`;
}

/** One output of a block, or the fitting where it has one size of terminal. */
function terminalAt(told: Told): string {
  const terminal = told.text('terminal');
  return told.placeKind(0) === 'block' && terminal !== null ? terminalOf(told.place(0), terminal) : told.place(0);
}

export const fit: FindingTable<
  | 'grommet-too-small'
  | 'bend-too-tight'
  | 'cable-over-terminal'
  | 'reducer-length'
  | 'tape-doubtful'
  | 'clad-as-copper'
  | 'size-not-proven'
> = {
  'grommet-too-small': {
    sentence: (told) => {
      const cables = told.number('cables') ?? 1;
      const needs = cables > 1 ? `die ${cables} Leitungen zusammen brauchen` : 'die Leitung braucht';
      const inside = told.number('insideMm') === null ? 'zu eng' : `innen ${mm(told, 'insideMm', '')} weit`;
      const thin = told.severity === 'note' ? ', außer bei dünner Isolierung' : '';
      return `${told.place(0)}: die Tülle ist ${inside}; ${needs} etwa ${mm(told, 'neededMm', 'mehr')}${thin}.`;
    },
    remedy: (told) =>
      told.severity === 'note'
        ? 'Die Leitung messen. Ist es zu eng, eine größere Tülle nehmen: nie gar keine.'
        : 'Größere Tülle nehmen, oder ein zweites Loch mit eigener Tülle. Nie weglassen: die blanke Kante schneidet die Isolierung durch.',
  },
  'bend-too-tight': {
    sentence: (told) =>
      `${told.place(0)}: auf ${mm(told, 'radiusMm', 'zu wenig')} Radius gebogen; das Mindeste${after(' bei einer Leitung von', mm(told, 'outsideMm', ''))} ist ${mm(told, 'leastMm', 'mehr')}.`,
    remedy: () => 'Die Ecke weiter nehmen: enges Biegen bricht Drähte und dünnt außen die Isolierung aus.',
  },
  'cable-over-terminal': {
    sentence: (told) => {
      const [cables, total] = [told.number('cables') ?? 1, told.number('areaMm2')];
      const takes = `${terminalAt(told)}: nimmt höchstens ${told.gauge('takes', 'weniger')} auf`;
      if (total !== null) return `${takes}; die ${cables} Leitungen zusammen haben ${told.units.area(total)}.`;
      const which = told.placeCount > 1 ? withOthers(told.place(1), cables - 1) : 'die Leitung';
      return `${takes}; ${which} ${cables > 1 ? 'haben' : 'hat'} ${told.gauge('gauge', 'mehr')}.`;
    },
    remedy: () =>
      'Eine Reduzierung mit vollem Querschnitt nehmen, oder ein Bauteil mit größeren Anschlüssen. Nie Drähte abschneiden.',
  },
  'tape-doubtful': {
    sentence: (told) => {
      const others = told.placeCount > 1 ? `; ${told.placeCount - 1} weitere sind auch fraglich` : '';
      const taped = `${told.place(0)}: nachgemessen ${told.lengthBeside('tapedM', 'againstM', 'eine Länge')}`;
      return told.text('what') === 'long'
        ? `${taped}, länger als jeder Weg in diesem Fahrzeug${others}.`
        : `${taped}, doch die Enden sind in gerader Linie ${told.lengthBeside('againstM', 'tapedM', 'weiter')} auseinander gezeichnet${others}.`;
    },
    remedy: () => 'Noch einmal messen, oder das Gezeichnete dorthin rücken, wo es ist. Bis dahin zählt das Maßband.',
  },
  'reducer-length': {
    sentence: (told) =>
      told.severity === 'note'
        ? `${told.place(0)}: keine Sicherung ist für das dünne Ende bemessen; es ist kurz genug${after(', mit', told.length('lengthM'))}.`
        : `${told.place(0)}: das dünne Ende ist ${told.lengthBeside('lengthM', 'limitM', 'zu')} lang, und keine Sicherung ist dafür bemessen; höchstens ${told.length('limitM', '17,8 cm')} dürfen es sein.`,
    remedy: (told) =>
      told.severity === 'note'
        ? `Unter ${told.length('limitM', '17,8 cm')} halten.`
        : 'Kürzen, oder am Anfang eine eigene Sicherung setzen.',
  },
  'clad-as-copper': {
    sentence: (told) =>
      `${told.place(0)}: zählt als Kupfer, ist aber nicht durchgehend Kupfer. ${letIn(told, 'Kaschiertes Aluminium leitet sechs Zehntel von Kupfer: keine Angabe zu dieser Leitung gilt.')}`,
    remedy: (told) =>
      `Das Metall eintragen: kupferkaschiertes Aluminium, 10 %, wenn nichts Genaueres bekannt ist${told.severity === 'stop' ? ', und die Sicherung einsetzen, die dann erlaubt ist' : ''}; oder Kupfer legen.`,
  },
  'size-not-proven': {
    sentence: (told) => {
      const counted = area(told, 'countedMm2', 'weniger');
      const proves =
        told.text('proven') === null ? 'weniger als jede Größe hier' : `nicht mehr als ${told.gauge('proven')}`;
      return `${told.place(0)}: zählt als ${told.gauge('gauge', 'eine Größe')}, aber die Drähte ergeben ${counted}: ${proves}. ${letIn(told, '')}`.trim();
    },
    remedy: (told) =>
      told.text('proven') === null
        ? 'Die Drähte noch einmal zählen und einen messen.'
        : `Als ${told.gauge('proven')} nehmen, oder die Drähte noch einmal zählen und einen messen.`,
  },
};
