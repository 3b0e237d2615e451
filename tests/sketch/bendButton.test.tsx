import { render, screen } from '@testing-library/react';
import { describe, expect, it } from 'vitest';
import { BendButton } from '../../src/sketch/BendButton.tsx';
import { feedPlan, withFittings, withRun } from '../drawing/support/plans.ts';

const PX_PER_M = 200;
const SIZE = { widthPx: 800, heightPx: 600 };

/** The page px at which the button for the bend at (2, 0.4) stands, where another cable lies across at that height, m. */
function topBeside(otherYM: number): { top: number; bendPx: number } {
  const ends = withFittings(feedPlan(), [
    ['one', 'ground', 1, otherYM],
    ['two', 'ground', 3, otherYM],
  ]);
  const plan = withRun(ends, 'beside', 'one.body', 'two.body', [], 'ground');
  const { unmount } = render(
    <BendButton
      selection={{ kind: 'bend', id: 'run3', index: 0 }}
      plan={plan}
      pxPerM={PX_PER_M}
      place={({ xM, yM }) => ({ xPx: xM * PX_PER_M, yPx: yM * PX_PER_M + 100 })}
      size={SIZE}
      targetPx={44}
      textScale={1}
      onRemove={() => undefined}
    />,
  );
  const top = Number.parseFloat(screen.getByRole('button').style.top);
  unmount();
  return { top, bendPx: 0.4 * PX_PER_M + 100 };
}

describe('the button beside a bend', () => {
  it('stands below it, and above where another cable lies below', () => {
    const free = topBeside(2);
    expect(free.top).toBeGreaterThan(free.bendPx);
    // 30 px below the bend
    const taken = topBeside(0.55);
    expect(taken.top + 44).toBeLessThan(taken.bendPx);
  });
});
