/** What the button of a step does: it takes up the tool, the plan is made by the user. */
import { handMove, handPlaces, handRun, placeActId } from '../../desk/acts/hand.ts';
import { runAct } from '../../desk/acts/index.ts';
import { acceptAllAct, proposeAct } from '../../desk/acts/propose.ts';
import type { Desk, DeskState, Selection } from '../../desk/desk.ts';
import { select } from '../../desk/selection.ts';
import { runsAt } from '../../plan/byId.ts';
import type { FittingKind, Plan } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import { type StepId, untoldAmplifier } from './steps.ts';

/** What lies outside the desk. */
export interface Around {
  onNewPlan(): void;
  /** Shows the fields of what is selected. */
  onEdit(): void;
  onLeave(): void;
}

interface StepAct {
  readonly text: string;
  /** What to do instead of what the step says: its tool is in the hand already. */
  readonly now?: string;
  run(): void;
}

function take(desk: Desk, kind: FittingKind): void {
  const act = handPlaces.find(({ id }) => id === placeActId(kind));
  if (act !== undefined) runAct(desk, act);
}

/** A ground point that no cable ends at yet. */
const hasFreeGround = (plan: Plan): boolean =>
  plan.fittings.some(({ kind, id }) => kind === 'ground' && runsAt(plan, id).length === 0);

/** While the tool of a step is in the hand: what to do with it, and the button that puts it back. */
const held = (desk: Desk, now: string): StepAct => ({
  text: words.guide.putBack,
  now,
  run: () => runAct(desk, handMove),
});

/** The button of a step as things stand on the desk. */
export function stepAct(id: StepId, state: DeskState, desk: Desk, around: Around): StepAct {
  const { steps } = words.guide;
  const { plan, hand } = state;
  const holds = (kind: FittingKind): boolean => hand.way === 'place' && hand.fitting === kind;
  const draw = (text: string): StepAct =>
    hand.way === 'run' ? held(desk, words.guide.drawing) : { text, run: () => runAct(desk, handRun) };
  const edit = (selection: Selection) => {
    desk.setState({ hand: { way: 'move' } });
    select(desk, selection);
    around.onEdit();
  };
  switch (id) {
    case 'plan':
      return { text: steps.plan.act, run: around.onNewPlan };
    case 'battery':
      if (holds('battery')) return held(desk, steps.battery.held);
      return { text: steps.battery.act, run: () => take(desk, 'battery') };
    case 'amplifier': {
      if (holds('amplifier')) return held(desk, steps.amplifier.held);
      const untold = untoldAmplifier(plan);
      if (untold === undefined) return { text: steps.amplifier.act, run: () => take(desk, 'amplifier') };
      return { text: steps.amplifier.actTell, run: () => edit({ kind: 'fitting', id: untold.id }) };
    }
    case 'feed':
      if (acceptAllAct.allowed(state)) {
        return { text: steps.feed.actAccept, run: () => runAct(desk, acceptAllAct) };
      }
      if (proposeAct.allowed(state)) return { text: steps.feed.act, run: () => runAct(desk, proposeAct) };
      return draw(steps.feed.actDraw);
    case 'grounds':
      if (hasFreeGround(plan)) return draw(steps.grounds.actDraw);
      if (holds('ground')) return held(desk, steps.grounds.held);
      return { text: steps.grounds.act, run: () => take(desk, 'ground') };
    case 'tape': {
      const run = plan.runs.find(({ kind }) => kind === 'power') ?? plan.runs[0];
      if (run === undefined) return draw(steps.feed.actDraw);
      return { text: steps.tape.act, run: () => edit({ kind: 'run', id: run.id }) };
    }
    case 'verdict':
      return { text: steps.verdict.act, run: around.onLeave };
  }
}
