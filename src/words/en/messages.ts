/** The short messages at the foot of the page, by the id the desk sends; a refused file has open.ts. */
import { gaugeText } from '../units.ts';

export type MessageParams = Readonly<Record<string, string | number>>;

const nameOf = (params: MessageParams): string => String(params.name ?? '');

const clock = (time: number): string =>
  new Intl.DateTimeFormat('en', { dateStyle: 'medium', timeStyle: 'short' }).format(time);

export const messages = {
  removed: (params: MessageParams) => `${nameOf(params)} deleted.`,
  joined: ({ name = '', size = '' }: MessageParams) =>
    `${name} deleted. Its two cables are one now, as it came in: ${size === 'auto' ? 'its size worked out' : gaugeText(String(size))}.`,
  exampleCopied: (params: MessageParams) => `You are working on your own copy of ${nameOf(params)}.`,
  notKept: () => 'This browser does not keep the plan. Save a file before you leave.',
  storageFull: () => "The browser's room for this page is full. Save a file, then free some space.",
  otherTab: () => 'Another tab changed this plan. What you do here is kept as a plan of its own.',
  olderOpened: (params: MessageParams) =>
    `The newest saved state was damaged. The one from ${clock(Number(params.time ?? 0))} is open.`,
  savedDamaged: () => 'The saved plan was damaged. The example is open instead.',
  exampleMissing: () => 'The example could not be loaded. An empty plan is open.',
  handMissing: () =>
    'Nothing on the sketch can be moved yet: part of the page could not be loaded. What you do is kept, and the next touch tries again.',
  planDeleted: (params: MessageParams) => `${nameOf(params)} deleted.`,
  sheetsFollowed: () => 'The outline was changed on every sheet of this vehicle.',
  refused: ({ count = 1 }: MessageParams) => `${count} ${count === 1 ? 'part' : 'parts'} refused.`,
  fileOpened: (params: MessageParams) => `${nameOf(params)} is open.`,
  fileSaved: (params: MessageParams) => `${nameOf(params)} saved as a file.`,
  fileSavedWithout: ({ name = '', count = 1 }: MessageParams) =>
    count === 1
      ? `${name} saved as a file, without the part that is only proposed.`
      : `${name} saved as a file, without the ${count} parts that are only proposed.`,
};

export const messageActs = { undo: 'Undo', dismiss: 'Dismiss' } as const;
