import type { FittingKind } from '../../plan/schema.ts';

/** Safety words that stand beside the fitting they concern; null where there is nothing to hurt oneself on. */
export const fittingCautions: Readonly<Record<FittingKind, string | null>> = {
  battery: 'Negative off first, back on last. No hot work near a gassing battery.',
  fuse: 'Fit the holder with its link out. The link goes in last.',
  passThrough:
    "Look at both sides before you drill. Keep clear of fuel, brake lines and airbag wiring; in the bay, lead the cable clear of the hood's hinges and catch.",
  block: null,
  amplifier: null,
  ground: 'Bare metal, a bolt of its own: never a seat belt, airbag, brake or steering bolt.',
  breaker: 'Open while you work. One that trips again has a reason: find it before you close it a third time.',
  bus: 'A cover over every live stud. A dropped wrench bridges two bars.',
  reducer: null,
  load: null,
  alternator:
    'The output stud is live whenever a battery is connected, engine off too. Every negative off first. Never run it without its battery.',
  jumpPost:
    'Live at all times: the battery is elsewhere. Take that battery off before you touch the post, and put its cover back.',
  takeOff: 'Live from the battery. Take the negative off first, and never raise the factory fuse.',
  charger: 'Fed from both sides: it stays live until both batteries are off. It gets hot: leave air around it.',
  relay: 'Live on both sides, open or closed. It closes by itself: take both batteries off before work.',
  switch: 'Open is not dead: the battery side stays live. Never open it while the engine runs.',
  capacitor:
    'Fill it through a resistor or a lamp before you join it; empty it the same way before you touch it. It holds its charge for days.',
  continuation: null,
};

/** In the legend: what no picture can show. */
export const airbagCaution =
  "No work near airbags and their wiring without training; keep the vehicle maker's waiting time.";
