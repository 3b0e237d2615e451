/** What a tap on the title does. */
export interface PaneToggle {
  sign: 'enlarge' | 'both' | 'swap';
  label: string;
  onToggle: () => void;
}

const SIGNS: Readonly<Record<PaneToggle['sign'], string>> = {
  enlarge: 'M3 8V3h5M17 12v5h-5M3 3l5.5 5.5M17 17l-5.5-5.5',
  both: 'M8 3v5H3M12 17v-5h5M8 8 3 3M12 12l5 5',
  swap: 'M3 7h13l-4-4M17 13H4l4 4',
};

/** The name of a pane, and the button that shows it alone or beside the other. */
export function PaneTitle({ title, toggle }: { title: string; toggle: PaneToggle | null }) {
  if (toggle === null) return <h2 className="sketch-title">{title}</h2>;
  return (
    <button type="button" className="sketch-title" aria-label={toggle.label} onClick={toggle.onToggle}>
      {title}
      <svg
        viewBox="0 0 20 20"
        width="18"
        height="18"
        fill="none"
        stroke="currentColor"
        strokeWidth="2"
        aria-hidden="true"
      >
        <path d={SIGNS[toggle.sign]} />
      </svg>
    </button>
  );
}
