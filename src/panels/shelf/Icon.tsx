const PATHS = {
  move: 'M14 3v22M3 14h22M14 3l-3.5 3.5M14 3l3.5 3.5M14 25l-3.5-3.5M14 25l3.5-3.5M3 14l3.5-3.5M3 14l3.5 3.5M25 14l-3.5-3.5M25 14l-3.5 3.5',
  run: 'M6 22a2.5 2.5 0 1 0 0-.1M22 6a2.5 2.5 0 1 0 0-.1M8.4 21H16V7h3.6',
  place: 'M14 25s8-7.2 8-13.5a8 8 0 0 0-16 0C6 17.8 14 25 14 25zM14 8.5a3 3 0 1 0 0 6 3 3 0 0 0 0-6',
  undo: 'M10 6 5 11l5 5M5 11h11a6 6 0 0 1 0 12h-5',
  redo: 'M18 6l5 5-5 5M23 11H12a6 6 0 0 0 0 12h5',
  snap: 'M4 4h20v20H4zM4 10.7h20M4 17.3h20M10.7 4v20M17.3 4v20',
  fit: 'M4 10V4h6M18 4h6v6M24 18v6h-6M10 24H4v-6',
  tools: 'M4 8h12M22 8h2M4 20h2M12 20h12M19 5a3 3 0 1 0 0 6 3 3 0 0 0 0-6M9 17a3 3 0 1 0 0 6 3 3 0 0 0 0-6',
  more: 'M4 4h8v8H4zM16 4h8v8h-8zM4 16h8v8H4zM20 16v8M16 20h8',
  menu: 'M4 7h20M4 14h20M4 21h20',
  up: 'M6 17l8-8 8 8',
  down: 'M6 11l8 8 8-8',
  close: 'M7 7l14 14M21 7L7 21',
  tick: 'M5 15l6 6L23 8',
} as const;

export type IconName = keyof typeof PATHS;

export function Icon({ name }: { name: IconName }) {
  return (
    <svg className="icon" viewBox="0 0 28 28" width="28" height="28" aria-hidden="true" focusable="false">
      <path
        d={PATHS[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth="2"
        strokeLinejoin="round"
        strokeLinecap="round"
      />
    </svg>
  );
}
