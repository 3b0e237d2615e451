import { type ReactNode, useId } from 'react';
import { handMove, handPlaces, handRun, placeActId } from '../../desk/acts/hand.ts';
import { runAct } from '../../desk/acts/index.ts';
import type { FittingKind } from '../../plan/schema.ts';
import { words } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { FittingIcon } from './FittingIcon.tsx';
import { Icon } from './Icon.tsx';

const KINDS: readonly FittingKind[] = ['battery', 'fuse', 'passThrough', 'block', 'amplifier', 'ground'];

interface RadiosProps<T extends string> {
  label: string;
  className: string;
  options: readonly { value: T; text: string; icon: ReactNode }[];
  /** null: none of them. */
  value: T | null;
  onTake: (value: T) => void;
}

/** One of several, as large tiles: arrows move within it, Tab goes past it. */
function Radios<T extends string>({ label, className, options, value, onTake }: RadiosProps<T>) {
  const name = useId();
  return (
    <div className={className} role="radiogroup" aria-label={label}>
      {options.map((option) => (
        <label key={option.value} className="tile" data-choice={option.value}>
          <input type="radio" name={name} checked={option.value === value} onChange={() => onTake(option.value)} />
          {option.icon}
          <span>{option.text}</span>
        </label>
      ))}
    </div>
  );
}

/** The three ways of the hand, and what it can place. */
export function Hands({ onTaken }: { onTaken?: () => void }) {
  const desk = useDeskStore();
  const hand = useDesk((state) => state.hand);
  const { shelf, fittings } = words;
  const placed = hand.way === 'place' ? hand.fitting : null;
  const take = (kind: FittingKind) => {
    const act = handPlaces.find(({ id }) => id === placeActId(kind));
    if (act !== undefined) runAct(desk, act);
    onTaken?.();
  };
  return (
    <>
      <Radios
        label={shelf.hand}
        className="hands"
        value={hand.way}
        options={[
          { value: 'move', text: shelf.move, icon: <Icon name="move" /> },
          { value: 'run', text: shelf.run, icon: <Icon name="run" /> },
          { value: 'place', text: shelf.place, icon: <Icon name="place" /> },
        ]}
        onTake={(way) => {
          if (way === 'place') take(placed ?? 'battery');
          else {
            runAct(desk, way === 'move' ? handMove : handRun);
            onTaken?.();
          }
        }}
      />
      <Radios
        label={shelf.fittings}
        className="kinds"
        value={placed}
        options={KINDS.map((kind) => ({
          value: kind,
          text: fittings.kindsShort[kind],
          icon: <FittingIcon kind={kind} />,
        }))}
        onTake={take}
      />
    </>
  );
}
