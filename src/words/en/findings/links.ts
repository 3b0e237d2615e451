/** Findings on the fuse-links themselves: what is made, for what, and where they sit. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, said, volts } from './finding.ts';

const SPLIT =
  'Split the feed: two feeds, each with its own fuse at the battery and its own cable. Never two links side by side.';

/** 'The nearest rating is 200 A.', 'The nearest ratings are 125 A and 150 A.'; '' where no link is held at all. */
function nearest(told: Told, where = ''): string {
  const offered = [told.current('belowA'), told.current('aboveA')].filter((figure) => figure !== '');
  if (offered.length === 0) return '';
  const verb = offered.length > 1 ? 'ratings are' : 'rating is';
  return `The nearest ${verb} ${offered.join(' and ')}${where}.`;
}

function notHeldRemedy(told: Told): string {
  const heldBy = told.list('heldBy').map(told.family);
  if (heldBy.length > 0) {
    return said(`To the fuses in stock add one of: ${heldBy.join('; ')}.`, nearest(told, ' in stock'));
  }
  const offered = nearest(told);
  return offered === '' ? 'Take another family.' : `${offered} The cable decides whether it may be that large.`;
}

function noneQualifies(told: Told): string {
  const needed = `it needs at least ${told.current('neededA', 'more')}`;
  const largest = told.current('largestA');
  switch (told.text('ends')) {
    case 'everywhere':
      return `No fuse is made for ${fuseAtPlace(told)}: ${needed}${after(', and the largest link is', largest)}.`;
    case 'inStock':
      return `No fuse in stock fits at ${fuseAtPlace(told)}: ${needed}${after(', and the largest of these is', largest)}.`;
    default:
      return `No fuse in stock fits at ${fuseAtPlace(told)}: ${needed}, and ${told.text('cap') === 'maker' ? "the amplifier's maker" : 'the cable'} allows ${told.current('ceilingA', 'less')}.`;
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
          return 'Allow more kinds of fuse in the settings, or split the feed. Never two links side by side.';
        default:
          return 'Take a thicker cable, allow more kinds of fuse in the settings, or split the feed.';
      }
    },
  },
  'rating-not-held': {
    sentence: (told) => {
      const set = `${fuseAtPlace(told)} is set to ${told.current('ratingA', 'a rating of its own')}`;
      if (told.severity === 'note') return `${set}, which none of the fuses in stock has.`;
      const family = told.text('family');
      return `${set}, and no such link is made${family === null ? '' : ` (${told.family(family)})`}.`;
    },
    remedy: notHeldRemedy,
  },
  'link-under-voltage': {
    sentence: (told) =>
      `${fuseAtPlace(told)} is rated for ${volts(told, 'ratedV', 'less')}, below the ${volts(told, 'systemV', 'voltage')} of the system: it may go on arcing after it has melted.`,
    remedy: (told) => `Take a link rated for at least ${volts(told, 'systemV', 'the system voltage')}.`,
  },
  'holder-too-hot': {
    sentence: (told) =>
      `${fuseAtPlace(told)} sits at ${told.temperature('holderC', 'a heat')}; beyond ${told.temperature('limitC', '125 °C')} nothing is published of what a fuse carries.`,
    remedy: () => 'Move it to a cooler place, or measure there: no rating is proven in that heat.',
  },
  'fuse-in-return': {
    sentence: (told) =>
      `${fuseAtPlace(told)} is in the return. It protects no cable of the feed; when it opens, the current looks for a way back through the signal leads.`,
    remedy: () => 'Take it out of the ground, and fuse the feed at the battery.',
  },
};
