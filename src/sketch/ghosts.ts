/** What is proposed, told apart from what is there: dashed and pale. */
import type { Drawing, FittingShape, RunShape, Shape } from '../drawing/shapes.ts';
import type { Proposal } from '../plan/propose/proposal.ts';

const DASH_PX = [9, 7];

/** The drawing with what is proposed dashed. The same drawing where nothing is. */
export function withGhosts(drawing: Drawing, proposal: Proposal): Drawing {
  if (proposal.length === 0) return drawing;
  const ids = new Set(proposal.map(({ id }) => id));
  return {
    ...drawing,
    runs: drawing.runs.map((run) => (ids.has(run.runId) ? ghostRun(run) : run)),
    fittings: drawing.fittings.map((fitting) => (ids.has(fitting.fittingId) ? ghostFitting(fitting) : fitting)),
    labels: drawing.labels.map((label) => (ids.has(label.id) ? { ...label, isProposed: true } : label)),
  };
}

const ghostRun = (run: RunShape): RunShape => ({
  ...run,
  isProposed: true,
  stroke: { ...run.stroke, dashPx: DASH_PX },
});

/** The same list each time for a kind of plate, as those of the plan have: pens keep what they make of it. */
const ghostParts = new WeakMap<FittingShape['parts'], FittingShape['parts']>();

/** The plate is what a symbol stands on: its edge is dashed, the symbol stays legible. */
function ghostFitting(fitting: FittingShape): FittingShape {
  const { parts } = fitting;
  const ghost = ghostParts.get(parts) ?? parts.map((part, index) => (index === 0 ? dashed(part) : part));
  ghostParts.set(parts, ghost);
  return { ...fitting, isProposed: true, parts: ghost };
}

function dashed(part: Shape): Shape {
  if (part.stroke === null) return part;
  return { ...part, stroke: { ...part.stroke, colour: 'accent', widthPx: 2, dashPx: [5, 4] } };
}
