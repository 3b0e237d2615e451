/** The guided first plan: in each step one sentence on what to do and why. */
export const guide = {
  label: 'First plan',
  /** Where it waits once it was left. */
  again: 'Show me a first plan',
  step: (n: number, of: number, title: string) => `Step ${n} of ${of}: ${title}`,
  leave: 'Leave',
  fold: 'Fold',
  unfold: 'Unfold',
  done: 'Done',
  isDone: 'done',
  isNow: 'now',
  isOpen: 'still to do',
  stepsLabel: 'Steps',
  putBack: 'Put it back',
  drawing: 'Tap the terminal where the cable starts, then the one where it ends. A tap between them is a bend.',
  steps: {
    plan: {
      title: 'a plan of your own',
      text: 'Start a new plan and choose the vehicle, so that lengths and warm places are those of your car.',
      act: 'Start a new plan',
    },
    battery: {
      title: 'the battery',
      text: 'Place the battery where it sits in the car: every length counts from there.',
      act: 'Take a battery',
      held: 'The battery is in your hand: tap where it sits in the car.',
    },
    amplifier: {
      title: 'the amplifier',
      text: 'Place the amplifier and enter its rated output: it sets the current, and so everything else.',
      act: 'Take an amplifier',
      held: 'The amplifier is in your hand: tap where it sits in the car.',
      actTell: 'Enter its output',
    },
    feed: {
      title: 'the feed',
      text: 'Lead a cable from battery to amplifier, with the main fuse close to the battery: before it, nothing protects the cable.',
      act: 'Let it be proposed',
      actAccept: 'Accept what is proposed',
      actDraw: 'Draw it yourself',
    },
    grounds: {
      title: 'the grounds',
      text: 'Join each amplifier to bare body metal close by: what flows in must flow back.',
      act: 'Take a ground point',
      held: 'The ground point is in your hand: tap bare metal close to the amplifier.',
      actDraw: 'Draw the ground cable',
    },
    tape: {
      title: 'a first taped length',
      text: 'Measure one run in the car with a tape and enter its length: a drawn length is only an estimate.',
      act: 'Enter a length',
    },
    verdict: {
      title: 'the verdict',
      text: 'Read the verdict above the figures: what to stop for, what to fix, and what nobody has told yet.',
      act: 'Done',
    },
  },
} as const;
