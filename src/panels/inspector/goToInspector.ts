/** Frames to wait for the fields: they are loaded on demand the first time. */
const MOST_FRAMES = 120;

/** Puts the focus into the fields of what was just selected, once they stand on the page. */
export function goToInspector(framesLeft = MOST_FRAMES): void {
  requestAnimationFrame(() => {
    const field = document.querySelector<HTMLElement>('.inspector input, .inspector select');
    if (field?.checkVisibility() === true) field.focus();
    else if (framesLeft > 0) goToInspector(framesLeft - 1);
  });
}
