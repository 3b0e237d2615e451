/** Colours for the canvas, which knows no style sheets: read from the page's variables, so that themes reach it. */
import { useEffect, useState } from 'react';
import { COLOURS, type ColourName } from '../look/tokens.ts';

export type Palette = Readonly<Record<ColourName, string>>;

const NAMES = Object.keys(COLOURS) as ColourName[];

/** 'vehicleLine' -> '--vehicle-line'. */
const variableOf = (name: ColourName): string => `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  const entries = NAMES.map((name) => [name, style.getPropertyValue(variableOf(name)).trim() || COLOURS[name]]);
  return Object.fromEntries(entries) as Palette;
}

/** The colours now, read again when the theme changes. */
export function usePalette(): Palette {
  const [palette, setPalette] = useState(readPalette);
  useEffect(() => {
    const read = () => setPalette(readPalette());
    read();
    const scheme = matchMedia('(prefers-color-scheme: dark)');
    scheme.addEventListener('change', read);
    const themes = new MutationObserver(read);
    themes.observe(document.documentElement, { attributes: true, attributeFilter: ['class', 'style', 'data-theme'] });
    return () => {
      scheme.removeEventListener('change', read);
      themes.disconnect();
    };
  }, []);
  return palette;
}
