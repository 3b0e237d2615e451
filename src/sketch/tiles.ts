/** Things by where in a pane they lie, so that only those near a box need be looked at. */
import type { PaneSize } from '../desk/camera.ts';
import type { Box } from './labelGround.ts';

/** About as large as a label. */
const TILE_PX = 96;

export class Tiles<T> {
  readonly #tiles = new Map<number, T[]>();
  readonly #columns: number;
  readonly #rows: number;

  /** What lies outside the pane is kept at its edge. */
  constructor({ widthPx, heightPx }: PaneSize) {
    this.#columns = Math.ceil(widthPx / TILE_PX);
    this.#rows = Math.ceil(heightPx / TILE_PX);
  }

  /** `box`: what the thing lies within. */
  add(box: Box, thing: T): void {
    this.#visit(box, (tile) => {
      const here = this.#tiles.get(tile);
      if (here === undefined) this.#tiles.set(tile, [thing]);
      else here.push(thing);
      return false;
    });
  }

  /** Whether `meets` holds of one of the things near the box; it may be asked twice of one. */
  some(box: Box, meets: (thing: T) => boolean): boolean {
    return this.#visit(box, (tile) => this.#tiles.get(tile)?.some(meets) ?? false);
  }

  /** The tiles that the box covers, until `isDone`; those of its edge that lie outside count as the outermost. */
  #visit({ x, y, w, h }: Box, isDone: (tile: number) => boolean): boolean {
    const [left, right] = [this.#within(x - w / 2, this.#columns), this.#within(x + w / 2, this.#columns)];
    const [top, bottom] = [this.#within(y - h / 2, this.#rows), this.#within(y + h / 2, this.#rows)];
    for (let row = top; row <= bottom; row += 1)
      for (let column = left; column <= right; column += 1) if (isDone(row * this.#columns + column)) return true;
    return false;
  }

  readonly #within = (px: number, count: number): number => Math.max(0, Math.min(count - 1, Math.floor(px / TILE_PX)));
}
