/** Findings on batteries, alternators, capacitors, contacts and joints. */
import type { Told } from '../../told.ts';
import { after, type FindingTable, fuseAtPlace, ofPlace, said } from './finding.ts';

const MILLI = 1e-3;

function supplyWiring(told: Told): string {
  const supplies = told.namesOfKinds('charger', 'alternator');
  const supply = supplies.length === 0 ? 'the charger' : supplies.join(' and ');
  const send = supplies.length > 1 ? 'send' : 'sends';
  const at = fuseAtPlace(told);
  const opens = told.text('what') === 'opens';
  const [ownA, allA] = [told.number('supplyA') ?? 0, told.number(opens ? 'fullA' : 'heatingA') ?? 0];
  // music on the same way, beyond rounding
  const shared =
    allA > 1.005 * ownA && ownA > 0 ? `, ${told.current('supplyA')} of it for ${supply}` : `, for ${supply}`;
  switch (told.text('what')) {
    case 'opens':
      return `${at}${after(', at', told.current('ratingA'))}, is smaller than the full current${after(' of', told.current('fullA'))}${shared}.`;
    case 'forLong':
      return `${at}${after(', at', told.current('ratingA'))}, would carry ${told.current('heatingA', 'too much')} for long${shared}.`;
    case 'carries':
      return `${at} would carry ${told.current('heatingA', 'more than it may')} for long${shared}; here it may carry ${told.current('ampacityA', 'less')}.`;
    default: {
      const others = (told.number('parts') ?? 1) - 1;
      return others > 0
        ? `Nothing is chosen for ${at} and ${others} more on the way of ${supply}, which ${send} up to ${told.current('supplyA', 'its current')} through them.`
        : `Nothing is chosen for ${at}, which ${supply} ${send} ${told.current('supplyA', 'its current')} through.`;
    }
  }
}

/** A fuse is set to a rating, a cable for a current; of several parts each to its own. */
function setByHand(told: Told): string {
  const least = (index: number): string => {
    const needed = told.current(ofPlace('neededA', index));
    return needed === '' ? after('for at least', told.current(ofPlace('heatingA', index))) : `to at least ${needed}`;
  };
  const parts = told.number('parts') ?? 1;
  if (parts === 1) return `: set it by hand${after(',', least(0))}`;
  const each = Array.from({ length: parts }, (_, index) => said(fuseAtPlace(told, index), least(index)));
  return `. Set them by hand: ${each.join('; ')}`;
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
      `${told.text('speed') === 'cruise' ? 'On the road' : 'At idle'} music and vehicle draw ${told.current('demandA', 'more')} on average and ${told.place(0)} brings ${told.current('outputA', 'less')} hot: the battery empties by ${told.current('deficitA', 'the difference')}.`,
    remedy: (told) =>
      told.text('speed') === 'cruise'
        ? 'Take an alternator of a higher rating, or play with less on average.'
        : 'Play less with the engine at idle, or take an alternator with a higher output at idle.',
  },
  'capacitor-precharge': {
    sentence: (told) =>
      `No pre-charge of ${told.place(0)} is told: joined empty, it draws as much as a short for a moment.`,
    remedy: (told) => {
      const [ohm, seconds] = [told.number('prechargeOhm'), told.number('seconds')];
      const by = ohm === null ? 'a resistor' : `a resistor of ${told.units.resistance(ohm)}`;
      const time = seconds === null ? '' : `, for ${told.units.number(seconds, 0)} s`;
      return `Fill it through ${by} first${time}, then fit the fuse; mark that it will be.`;
    },
  },
  'capacitor-unfused': {
    sentence: (told) =>
      `Shorted, ${told.place(0)} drives ${told.units.number(told.number('ratio') ?? 1, 1)} times what ${told.named('runId') ?? 'its cable'} bears, and no fuse lies between them.`,
    remedy: (told) => `Put a fuse at ${told.place(0)}, as at a battery.`,
  },
  'joint-heat': {
    sentence: (told) => {
      const ohm = told.number('jointOhm');
      const others = (told.number('runs') ?? 1) - 1;
      const which = others > 0 ? `${told.place(0)} and ${others} more` : told.place(0);
      const of = ohm === null ? '' : ` of ${told.units.number(ohm / MILLI, 2)} mΩ`;
      return `A joint${of} on ${which} turns ${told.power('powerW', 'too much')} into heat${after(' at', told.current('currentA'))}; no fuse ever opens for it.`;
    },
    remedy: (told) =>
      told.text('joint') === 'measured'
        ? 'Clean it, crimp it anew and tighten it, then measure again.'
        : 'Measure the joints under load and enter what they have.',
  },
  'contact-overloaded': {
    sentence: (told) =>
      `${told.place(0)} is rated for ${told.current('ratedA', 'less')} and carries ${told.current('currentA', 'more')} at full output.`,
    remedy: () => 'Take one of a higher rating, or split the feed.',
  },
  'takeoff-overloaded': {
    sentence: (told) =>
      told.number('fuseA') === null
        ? `The rating of the factory fuse at ${told.place(0)} is not told: whether it carries ${told.current('oursA', 'this')} more cannot be said.`
        : `The factory fuse at ${told.place(0)} is rated ${told.current('fuseA', 'less')}; with ${told.current('usedA', 'what it feeds already')} of its own it carries ${told.current('fullA', 'more')} at full output, ${told.current('heatingA', 'too much')} for long.`,
    remedy: (told) =>
      told.number('fuseA') === null
        ? 'Read the rating off the fuse and enter it.'
        : 'Feed from the battery itself. Never put in a larger fuse.',
  },
  'supply-wiring': {
    sentence: supplyWiring,
    remedy: (told) => {
      const needed = told.current('neededA');
      if (told.text('what') === 'undecided')
        return `Sizes are not chosen by what a charger or an alternator sends${setByHand(told)}.`;
      if (told.text('what') === 'carries') return 'Use a thicker cable, a better insulation class, or a cooler way.';
      return `Fit ${needed === '' ? 'a larger fuse' : `at least ${needed}`}, where the cable carries that; else a thicker cable too.`;
    },
  },
  'switch-open': {
    sentence: (told) => `${told.place(0)} is drawn open; everything is worked out with it closed.`,
    remedy: () => 'Close it before anything plays, or draw it closed.',
  },
};
