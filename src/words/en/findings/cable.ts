/** Findings on conductors: size, drop, heat, ground. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, said } from './finding.ts';

const BINDS: Readonly<Record<string, string>> = {
  drop: 'the voltage drop binds',
  fuse: 'the fuse it needs binds',
  ampacity: 'the ampacity binds',
  heating: 'the heat round it binds',
  ground: 'the feed it must match binds',
};

const METALS: Readonly<Record<string, string>> = {
  copper: 'copper',
  cca10: 'copper-clad aluminum (10 %)',
  cca15: 'copper-clad aluminum (15 %)',
  aluminium: 'aluminum',
};
const isOneMetal = (told: Told): boolean => told.text('metal') === told.text('feedMetal');
const of = (told: Told, size: string, metal: string): string =>
  said(told.gauge(size), after('of', METALS[told.text(metal) ?? ''] ?? ''));

/** The air is as hot as the class. */
function nothingCarried(told: Told): string {
  const others = told.placeCount - 1;
  const runs = `${told.place(0)}${others > 0 ? ` and ${others} more` : ''}`;
  const air = told.temperature('airC', 'as hot as their insulation may get');
  const classC = told.temperature('classC', 'less');
  const mark =
    told.text('unmarked') === 'yes'
      ? `cable that is not marked counts as good for ${classC}`
      : `the insulation is for ${classC}`;
  return `${runs} may carry nothing: the air there is ${air}, and ${mark}.`;
}

/** ', and to 2 more above 5.0 %' of the others that one note is for. */
function moreLosing(told: Told): string {
  const others = (told.number('loads') ?? 1) - 1;
  return others > 0 ? `, and to ${others} more above ${told.percent('limitPercent', '5 %')}` : '';
}

function heatingSentence(told: Told): string {
  const run = told.place(0);
  const held =
    told.text('held') === 'fuseRating' ? `At the ${told.current('currentA', 'rating')} its fuse lets in, ${run}` : run;
  const hot = told.temperature('conductorC');
  return hot === ''
    ? `${held} finds no temperature to settle at: it heats until it fails.`
    : `${held} would reach ${hot}${after('; its insulation is for', told.temperature('classC'))}.`;
}

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
      const others = told.placeCount - 1;
      return `No cable in stock does it for ${told.place(0)}${others > 0 ? ` and ${others} more` : ''}${binds === undefined ? '' : `: ${binds}`}.`;
    },
    remedy: (told) => {
      const amplifier = told.named('ampId');
      if (amplifier !== null)
        return `Several fuses feed ${amplifier} together: put a fuse of its own right ahead of it, no larger than it needs.`;
      return told.text('binds') === 'fuse'
        ? 'Split the feed into two, each with its own fuse and cable; or choose a better insulation class or a cooler way.'
        : 'Split the feed, choose a better insulation class, or find a shorter or cooler way.';
    },
  },
  'drop-cables': {
    sentence: (told) =>
      `The cables to and from ${told.place(0)} lose ${told.voltage('dropV', 'too much')}${after(',', told.percent('dropPercent'))}; the limit is ${told.percent('limitPercent', '3 %')}.`,
    remedy: () => 'Use a thicker or shorter cable, in the feed or in the ground.',
  },
  'drop-whole': {
    sentence: (told) =>
      `From battery post to ${told.place(0)}, ${told.voltage('dropV', 'much')} is lost${after(',', told.percent('dropPercent'))}${moreLosing(told)}: cables, joints, fuses and body together.`,
    remedy: () => 'Look at the longest part first: a ground cable back to the battery, fewer joints, thicker cable.',
  },
  'below-cut-out': {
    sentence: (told) =>
      `At full output ${told.place(0)} gets ${told.voltage('terminalV', 'too little')} and shuts down below ${told.voltage('cutOutV', 'its cut-out')}.`,
    remedy: () => 'Use a thicker or shorter cable, a stronger battery, or let the engine run.',
  },
  'cannot-carry': {
    sentence: (told) => {
      const share = told.percent('carriedPercent');
      const working = told.percent('workingPercent');
      const works =
        working === ''
          ? ''
          : ` With every amplifier above its cut-out of ${told.voltage('cutOutV')} no more than ${working} works.`;
      return `Full output draws ${told.power('powerW', 'more than this')}; these cables can carry ${share === '' ? 'less' : `${share} of it`}, at any voltage.${works}`;
    },
    remedy: () => 'Use much thicker or shorter cables, or split the feed.',
  },
  ampacity: {
    sentence: (told) =>
      told.number('ampacityA') === 0
        ? nothingCarried(told)
        : `${told.place(0)} would carry ${told.current('currentA', 'more than it may')} for long; here it may carry ${told.current('ampacityA', 'less')}.`,
    remedy: (told) => {
      if (told.number('ampacityA') !== 0) return 'Use a thicker cable, a better insulation class, or a cooler way.';
      return told.text('unmarked') === 'yes'
        ? 'Use cable marked for that heat, such as 105 °C, or find a cooler way; if it is marked, enter its class.'
        : 'Use cable of a better class, such as 105 °C, or find a cooler way. A thicker one of this class does not help.';
    },
  },
  heating: {
    sentence: heatingSentence,
    remedy: () => 'Use a thicker cable, a better insulation class, or a cooler way.',
  },
  'ground-missing': {
    sentence: (told) =>
      told.placeKind(0) === 'battery'
        ? `The negative post of ${told.place(0)} is joined to nothing.`
        : `${told.place(0)} has no way back to the battery.`,
    remedy: (told) =>
      told.placeKind(0) === 'battery'
        ? 'Run a ground from it to the body, or tell the factory strap.'
        : 'Run a ground from it to a ground point on the body, or to the battery.',
  },
  'ground-smaller': {
    sentence: (told) =>
      isOneMetal(told)
        ? `${told.place(0)}${after(', at', told.gauge('gauge'))}, is thinner than the feed it returns${after(':', told.gauge('feedGauge'))}.`
        : `${told.place(0)}${after(', at', of(told, 'gauge', 'metal'))}, conducts less than the feed it returns${after(':', of(told, 'feedGauge', 'feedMetal'))}.`,
    remedy: (told) =>
      isOneMetal(told)
        ? 'A ground is no thinner than the feed of its amplifier.'
        : 'Clad or plain aluminum conducts about six tenths of copper: take it thicker, or take copper.',
  },
  'strap-smaller': {
    sentence: (told) => {
      const mm2 = told.number('areaMm2');
      const strap = told.placeKind(0) === 'run' ? told.place(0) : `The factory strap of ${told.place(0)}`;
      const size = mm2 === null ? '' : `, ${told.units.area(mm2)},`;
      return told.number('heatingA') === null
        ? `${strap}${size} is smaller than the feed it returns${after(':', told.gauge('feedGauge'))}.`
        : `${strap}${size} returns ${told.current('heatingA')} for long; it carries ${told.current('strapA', 'less')}.`;
    },
    remedy: (told) =>
      `Lay a second strap beside it, from the negative post to the body${after(', of', told.gauge('feedGauge'))}. Leave the factory's in place.`,
  },
  'unmarked-cable': {
    sentence: (told) =>
      told.text('proven') === 'yes'
        ? `${told.place(0)} is taken as unmarked 60 °C cable; its strands prove its size.`
        : `${told.place(0)} is taken as unmarked 60 °C cable, and its size as unproven.`,
    remedy: (told) =>
      told.text('proven') === 'yes'
        ? 'Enter its class, where it is printed on it.'
        : 'Scrape a strand: copper all through? Count strands times diameter, and enter size and class.',
  },
  'small-separate-run': {
    sentence: (told) => `${told.place(0)} is thinner than 16 AWG, which a separate power run wants.`,
    remedy: () => 'Use 16 AWG or thicker; it breaks less easily.',
  },
};
