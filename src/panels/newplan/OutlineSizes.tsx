import type { OutlineOf } from '../../plan/schema.ts';
import { words } from '../../words/full.ts';
import type { ShowLength } from '../../words/units.ts';
import { LengthField } from '../keypad/LengthField.tsx';

export type Sized = OutlineOf<'vehicle'> | OutlineOf<'bench'>;

/** A size and its bounds; the bounds are the document's. */
const VEHICLE_SIZES = [
  ['lengthM', 2, 12],
  ['widthM', 1, 3],
  ['heightM', 0.5, 4],
  ['frontAxleM', 0.1, 4],
  ['wheelbaseM', 0.3, 10],
  ['bayM', 0.3, 3],
  ['cabM', 0.5, 8],
  ['sillM', 0.02, 0.5],
] as const satisfies readonly (readonly [keyof OutlineOf<'vehicle'>, number, number])[];
const BENCH_SIZES = [
  ['lengthM', 0.5, 12],
  ['widthM', 0.3, 5],
] as const satisfies readonly (readonly [keyof OutlineOf<'bench'>, number, number])[];

interface Problem {
  /** The field it is said at. */
  readonly at: keyof OutlineOf<'vehicle'>;
  readonly text: string;
}

/** What does not go together in the sizes told; null when all does. */
export function sizeProblem(outline: Sized): Problem | null {
  if (outline.kind === 'bench') return null;
  const { bayTooLong, axlesTooFar } = words.newPlanDialog;
  const { lengthM, bayM, cabM, frontAxleM, wheelbaseM } = outline;
  if (bayM + cabM >= lengthM) return { at: 'cabM', text: bayTooLong };
  return frontAxleM + wheelbaseM >= lengthM ? { at: 'wheelbaseM', text: axlesTooFar } : null;
}

/** The measures of the vehicle or the board: middling ones until somebody tapes them. */
export function OutlineSizes({
  outline,
  showLength,
  onTake,
}: {
  outline: Sized;
  /** As the plan that is begun will show them. */
  showLength: ShowLength;
  onTake: (outline: Sized) => void;
}) {
  const { newPlanDialog: text } = words;
  const problem = sizeProblem(outline);
  return (
    <details
      className="fold"
      onToggle={({ currentTarget }) => {
        // what is wrong is never folded away
        if (problem !== null) currentTarget.open = true;
      }}
    >
      <summary>{text.sizes}</summary>
      <p className="hint">{text.sizesHint}</p>
      <div className="field-grid">
        {outline.kind === 'bench'
          ? BENCH_SIZES.map(([field, minM, maxM]) => (
              <LengthField
                key={field}
                label={text[field]}
                valueM={outline[field]}
                minM={minM}
                maxM={maxM}
                showLength={showLength}
                onTake={(m) => m !== null && onTake({ ...outline, [field]: m })}
              />
            ))
          : VEHICLE_SIZES.map(([field, minM, maxM]) => (
              <LengthField
                key={field}
                label={text[field]}
                valueM={outline[field]}
                minM={minM}
                maxM={maxM}
                showLength={showLength}
                problem={problem?.at === field ? problem.text : null}
                onTake={(m) => m !== null && onTake({ ...outline, [field]: m })}
              />
            ))}
      </div>
    </details>
  );
}
