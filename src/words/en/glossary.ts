/** Trade words, each with what it means in plain words. Where each is explained first: tests/panels/terms.test.tsx. */
const entry = (word: string, means: string) => ({ word, means });

export const glossary = {
  ampacity: entry(
    'Ampacity',
    'The most current a cable carries for good without its insulation growing too hot. Warm surroundings and other cables beside it lower it.',
  ),
  branchFuse: entry(
    'Branch fuse',
    'A fuse for one thinner cable behind a block. The main fuse is too large to protect that cable.',
  ),
  breakingCapacity: entry(
    'Breaking capacity',
    'The largest current a fuse can cut off without bursting. A battery may give more than that into a dead short.',
  ),
  bundle: entry(
    'Bundle',
    'Cables tied together. Those under load warm each other, so each may carry less than it could alone.',
  ),
  clearingTime: entry(
    'Clearing time',
    'How long a fuse takes to cut a current off. The larger the current, the shorter it is.',
  ),
  conductor: entry(
    'Conductor',
    'The metal in a cable that the current flows through. The insulation around it is not counted.',
  ),
  cutLength: entry(
    'Cut length',
    'The cable to cut off the reel: the way it takes through the car with every bend and rise. Measure that way with a tape; a drawing only estimates it.',
  ),
  derating: entry(
    'Derating',
    'Taking less from a cable or a fuse than its table says, because it sits somewhere warmer than the table assumes.',
  ),
  distributionBlock: entry(
    'Distribution block',
    'One thick cable goes in, several thinner ones come out. Each output may have a fuse of its own.',
  ),
  drop: entry(
    'Voltage drop',
    'The volts lost along the cables, there and back. What is lost there is missing at the amplifier, and warms the cable.',
  ),
  fuseHolder: entry(
    'Fuse holder',
    'What a fuse sits in: it joins the fuse to the cables and covers it. It takes fuses of one family only.',
  ),
  gauge: entry(
    'Gauge',
    'The size of a conductor. In numbered gauges a smaller number means thicker: 1/0 is thicker than 4, and 4 than 8.',
  ),
  groundPoint: entry(
    'Ground point',
    'The bolt where a ground cable meets bare metal of the body. The current goes back to the battery through it, so paint under it counts as a fault.',
  ),
  grommet: entry(
    'Grommet',
    'A rubber ring in a hole of the sheet metal. Without it the edge cuts through the insulation in time.',
  ),
  loom: entry('Loom', 'Cables led together, in a sleeve or under tape. They share a way, and their warmth.'),
  mainFuse: entry(
    'Main fuse',
    'The first fuse after the battery. It protects the thick cable behind it, and nothing protects the cable before it: so it sits close to the battery.',
  ),
  passThrough: entry(
    'Pass-through',
    'Where a cable goes through a wall of sheet metal, such as the firewall. It needs a grommet.',
  ),
  prospectiveCurrent: entry(
    'Prospective short-circuit current',
    'The current that would flow if the cable touched bare metal there, as far as battery and cables let it. Fuses are checked against it.',
  ),
  run: entry('Run', 'One piece of cable from terminal to terminal, with the way it takes through the car.'),
  selectivity: entry(
    'Selectivity',
    'Of two fuses in a row, the one nearest the fault opens alone. The rest keeps working.',
  ),
  slack: entry('Slack', 'Cable added to the drawn length so that nothing is pulled tight, in percent of it.'),
  terminal: entry('Terminal', 'The screw, stud or clamp of a fitting that a cable is joined to.'),
  unprotectedLength: entry(
    'Unprotected length',
    'The live cable between a source and its first fuse. If that piece is crushed in a crash, nothing cuts the current off: keep it short.',
  ),
} as const;

export type TermId = keyof typeof glossary;
