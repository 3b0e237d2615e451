import { expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/shapes.ts';
import { drawingIn, figuresIn } from '../../src/sketch/sight.ts';

const at = { xM: 1, yM: 1 };
const drawing: Drawing = {
  outline: { shapes: [], bounds: { minXM: 0, minYM: 0, maxXM: 4, maxYM: 2 }, bayBounds: null },
  runs: [],
  fittings: [],
  hazards: [{ runId: 'r', points: [0, 0, 1, 1], lengthM: 0.9, widthPx: 12 }],
  labels: [
    { key: 'hazard.b', kind: 'hazard', id: 'b', at, title: '', figures: '90 cm' },
    { key: 'fitting.f', kind: 'fitting', id: 'f', at, title: 'Main fuse', figures: '150 A' },
    { key: 'run.r', kind: 'run', id: 'r', at, title: 'Feed', figures: 'SAE 4' },
  ],
};

it('shows the work face all of the drawing, and draws nothing anew for it', () => {
  expect(drawingIn('all', drawing)).toBe(drawing);
});

it('shows a customer names and symbols, no stripe', () => {
  const shown = drawingIn('customer', drawing);
  expect(shown.hazards).toEqual([]);
  expect(shown.labels.map(({ title, figures }) => [title, figures])).toEqual([['Main fuse', '150 A']]);
});

it('shows a class that is asked the stripe and the names, without one figure', () => {
  const shown = drawingIn('asking', drawing);
  expect(shown.hazards).toBe(drawing.hazards);
  expect(shown.labels.map(({ title, figures }) => [title, figures])).toEqual([['Main fuse', '']]);
});

it('does the same beside the finger', () => {
  const figures = [
    { name: 'Length', value: '1.2 m', isHazard: false },
    { name: 'Unprotected', value: '90 cm', isHazard: true },
  ];
  expect(figuresIn('all', figures)).toBe(figures);
  expect(figuresIn('customer', figures).map(({ name }) => name)).toEqual(['Length']);
  expect(figuresIn('asking', figures).map(({ value }) => value)).toEqual(['?', '?']);
});
