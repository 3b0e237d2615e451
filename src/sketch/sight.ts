/** What the drawing shows to whom: the work face shows all of it. */
import { useSyncExternalStore } from 'react';
import type { Drawing } from '../drawing/shapes.ts';
import { choice, onChoice } from '../look/choices.ts';
import type { LiveFigure } from './liveFigures.ts';

/** 'asking': a class that has not been told the figures yet. */
export type Sight = 'all' | 'customer' | 'asking';

function sightNow(): Sight {
  const face = choice('face');
  if (face === 'customer') return 'customer';
  return face === 'class' && choice('figures') === 'hidden' ? 'asking' : 'all';
}

/** Heard again whenever the face changes, as the size of the page's type does with it. */
export function useSight(): Sight {
  useSyncExternalStore(onChoice, () => choice('face'));
  return useSyncExternalStore(onChoice, sightNow);
}

/**
 * A customer sees names and symbols, no stripe and no figures of runs; a class that is asked sees the stripe, and
 * names without figures.
 */
export function drawingIn(sight: Sight, drawing: Drawing): Drawing {
  if (sight === 'all') return drawing;
  const labels = drawing.labels.filter(({ kind }) => kind === 'fitting');
  if (sight === 'customer') return { ...drawing, hazards: [], labels };
  return { ...drawing, labels: labels.map((label) => ({ ...label, figures: '' })) };
}

/** Beside the finger: a customer sees no unprotected length in the hazard's colours, a class that is asked no value. */
export function figuresIn(sight: Sight, figures: readonly LiveFigure[]): readonly LiveFigure[] {
  if (sight === 'all') return figures;
  if (sight === 'customer') return figures.filter(({ isHazard }) => !isHazard);
  return figures.map((figure) => ({ ...figure, value: '?' }));
}
