import type { FittingKind } from '../../plan/schema.ts';

/** Symbols after IEC 60617 where it has one; pass-through, block and reducer are our own plain pictures. */
const PATHS: Readonly<Record<FittingKind, string>> = {
  battery: 'M2 14h9M11 5v18M17 9.5v9M17 14h9',
  fuse: 'M1 14h26M6 9.5h16v9H6z',
  passThrough: 'M1 14h7M20 14h7M14 2v6M14 20v6M14 8a6 6 0 1 0 0 12 6 6 0 0 0 0-12M8 14h12',
  block: 'M1 14h8M9 5h5v18H9zM14 8h12M14 14h12M14 20h12',
  amplifier: 'M1 14h6M7 4v20l16-10zM23 14h4',
  ground: 'M14 3v11M4 14h20M7.5 14l-3.5 7M14 14l-3.5 7M20.5 14l-3.5 7',
  breaker: 'M1 17h7M20 17h7M20 17 9 9M6 15l4 4M6 19l4-4',
  bus: 'M3 18h22M3 20h22M7 18v-6M14 18v-6M21 18v-6M7 8a2 2 0 1 0 0 4 2 2 0 0 0 0-4M14 8a2 2 0 1 0 0 4 2 2 0 0 0 0-4M21 8a2 2 0 1 0 0 4 2 2 0 0 0 0-4',
  reducer: 'M1 12.5h9M1 15.5h9M10 9l8 3v4l-8 3zM18 14h9',
  load: 'M14 7a7 7 0 1 0 0 14 7 7 0 0 0 0-14M9 9l10 10M9 19 19 9M1 14h6M21 14h6',
  alternator: 'M14 5a9 9 0 1 0 0 18 9 9 0 0 0 0-18M17.5 11.3A4.4 4.4 0 1 0 18.4 14H15M1 14h4',
  jumpPost: 'M14 5a5.5 5.5 0 1 0 0 11 5.5 5.5 0 0 0 0-11M14 8v5M11.5 10.5h5M14 16v7M7 23h14',
  takeOff: 'M1 14h18M4 10.5h11v7H4zM22 11a3 3 0 1 0 0 6 3 3 0 0 0 0-6',
  charger: 'M6 6h16v16H6zM6 22 22 6M8.5 9.5h5M8.5 12h5M14.5 16.5h5M14.5 19h5M1 14h5M22 14h5',
  relay: 'M1 11h7M20 11h7M20 11 9 4M14 7.5v10.5M8.5 18h11v5h-11z',
  switch: 'M1 18h7M20 18h7M20 18 9 11M14 14V6M11 6h6',
  continuation: 'M1 14h12M13 8v12l9-6z',
  capacitor: 'M1 14h10.5M11.5 6v16M16.5 6v16M16.5 14H27M4 6.5h5M6.5 4v5',
};

export function FittingIcon({ kind }: { kind: FittingKind }) {
  return (
    <svg className="icon" viewBox="0 0 28 28" width="28" height="28" aria-hidden="true" focusable="false">
      <path
        d={PATHS[kind]}
        fill="none"
        stroke="currentColor"
        strokeWidth="1.9"
        strokeLinejoin="round"
        strokeLinecap="round"
      />
    </svg>
  );
}
