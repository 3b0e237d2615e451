import { type HTMLAttributes, type ReactNode, useId } from 'react';
import { handMove, handPlaces, handRun, placeActId } from '../../desk/acts/hand.ts';
import { runAct } from '../../desk/acts/index.ts';
import type { Desk } from '../../desk/desk.ts';
import type { FittingKind } from '../../plan/schema.ts';
import { words } from '../../words/index.ts';
import { useDesk, useDeskStore } from '../useDesk.ts';
import { FittingIcon } from './FittingIcon.tsx';
import { Icon } from './Icon.tsx';
import { isCommon, kindsIn } from './kinds.ts';
import { useTileDrag } from './useTileDrag.ts';

interface RadiosProps<T extends string> {
  label: string;
  className: string;
  options: readonly { value: T; text: string; icon: ReactNode }[];
  /** null: none of them. */
  value: T | null;
  onTake: (value: T) => void;
  /** What a tile does beside being pressed. */
  handlers?: (value: T) => HTMLAttributes<HTMLElement>;
}

/** One of several, as large tiles: arrows move within it, Tab goes past it. */
function Radios<T extends string>({ label, className, options, value, onTake, handlers }: RadiosProps<T>) {
  const name = useId();
  return (
    <div className={className} role="radiogroup" aria-label={label}>
      {options.map((option) => (
        <label key={option.value} className="tile" data-choice={option.value} {...handlers?.(option.value)}>
          <input type="radio" name={name} checked={option.value === value} onChange={() => onTake(option.value)} />
          {option.icon}
          <span>{option.text}</span>
        </label>
      ))}
    </div>
  );
}

/** What is not in sight is behind this; while one of those is in the hand, it is this tile that says so. */
function MoreTile({ placed, isOpen, onOpen }: { placed: FittingKind | null; isOpen: boolean; onOpen: () => void }) {
  const { shelf, fittings } = words;
  const held = placed === null || isCommon(placed) ? null : placed;
  return (
    <button
      type="button"
      className={held === null ? 'tile more-tile' : 'tile more-tile more-tile-held'}
      aria-expanded={isOpen}
      aria-controls="more-fittings"
      aria-label={held === null ? shelf.moreFittings : shelf.moreHeld(fittings.kinds[held])}
      onClick={onOpen}
    >
      {held === null ? <Icon name="more" /> : <FittingIcon kind={held} />}
      <span>{held === null ? shelf.more : fittings.kindsShort[held]}</span>
    </button>
  );
}

/** Takes a kind into the hand, to be placed. */
export function takeKind(desk: Desk, kind: FittingKind): void {
  const act = handPlaces.find(({ id }) => id === placeActId(kind));
  if (act !== undefined) runAct(desk, act);
}

/** The kind in the hand, or null. */
export const useHeldKind = (): FittingKind | null =>
  useDesk(({ hand }) => (hand.way === 'place' ? hand.fitting : null));

interface HandsProps {
  isMoreOpen: boolean;
  onMore: () => void;
  onTaken: () => void;
}

/** The three ways of the hand, and what it can place. */
export function Hands({ isMoreOpen, onMore, onTaken }: HandsProps) {
  const desk = useDeskStore();
  const way = useDesk((state) => state.hand.way);
  const placed = useHeldKind();
  const { shelf, fittings } = words;
  const drag = useTileDrag(onTaken);
  const take = (kind: FittingKind) => {
    takeKind(desk, kind);
    onTaken();
  };
  return (
    <>
      <Radios
        label={shelf.hand}
        className="hands"
        value={way}
        options={[
          { value: 'move', text: shelf.move, icon: <Icon name="move" /> },
          { value: 'run', text: shelf.run, icon: <Icon name="run" /> },
          { value: 'place', text: shelf.place, icon: <Icon name="place" /> },
        ]}
        onTake={(next) => {
          if (next === 'place') take(placed ?? 'battery');
          else {
            runAct(desk, next === 'move' ? handMove : handRun);
            onTaken();
          }
        }}
      />
      <div className="kinds">
        <Radios
          label={shelf.fittings}
          className="kinds-common"
          value={placed}
          options={kindsIn('common').map((kind) => ({
            value: kind,
            text: fittings.kindsShort[kind],
            icon: <FittingIcon kind={kind} />,
          }))}
          onTake={take}
          handlers={drag}
        />
        <MoreTile placed={placed} isOpen={isMoreOpen} onOpen={onMore} />
      </div>
    </>
  );
}
