/** Type size of the page for which labels are laid out, px. */
const PAGE_TEXT_PX = 16;

/** How much larger than on a tablet the page's words are: a projector's style sheet makes them larger. */
export function textScaleOf(page: HTMLElement): number {
  const px = Number.parseFloat(getComputedStyle(page).fontSize);
  return Number.isFinite(px) && px > 0 ? px / PAGE_TEXT_PX : 1;
}
