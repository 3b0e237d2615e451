import type { FittingKind } from '../../plan/schema.ts';

/** Symbols after IEC 60617 where it has one; pass-through and block are our own plain pictures. */
const PATHS: Readonly<Record<FittingKind, string>> = {
  battery: 'M2 14h9M11 5v18M17 9.5v9M17 14h9',
  fuse: 'M1 14h26M6 9.5h16v9H6z',
  passThrough: 'M1 14h7M20 14h7M14 2v6M14 20v6M14 8a6 6 0 1 0 0 12 6 6 0 0 0 0-12M8 14h12',
  block: 'M1 14h8M9 5h5v18H9zM14 8h12M14 14h12M14 20h12',
  amplifier: 'M1 14h6M7 4v20l16-10zM23 14h4',
  ground: 'M14 3v11M4 14h20M7.5 14l-3.5 7M14 14l-3.5 7M20.5 14l-3.5 7',
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
