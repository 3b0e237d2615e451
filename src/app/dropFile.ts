import type { Keeping } from './keeping.ts';

/** Files only: text or a picture dragged about the page is none of ours. */
const carriesFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true;

/** Opens a plan file that is dragged onto the page, anywhere on it. Answers how to stop. */
export function listenForFiles(keeping: Pick<Keeping, 'openFile'>, page: Window): () => void {
  const onDragOver = (event: DragEvent) => {
    if (!carriesFile(event)) return;
    event.preventDefault();
    if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'copy';
  };
  const onDrop = (event: DragEvent) => {
    if (!carriesFile(event)) return;
    // without this the browser leaves the page and shows the file
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file !== undefined) void keeping.openFile(file);
  };
  page.addEventListener('dragover', onDragOver);
  page.addEventListener('drop', onDrop);
  return () => {
    page.removeEventListener('dragover', onDragOver);
    page.removeEventListener('drop', onDrop);
  };
}
