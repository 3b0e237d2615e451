/** How wide a text comes out in the page's type: without asking the page, which would have to lay itself out for it. */

/** Advances of letters of the page's regular type, hundredths of its size; figures as they stand in a table. */
const ADVANCES: readonly (readonly [hundredths: number, letters: string])[] = [
  [26, ".,ijl·:;'| \u00a0"],
  [37, 'f()t[]r-²"I/'],
  [47, 'yvzs'],
  [52, 'cxkaäJ'],
  [56, 'deghnouöüFLT'],
  [72, 'XAKÄCDwGHNUÜOÖQ'],
  [86, 'MmW'],
];
/** Of all others, figures among them. */
const OTHERS = 61;
/** How much wider the same is in bold. */
const BOLD = 1.07;

/** In parts of the size of the type. */
export function textWidth(text: string, isBold = false): number {
  let hundredths = 0;
  for (const letter of text) hundredths += ADVANCES.find(([, letters]) => letters.includes(letter))?.[0] ?? OTHERS;
  return ((isBold ? BOLD : 1) * hundredths) / 100;
}
