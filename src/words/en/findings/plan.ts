/** Findings on what is drawn and on what was told. */
import type { Told } from '../../told.ts';
import { terminal } from '../fittings.ts';
import { after, type FindingTable } from './finding.ts';

const CHANGES: Readonly<Record<string, string>> = {
  size: 'size',
  material: 'metal',
  class: 'insulation class',
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
        ? `${told.place(0)} is wired the wrong way round: the battery's positive comes to its ground.`
        : `${told.place(0)} is not connected to a battery.`,
    remedy: (told) =>
      isReversed(told)
        ? 'Swap its two cables: the fused feed goes to the supply, the other to the ground.'
        : 'Draw the run that feeds it.',
  },
  'loose-end': {
    sentence: (told) => {
      const loose = told.list('terminals').map(terminal).join(' and ');
      return loose === '' ? `${told.place(0)} leads nowhere.` : `${told.place(0)} is not joined up: ${loose}.`;
    },
    remedy: () => 'Finish the run, or delete what is not needed.',
  },
  'no-rating': {
    sentence: (told) => `The rated output of ${told.place(0)} is not told, so its cable and fuse cannot be worked out.`,
    remedy: () => 'Enter the rated output at the load you wire, or the fuses on the amplifier.',
  },
  'ratings-differ': {
    sentence: (told) =>
      `${told.place(0)} draws ${told.current('ratedA', 'one current')} by its rated output, and its own fuses add up to ${told.current('fusesA', 'another')}: one of them is not what it seems.`,
    remedy: () => 'Check both on the amplifier: the output at the load you wire, and every fuse on it.',
  },
  'load-unknown': {
    sentence: (told) => `The load wired to ${told.place(0)} is not told.`,
    remedy: () => 'Enter the load; a lower load draws more current.',
  },
  'ask-external-fuse': {
    sentence: (told) => `${told.place(0)} has no fuse of its own, and no largest external fuse is told.`,
    remedy: () => "Ask for the maker's figure and enter it.",
  },
  'firewall-no-grommet': {
    sentence: (told) => `${told.place(0)} crosses the firewall without a pass-through.`,
    remedy: () => 'Drop a pass-through onto the run at the firewall: bare metal edges cut through insulation.',
  },
  'pass-through-shared': {
    sentence: (told) =>
      told.text('short') === 'yes'
        ? `${told.number('runs') ?? 'Several'} runs meet in ${told.place(0)}, feed and ground among them: as drawn that is a short, and nothing else is worked out.`
        : `${told.number('runs') ?? 'Several'} runs meet in ${told.place(0)}, which joins them all: what is told of them does not hold.`,
    remedy: () => 'Give each cable a pass-through of its own; where a cable divides, use a distribution block.',
  },
  'cable-changes': {
    sentence: (told) => {
      const changes = told.list('changes').map((change) => CHANGES[change] ?? change);
      return `${told.place(0)} and ${told.placeCount > 2 ? 'the runs' : told.place(1)} joined to it are one cable, but differ${after(' in', changes.join(' and '))}.`;
    },
    remedy: () => 'A pass-through joins nothing: give all pieces the same size, metal and class.',
  },
  'ground-on-sensor': {
    sentence: (told) => {
      const run = told.nameOfKind('run') ?? 'a ground';
      const others = (told.number('runs') ?? 1) - 1;
      const which = others > 0 ? `${run} and ${others} more` : run;
      return told.severity === 'note'
        ? `Whether the negative post of ${told.place(0)} carries a sensor is not told, and ${which} ${others > 0 ? 'go' : 'goes'} onto it.`
        : `The negative post of ${told.place(0)} carries the vehicle's battery sensor, and ${which} ${others > 0 ? 'go' : 'goes'} onto the post: what flows there is never counted.`;
    },
    remedy: (told) =>
      told.severity === 'note'
        ? 'Look, and enter it. With a sensor, the ground goes to its body side.'
        : "Take it to the body side of the sensor: to where the battery's own strap meets the body.",
  },
};
