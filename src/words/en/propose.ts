/** What is said of a proposed feed. */
import type { WhyProposed } from '../../plan/propose/proposal.ts';

/** Beside the verdict, which is that of the plan with all of it accepted. */
export const asProposed = 'As proposed: not in the plan yet';

const WHY: Readonly<Record<WhyProposed, string>> = {
  firstFuse: 'a fuse as near the source as the place allows',
  throughWall: 'the way crosses the firewall',
  divides: 'one cable feeds more than one input',
  branchFuse: 'a smaller cable behind a larger fuse',
  groundBeside: 'a short way back beside it',
  groundSource: 'its negative post is joined to nothing',
  feeds: 'part of the way there',
  moved: 'moved by you',
};

export const proposing = {
  label: 'Proposed feed',
  propose: 'Propose feed',
  parts: (count: number): string => `${count} proposed. Tap one to bend, accept or refuse it.`,
  /** What is still to be settled with all of it: how much, and the gravest of it. */
  leaves: (count: number, gravest: string): string =>
    `Left to settle${count > 1 ? `, ${count} in all` : ''}: ${gravest}`,
  nothing: 'Nothing could be proposed here.',
  noRemote: 'Remote leads are left to you.',
  accept: 'Accept',
  refuse: 'Refuse',
  acceptAll: 'Accept all',
  refuseAll: 'Refuse all',
  mark: 'proposed',
  acceptOne: (name: string): string => `Accept ${name}`,
  refuseOne: (name: string): string => `Refuse ${name}`,
  accepted: (name: string): string => `${name} is part of the plan now.`,
  refused: (name: string): string => `${name} is put away.`,
  why: (name: string, why: WhyProposed): string => `${name}: ${WHY[why]}`,
} as const;
