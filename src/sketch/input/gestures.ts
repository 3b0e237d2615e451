/** What the input tells the tools. Points are css px of the page (client coordinates). */

export interface ClientPoint {
  xPx: number;
  yPx: number;
}

export type Device = 'touch' | 'mouse' | 'pen';

interface OnSurface<S extends string> {
  /** The surface on which the first finger came down; a drag may have left it. */
  surface: S;
}

/** One finger, a pen or the mouse. Every press ends in exactly one of tap, dragEnd, cancel, or after a longPress in release. */
export type OneFinger<S extends string> = OnSurface<S> & {
  at: ClientPoint;
  device: Device;
  /** Alt is held: snapping is to be left out. */
  alt: boolean;
} & (
    | { kind: 'press' | 'tap' | 'longPress' | 'release' }
    /** `from` is where the finger came down: before the slop was passed. */
    | { kind: 'dragStart' | 'dragMove' | 'dragEnd'; from: ClientPoint }
  );

/** The press or drag under way counts for nothing: a second finger, the system, a palm. */
interface Cancel<S extends string> extends OnSurface<S> {
  kind: 'cancel';
}

/** What lay under `from` is now under `to`, larger by `factor`. */
interface Pinch<S extends string> extends OnSurface<S> {
  kind: 'pinch';
  from: ClientPoint;
  to: ClientPoint;
  factor: number;
}

export type Gesture<S extends string> = OneFinger<S> | Cancel<S> | Pinch<S>;
