/** Findings on fuses and on what no fuse protects. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, said, volts } from './finding.ts';

const sourceName = (told: Told): string => told.nameOfKind('battery') ?? 'the source';
const fuseName = (told: Told): string => told.nameOfKind('fuse') ?? told.nameOfKind('block') ?? 'The fuse ahead';
const cableName = (told: Told): string => told.nameOfKind('run') ?? 'the cable';

function unprotectedSentence(told: Told): string {
  const length = told.lengthBeside('unprotectedM', 'limitM', 'too much');
  const source = sourceName(told);
  const where =
    told.text('endsAt') === 'nothing'
      ? `${length} of cable from ${source} is live and ends without a fuse.`
      : `The first fuse is ${length} of cable from ${source}.`;
  return said(where, told.severity === 'stop' ? 'If that stretch touches the body it burns, and nothing opens.' : '');
}

function unprotectedRemedy(told: Told): string {
  const limit = told.length('limitM', '45 cm');
  const [lengthM, limitM] = [told.number('unprotectedM'), told.number('limitM')];
  if (told.severity === 'note') {
    return limitM === 0
      ? 'Nearer is better: at the post itself is the mark to aim for.'
      : `Nearer is better: ${limit} of cable or less is the mark to aim for.`;
  }
  if (lengthM !== null && limitM !== null && lengthM <= limitM) {
    return `Tape it: it passes only if it is no more than ${limit}. Nearer settles it too.`;
  }
  if (told.severity === 'fix') return `Bring it within ${limit}, or write on the run why nearer is impossible.`;
  const isSheathed = told.text('sheathed') === 'yes';
  return isSheathed ? `Bring it within ${limit}; a sheath does not make up for more.` : `Bring it within ${limit}.`;
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
        ? `${told.length('lengthM', 'A stretch')} of cable from ${sourceName(told)} is live without a fuse, and ends nowhere.`
        : `No fuse protects ${cableName(told)}: from ${sourceName(told)} on, nothing opens if it touches the body.`,
    remedy: (told) =>
      told.severity === 'note'
        ? 'Finish it, starting with a fuse, or take it off.'
        : `Drop a fuse onto the cable, within ${told.length('limitM', '45 cm')} of ${sourceName(told)}.`,
  },
  'fuse-over-conductor': {
    sentence: (told) =>
      `${fuseName(told)} lets ${told.current('ratingA', 'more')} into ${cableName(told)}, which carries ${told.current('ceilingA', 'less')}. The cable burns before it opens.`,
    remedy: (told) => {
      const [amplifier, largest] = [told.named('ampId'), told.current('largestA')];
      if (amplifier !== null)
        return `Put a ${largest === '' ? 'smaller fuse' : `fuse of at most ${largest}`} into the feed of ${amplifier}, or take a thicker ground.`;
      return largest === ''
        ? 'Fit a smaller fuse, or a thicker cable.'
        : `Fit a fuse of at most ${largest}, or a thicker cable.`;
    },
  },
  'step-down': {
    sentence: (told) =>
      said(
        `${cableName(told)} is thinner than the cable ahead of it and carries ${told.current('ceilingA', 'less')}; ${fuseName(told)} lets ${told.current('ratingA', 'more')} into it.`,
        told.severity === 'note' ? 'It is short enough for a pigtail.' : '',
      ),
    remedy: (told) =>
      told.severity === 'note'
        ? `Keep it under ${told.length('limitM', '17.8 cm')}.`
        : `Give it a fuse of its own where it starts${after(', at most', told.current('largestA'))}, or take the thicker cable on.`,
  },
  'fuse-under-load': {
    sentence: (told) => {
      const rating = after(', at', told.current('ratingA'));
      if (told.text('alone') === 'yes') {
        return `${fuseAtPlace(told)}${rating}, opens when one battery is dead or away and the other feeds alone: that is ${told.current('fullA', 'more')}.`;
      }
      return told.severity === 'stop'
        ? `${fuseAtPlace(told)}${rating}, is smaller than the full current${after(' of', told.current('fullA'))}.`
        : `${fuseAtPlace(told)}${rating}, would carry ${told.current('heatingA', 'too much')} for long; where it sits it bears ${told.current('forLongA', 'less')}.`;
    },
    remedy: (told) => {
      if (told.number('fitsA') !== null) return `Fit ${told.current('fitsA')}, or let it be worked out.`;
      const [amplifier, cable] = [told.named('ampId'), told.named('runId')];
      return amplifier === null
        ? `Take ${cable === null ? 'a thicker cable' : `${cable} thicker`} so that a larger fuse is allowed, or split the feed. Never only a larger fuse.`
        : `The maker of ${amplifier} allows ${told.current('makerMaxA', 'no more')} at most: check that figure, the rated output and the load entered. Never only a larger fuse.`;
    },
  },
  'fuse-over-maker': {
    sentence: (told) =>
      `${fuseName(told)} lets ${told.current('ratingA', 'more')} into ${told.nameOfKind('amplifier') ?? 'the amplifier'}; its maker allows ${told.current('makerMaxA', 'less')}.`,
    remedy: (told) => `Fit a fuse of at most ${told.current('makerMaxA', "the maker's figure")}.`,
  },
  'parallel-one-fuse': {
    sentence: (told) => {
      const runs = told.number('runs') ?? 2;
      const which =
        runs === 2 && told.placeKind(1) === 'run'
          ? `${told.place(0)} and ${told.place(1)}`
          : `${told.place(0)} and ${runs - 1} more`;
      const one =
        told.severity === 'note'
          ? 'each carries all of it alone'
          : `one alone carries ${told.current('ampacityA', 'less')}`;
      return `${which} lie side by side behind ${told.nameOfKind('fuse') ?? told.nameOfKind('block') ?? told.nameOfKind('breaker') ?? 'the same fuse'}, which lets in ${told.current('limitA', 'more')}; ${one}.`;
    },
    remedy: () => 'Give each a fuse of its own where it starts: when one comes loose, the other takes all.',
  },
  'source-short': {
    sentence: (told) =>
      `${cableName(told)} joins the positive of ${sourceName(told)} straight to the body or to a negative post.`,
    remedy: () => 'Take the run off one of its ends.',
  },
  'series-batteries': {
    sentence: (told) => {
      const [first, second] = [told.place(0), told.placeCount === 2 ? told.place(1) : `${told.placeCount - 1} more`];
      return `${first} and ${second} are joined in series: ${told.number('count') ?? 'several'} times ${volts(told, 'systemV', 'the voltage')} at what they feed.`;
    },
    remedy: () =>
      'Join them side by side, each with a fuse of its own. A bank that is meant to be in series is drawn as one battery of its whole voltage.',
  },
  'positive-earth': {
    sentence: (told) =>
      `The positive of ${told.place(0)} is joined to the body and its negative is not: nothing here is worked out for positive ground.`,
    remedy: () =>
      'Join the negative to the body and feed from the positive; a vehicle with positive ground is not planned here.',
  },
};
