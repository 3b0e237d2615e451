/** Other ways to build the plan, side by side. */
import type { AlternativeId } from '../../plan/alternatives/alternative.ts';

const names: Readonly<Record<AlternativeId, string>> = {
  thickerFeed: 'Thicker feed',
  copperClad: 'Copper-clad aluminum',
  secondBattery: 'Second battery',
  otherAmplifier: 'Other amplifier',
};

const what: Readonly<Record<AlternativeId, string>> = {
  thickerFeed: 'The feed one size of the stock larger, bought marked with the same class.',
  copperClad: 'Every added cable of aluminum clad with 10 % copper.',
  secondBattery: 'A second battery beside the largest amplifier, with its own fuse and ground.',
  otherAmplifier: 'Another output in the place of one amplifier.',
};

const none: Readonly<Record<AlternativeId, string>> = {
  thickerFeed: 'No feed is sized yet, or the stock holds no larger size.',
  copperClad: 'No added cable is of copper.',
  secondBattery: 'No amplifier is rated yet, or the sheet has no room.',
  otherAmplifier: 'No amplifier is rated yet, or the output is the same.',
};

export const alternatives = {
  label: 'Alternatives',
  open: 'Alternatives',
  hint: 'Each is the whole plan, worked out anew. Nothing changes until one is accepted, and that can be undone.',
  present: 'As it is',
  figure: 'Figure',
  verdict: 'Verdict',
  terminal: (amplifier: string) => `${amplifier}, at its terminals`,
  unprotected: 'Longest unprotected',
  fuses: 'All fuses',
  gone: 'No longer found',
  found: 'Newly found',
  same: 'same',
  nothing: 'nothing',
  better: 'better',
  worse: 'worse',
  accept: 'Accept',
  acceptOf: (name: string) => `Accept: ${name}`,
  which: 'Amplifier to replace',
  ratedW: 'Output of the other one, W',
  names,
  what,
  none,
  /** The longest word of a verdict, and where it may be parted in a narrow column. */
  longest: { whole: 'tape', parted: 'tape' },
};
