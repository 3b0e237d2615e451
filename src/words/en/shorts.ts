/** What a short would do, and what music asks of battery and alternator. */
import type { ShortAnswer } from '../../assess/answer.ts';

export const shorts = {
  /** Folded: one line says what is inside. */
  title: 'What a short would do',
  lead: 'A dead short to the body anywhere on the cable, at the worst of its currents. Estimates: batteries and contacts differ.',
  columns: { current: 'Current', opens: 'Fuse opens', heat: 'Cable then' },
  within: (time: string) => `within ${time}`,
  never: 'not at all',
  unknown: 'not published',
  ofLimit: (limit: string) => `of ${limit}`,
  melts: 'melts',
  seconds: (n: string) => `${n} s`,
  minutes: (n: string) => `${n} min`,
  from: (lowest: string, highest: string) => `${lowest} to ${highest}`,
  /** What comes of it, in one line. */
  outcome: (
    {
      verdict,
      harm,
      unprotected,
      withoutLimits,
    }: Pick<ShortAnswer, 'verdict' | 'harm' | 'unprotected' | 'withoutLimits'>,
    fuse: string | null,
  ): string => {
    const it = fuse ?? 'The fuse';
    if (unprotected) return 'No fuse lies ahead of it: nothing opens, whatever happens.';
    if (withoutLimits)
      return `For ${fuse ?? 'this fuse'} no opening times are published: not shown that it opens in time.`;
    if (verdict === 'opensInTime') return `${it} opens before the insulation is damaged.`;
    if (verdict === 'nothingOpens')
      return `At the least current no fuse need open: it goes on flowing${harm === 'none' ? '' : ', and the insulation is damaged'}.`;
    if (verdict === 'damagedFirst') return `The insulation is damaged before ${fuse ?? 'the fuse'} opens.`;
    return `The insulation may be damaged before ${fuse ?? 'the fuse'} opens.`;
  },
  damaged: (time: string) => `Insulation damaged after ${time}.`,
  partial: (current: string, temperature: string, limit: string) =>
    `A poor contact of up to ${current} no fuse need see: the cable settles at ${temperature} (limit ${limit}).`,
  partialRunsAway: (current: string) =>
    `A poor contact of up to ${current} no fuse need see, and the cable finds no temperature to settle at.`,
  stillFed: (current: string, sources: string) =>
    `Once its fuse has opened, ${sources} still feeds ${current} into it.`,
} as const;

export const supplied = {
  title: 'Battery and alternator',
  lead: 'Estimates: what a battery gives hangs on its age and charge.',
  rows: {
    postsOff: 'Lowest battery voltage, engine off, full output',
    postsIdle: 'Lowest battery voltage, idle, full output',
    postsCruise: 'Lowest battery voltage, cruise, full output',
    meanOff: 'Music draws in the mean, engine off',
    meanRunning: 'Music draws in the mean, engine running',
    minutes: (batteries: string) => `Play with the engine off from ${batteries}`,
    idleHot: (alternator: string) => `${alternator}, hot at idle, brings at the most`,
    cruiseHot: (alternator: string) => `${alternator}, hot at cruise, brings at the most`,
    deficitIdle: 'Batteries must add in the mean at idle',
    deficitCruise: 'Batteries must add in the mean at cruise',
  },
  noAlternator: 'No alternator is drawn: nothing is told of charging.',
  saturated: 'at its limit',
} as const;
