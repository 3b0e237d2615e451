/** What decides a size or a figure; ids come from the assessment. */
const GOVERNS: Readonly<Record<string, string>> = {
  drop: 'set by voltage drop',
  fuse: 'set by its fuse',
  ampacity: 'set by ampacity',
  heating: 'set by heating',
  ground: 'as thick as the feed',
  smallest: 'smallest in stock',
  fixed: 'fixed by hand',
  full: 'set by full current',
  fullCurrent: 'set by full current',
  heatingCurrent: 'set by heating current',
  onboard: 'set by the on-board fuses',
  sumOnboard: 'set by the on-board fuses',
  conductor: 'set by the cable',
  maker: "set by the amplifier maker's limit",
  cables: 'cables, there and back',
  drawn: 'drawn, not taped',
  taped: 'as taped',
  none: 'nothing on the way',
  onlyBranches: 'no fuse ahead of the block',
  bareFeed: 'no fuse ahead of the feed',
};

/** 'set by voltage drop'; an id without words is said as it is rather than swallowed. */
export const governs = (id: string): string => GOVERNS[id] ?? id;

/** The same, for the table of runs. */
export const governsRun: Readonly<
  Record<'drop' | 'fuse' | 'ampacity' | 'heating' | 'ground' | 'smallest' | 'fixed', string>
> = {
  drop: 'voltage drop',
  fuse: 'its fuse',
  ampacity: 'ampacity',
  heating: 'heating',
  ground: 'its feed',
  smallest: 'smallest in stock',
  fixed: 'fixed by hand',
};
