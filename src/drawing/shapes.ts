/**
 * What the sketch consists of, as plain shapes on named layers. Every pen (screen, print, vector file) draws these and
 * knows nothing of fittings or runs. Coordinates are flat lists x0, y0, x1, y1, ... in the unit of their frame: metres
 * on the sheet, or half plates (-1 to 1) inside a symbol. Strokes are in screen px and do not grow with the zoom.
 */
import type { ColourName } from '../look/tokens.ts';
import type { FittingKind, Point, RunKind } from '../plan/schema.ts';

export interface Stroke {
  colour: ColourName;
  widthPx: number;
  dashPx: readonly number[];
}

export type Shape =
  | {
      kind: 'line';
      points: readonly number[];
      closed: boolean;
      stroke: Stroke | null;
      fill: ColourName | null;
    }
  | {
      kind: 'circle';
      x: number;
      y: number;
      radius: number;
      stroke: Stroke | null;
      fill: ColourName | null;
    };

/** The vehicle or the board, in metres. */
export interface OutlineDrawing {
  shapes: readonly Shape[];
  /** The whole of it, in metres. */
  bounds: Bounds;
  /** The bay with the firewall and a margin behind it; null where the outline has none. */
  bayBounds: Bounds | null;
}

export interface Bounds {
  minXM: number;
  minYM: number;
  maxXM: number;
  maxYM: number;
}

/** A fitting: a symbol on a small plate. Its parts are in half plates about `at`. */
export interface FittingShape {
  fittingId: string;
  kind: FittingKind;
  at: Point;
  parts: readonly Shape[];
  /** No part of the plan until it is accepted: drawn pale. */
  isProposed?: boolean;
}

export interface RunShape {
  runId: string;
  kind: RunKind;
  /** Flat, metres, from terminal to terminal. */
  points: readonly number[];
  stroke: Stroke;
  casing: Stroke;
  isProposed?: boolean;
  /** Drawn beside its own line, at one zoom: it has a point more behind its first and before its last. */
  isInLane?: boolean;
}

/** A stretch of a run that no device protects. */
export interface HazardShape {
  runId: string;
  /** Flat, metres. */
  points: readonly number[];
  /** Cable length of the stretch: with slack and rise, or as taped; not the drawn length. */
  lengthM: number;
  widthPx: number;
}

/** Words beside a thing: its own name and one line of figures. */
export interface LabelShape {
  key: string;
  kind: 'fitting' | 'run' | 'hazard';
  /** The fitting or run it speaks of; for a hazard, the source. */
  id: string;
  at: Point;
  /** Where else along a run it may stand, the best first. */
  elsewhere?: readonly Point[];
  /** The lines beside whatever is seen of which it has to stand. */
  along?: readonly (readonly Point[])[];
  /** How much of its width it stands to the right of where it would be, so as not to lie on the run in the next lane. */
  asideX?: number;
  title: string;
  figures: string;
  isProposed?: boolean;
}

/** All that is on one sheet, by layer, from the bottom up. */
export interface Drawing {
  outline: OutlineDrawing;
  runs: readonly RunShape[];
  fittings: readonly FittingShape[];
  hazards: readonly HazardShape[];
  labels: readonly LabelShape[];
}
