/** What a gesture changes, as it is drawn with every frame. */
import type { Assessment } from '../assess/answer.ts';
import { answerOf } from '../desk/answer.ts';
import { drawThings } from '../drawing/draw.ts';
import type { FittingShape, HazardShape, LabelShape, RunShape } from '../drawing/shapes.ts';
import type { Plan } from '../plan/schema.ts';
import { unitsFor } from '../words/index.ts';
import { withEnds } from './changes.ts';
import { withGhosts } from './ghosts.ts';
import { labelWords } from './labelWords.ts';
import { drawingIn } from './sight.ts';
import type { Scene } from './useScene.ts';

export interface Live {
  /** The plan that is shown. */
  plan: Plan;
  /** For that plan, or while that is still being worked out, for the one before. */
  answer: Assessment;
  /** All that are seen: a stripe may change with what is moved elsewhere. */
  hazards: readonly HazardShape[];
  /** What the gesture changes. */
  runs: readonly RunShape[];
  /** With those at the ends of its runs, to lie over them. */
  fittings: readonly FittingShape[];
  /** Of what it changes, and the lengths of unprotected stretches. */
  labels: readonly LabelShape[];
}

function workOut({ plan, sheet, settled, changed, sight, proposal }: Scene, draft: Plan, answered: Plan): Live {
  const answer = answerOf(answered);
  if (changed.size === 0) return { plan, answer, hazards: settled.hazards, runs: [], fittings: [], labels: [] };
  const things = drawThings(draft, sheet, answer, labelWords(unitsFor(draft)), withEnds(draft, changed));
  const drawn = withGhosts(drawingIn(sight, { outline: settled.outline, ...things }), proposal);
  return {
    plan: draft,
    answer,
    hazards: drawn.hazards,
    runs: drawn.runs.filter(({ runId }) => changed.has(runId)),
    fittings: drawn.fittings,
    labels: drawn.labels.filter(({ kind, id }) => kind === 'hazard' || changed.has(id)),
  };
}

/** The last one: both panes, their labels and the figures at the finger ask for the same, one after another. */
let last: { readonly scene: Scene; readonly draft: Plan; readonly answered: Plan; readonly live: Live } | null = null;

/** What the gesture makes of the scene; worked out once for a draft and its answer. */
export function liveOf(scene: Scene, draft: Plan, answered: Plan): Live {
  if (last?.scene === scene && last.draft === draft && last.answered === answered) return last.live;
  const live = workOut(scene, draft, answered);
  last = { scene, draft, answered, live };
  return live;
}
