import { useEffect, useState } from 'react';
import { words } from '../words/index.ts';

/** A drag that has gone quiet for this long has left the page: browsers do not all say so. */
const QUIET_MS = 200;

/** Says where a file dragged over the page may go: anywhere on it. */
export function DropHint() {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const end = () => {
      clearTimeout(timer);
      setOver(false);
    };
    const over = (event: DragEvent) => {
      if (event.dataTransfer?.types.includes('Files') !== true) return;
      clearTimeout(timer);
      timer = setTimeout(end, QUIET_MS);
      setOver(true);
    };
    window.addEventListener('dragover', over);
    window.addEventListener('drop', end);
    return () => {
      clearTimeout(timer);
      window.removeEventListener('dragover', over);
      window.removeEventListener('drop', end);
    };
  }, []);
  return isOver ? <p className="drop-hint">{words.app.dropHere}</p> : null;
}
