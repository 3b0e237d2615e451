/** Findings on how cable is laid and ended, and on cable that is less than what it is taken as. */
import type { Told } from '../../told.ts';
import { terminalOf } from '../fittings.ts';
import { after, type FindingTable } from './finding.ts';

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
  const carries = after(', and it carries', told.current('ampacityA'));
  return `Its fuse lets ${told.current('limitA', 'more')} into it${carries}: it burns before that opens.`;
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
      const needs = cables > 1 ? `its ${cables} cables together need` : 'its cable needs';
      const inside = told.number('insideMm') === null ? 'too narrow' : `${mm(told, 'insideMm', '')} inside`;
      const thin = told.severity === 'note' ? ', unless the insulation is thin' : '';
      return `The grommet of ${told.place(0)} is ${inside}; ${needs} about ${mm(told, 'neededMm', 'more')}${thin}.`;
    },
    remedy: (told) =>
      told.severity === 'note'
        ? 'Measure the cable. Too tight, it gets a larger grommet: never none.'
        : 'Take a larger grommet, or a second hole with its own. Never leave it out: the bare edge cuts through insulation.',
  },
  'bend-too-tight': {
    sentence: (told) =>
      `${told.place(0)} is bent to a radius of ${mm(told, 'radiusMm', 'too little')}${after('; for cable', mm(told, 'outsideMm', ''))} thick ${mm(told, 'leastMm', 'more')} is the least.`,
    remedy: () => 'Take the corner wider: a tight bend breaks strands and thins the insulation on its outside.',
  },
  'cable-over-terminal': {
    sentence: (told) => {
      const [cables, total] = [told.number('cables') ?? 1, told.number('areaMm2')];
      const takes = told.gauge('takes', 'less');
      if (total !== null)
        return `${terminalAt(told)} takes ${takes} at most; its ${cables} cables together have ${told.units.area(total)}.`;
      const others = cables > 1 ? ` and ${cables - 1} more` : '';
      const which = told.placeCount > 1 ? `${told.place(1)}${others}` : 'the cable';
      return `${terminalAt(told)} takes ${takes} at most; ${which} ${cables > 1 ? 'are' : 'is'} ${told.gauge('gauge', 'thicker')}.`;
    },
    remedy: () => 'Use a reducer of the full area, or a fitting with larger terminals. Never cut strands away.',
  },
  'tape-doubtful': {
    sentence: (told) => {
      const others = told.placeCount > 1 ? `; ${told.placeCount - 1} more look odd too` : '';
      const taped = `${told.place(0)} is taped at ${told.lengthBeside('tapedM', 'againstM', 'a length')}`;
      return told.text('what') === 'long'
        ? `${taped}, longer than any way in this vehicle${others}.`
        : `${taped}, yet its ends are drawn ${told.lengthBeside('againstM', 'tapedM', 'further')} apart in a straight line${others}.`;
    },
    remedy: () => 'Tape it again, or move what is drawn to where it is. Until then the tape counts.',
  },
  'reducer-length': {
    sentence: (told) =>
      told.severity === 'note'
        ? `No fuse is sized for the thin end of ${told.place(0)}; it is short enough${after(', at', told.length('lengthM'))}.`
        : `The thin end of ${told.place(0)} is ${told.lengthBeside('lengthM', 'limitM', 'too')} long, and no fuse is sized for it: ${told.length('limitM', '17.8 cm')} is the most.`,
    remedy: (told) =>
      told.severity === 'note'
        ? `Keep it under ${told.length('limitM', '17.8 cm')}.`
        : 'Shorten it, or give it a fuse of its own where it starts.',
  },
  'clad-as-copper': {
    sentence: (told) =>
      `${told.place(0)} is taken as copper, but it is not copper all through. ${letIn(told, 'Clad aluminum conducts six tenths of copper: nothing told of this cable holds.')}`,
    remedy: (told) =>
      `Enter its metal: copper-clad aluminum, 10 % unless you know better${told.severity === 'stop' ? ', and fit the fuse it allows' : ''}; or lay copper.`,
  },
  'size-not-proven': {
    sentence: (told) => {
      const counted = area(told, 'countedMm2', 'less');
      const proves = told.text('proven') === null ? 'less than any size here' : `no more than ${told.gauge('proven')}`;
      return `${told.place(0)} is taken as ${told.gauge('gauge', 'a size')}, but its strands come to ${counted}: ${proves}. ${letIn(told, '')}`.trim();
    },
    remedy: (told) =>
      told.text('proven') === null
        ? 'Count the strands and measure one again.'
        : `Take it as ${told.gauge('proven')}, or count the strands and measure one again.`,
  },
};
