/** Findings on a short to the body: what opens, what burns, and what a link can break. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, said } from './finding.ts';

/** The family of links told, or '' when none is. */
function familyOf(told: Told, param: string): string {
  const id = told.text(param);
  return id === null ? '' : told.family(id);
}

const fuse = (told: Told): string =>
  told.nameOfKind('fuse') ?? told.nameOfKind('block') ?? told.nameOfKind('breaker') ?? 'the fuse ahead';

/** ' and 2 more' after the first of several runs. */
function more(told: Told): string {
  const others = (told.number('runs') ?? 1) - 1;
  return others > 0 ? ` and ${others} more` : '';
}

function notCleared(told: Told): string {
  const current = told.current('currentA', 'what the batteries give');
  if (told.text('verdict') === 'nothingOpens') {
    const settles = after('; the cable settles at', told.temperature('conductorC'));
    return `With cold, aged batteries a short at the far end of ${told.place(0)} draws as little as ${current}: no fuse need open for that${settles}.`;
  }
  return `A short of ${current} on ${told.place(0)} damages its insulation before ${fuse(told)} is sure to open.`;
}

function breaking(told: Told): string {
  const at = fuseAtPlace(told);
  const others = (told.number('links') ?? 1) - 1;
  const alike = others > 0 ? `${others} more in the same case.` : '';
  const breaks = told.current('breakingA', 'too low');
  switch (told.text('verdict')) {
    case 'belowTable':
      return `The stated breaking capacity of ${at} is ${breaks}; the boat standard's table asks for ${told.current('askedA', 'more')} at a ${told.text('place') === 'main' ? 'main' : 'branch'} fuse with ${told.current('ccaA', 'that much')} of cold cranking current.`;
    case 'belowDoubled':
      return `The stated breaking capacity of ${at} is ${breaks}; a dead short behind it draws ${told.current('estimateA', 'more')}, and ${told.current('doubledA', 'still more')} even with twice the battery resistance.`;
    case 'belowEstimate':
      return said(
        `The stated breaking capacity of ${at} is ${breaks}; a dead short right behind it is estimated at ${told.current('estimateA', 'more')}, by a factor of two either way.`,
        alike,
      );
    default:
      return said(
        `The breaking capacity of ${at} is not stated; a dead short right behind it is estimated at ${told.current('estimateA', 'much')}.`,
        alike,
      );
  }
}

function breakingRemedy(told: Told): string {
  const [family, rating] = [familyOf(told, 'helpFamily'), told.current('helpRatingA')];
  const take =
    family === ''
      ? 'No link held has a stated breaking capacity that high.'
      : `Fit a type whose stated breaking capacity is sufficient, such as ${family}${after(' at', rating)}.`;
  return said(take, told.text('verdict') === 'notStated' ? 'Or ask the maker of this one for the figure.' : '');
}

export const short: FindingTable<
  'short-not-cleared' | 'short-uncertain' | 'back-fed' | 'breaking-capacity' | 'selectivity' | 'overload-heating'
> = {
  'short-not-cleared': {
    sentence: notCleared,
    remedy: (told) =>
      told.text('verdict') === 'nothingOpens'
        ? 'A smaller fuse, a thicker or a shorter cable makes it open; keep the run where nothing can chafe it.'
        : 'Fit a smaller or a faster fuse, or a thicker cable.',
  },
  'short-uncertain': {
    sentence: (told) =>
      told.text('reason') === 'noLimits'
        ? `Whether a short on ${told.place(0)}${more(told)} is cleared in time cannot be told: no time limits are held for the family of its fuse.`
        : `Whether a short${after(' of', told.current('currentA'))} on ${told.place(0)}${more(told)} is cleared in time cannot be told from the standard's limits.`,
    remedy: (told) =>
      told.text('reason') === 'noLimits'
        ? "Lay its maker's curve beside the cable, or take a family with published limits."
        : "Lay the maker's curve of the fuse beside the cable, or take the next smaller fuse or thicker cable.",
  },
  'back-fed': {
    sentence: (told) => {
      const left = told.current('residualA', 'current');
      const by =
        told.nameOfKind('battery') ?? told.nameOfKind('jumpPost') ?? told.nameOfKind('takeOff') ?? 'another source';
      return told.text('by') === 'source'
        ? `When the fuse of ${told.place(0)} has opened, ${by} still feeds a short there: up to ${left}, and no device is in that way.`
        : `When one fuse of ${told.place(0)} has opened, the other battery still feeds a short there: at the least ${left}, for which ${fuse(told)} need not open.`;
    },
    remedy: () => 'Every source needs a fuse of its own near its post, small enough to open by itself.',
  },
  'breaking-capacity': { sentence: breaking, remedy: breakingRemedy },
  selectivity: {
    sentence: (told) =>
      (told.number('branches') ?? 1) > 1
        ? `A short behind one of ${told.number('branches')} branch fuses may open ${told.place(0)} as well: that it does not is not shown by the standard's limits.`
        : `A short behind the branch fuse may open ${told.place(0)} as well: that it does not is not shown by the standard's limits.`,
    remedy: () => "Nothing burns for it, but all goes dark. The makers' own curves may show more.",
  },
  'overload-heating': {
    sentence: (told) => {
      const hot = told.temperature('conductorC');
      const held = `At ${told.current('currentA', '1.35 times its rating')}, which ${fuse(told)} need not end, ${told.place(0)}`;
      return hot === ''
        ? `${held} finds no temperature to settle at: it heats until it fails.`
        : `${held} would reach ${hot}${after('; its insulation stands', told.temperature('limitC'))} for a few hours.`;
    },
    remedy: () => 'Use a thicker cable, a better insulation class, a cooler way, or a smaller fuse.',
  },
};
