import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { COLOURS, FONT_FAMILY, strokePx, TARGET_BIG_PX, TARGET_PX } from '../src/look/tokens.ts';

const css = readFileSync(fileURLToPath(new URL('../src/look/look.css', import.meta.url)), 'utf8');
const variable = (name: string) => `--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;

function declared(block: string): Map<string, string> {
  const start = css.indexOf(`${block} {`);
  const body = css.slice(start, css.indexOf('}', start));
  return new Map(
    [...body.matchAll(/(--[a-z-]+):\s*([^;]+);/g)].map(([, name = '', value = '']) => [name, value.trim()]),
  );
}

/** Relative luminance and contrast as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const full = hex.length === 4 ? hex.replace(/[0-9a-f]/gi, '$&$&') : hex;
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const channel = Number.parseInt(full.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

const paper = declared(':root');
const sun = new Map([...paper, ...declared(':root[data-theme="sun"]')]);
const dark = new Map([...paper, ...declared(':root[data-theme="dark"]')]);
const of = (theme: Map<string, string>, name: string): string => theme.get(variable(name)) ?? '';

describe('colours', () => {
  it('the style sheet declares every token, with the same value', () => {
    for (const [name, value] of Object.entries(COLOURS)) expect([name, of(paper, name)]).toEqual([name, value]);
    expect(css).toContain(FONT_FAMILY.replaceAll("'", '"'));
    expect(css).toContain(`--target: ${TARGET_PX}px`);
    expect(css).toContain(`--target: ${TARGET_BIG_PX}px`);
  });

  it('black on white is 21 to 1, and one colour on itself 1 to 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#7f7f7f', '#7f7f7f')).toBe(1);
  });

  const SURFACES = ['sheet', 'panel', 'raised', 'stopSoft', 'fixSoft', 'noteSoft', 'accentSoft'];
  it.each(SURFACES)('text on %s is at least AA on paper and in the dark, and 7 to 1 in the sun', (surface) => {
    for (const text of ['ink', 'inkSoft']) {
      expect(contrast(of(paper, text), of(paper, surface)), text).toBeGreaterThanOrEqual(4.5);
      expect(contrast(of(dark, text), of(dark, surface)), text).toBeGreaterThanOrEqual(4.5);
      expect(contrast(of(sun, text), of(sun, surface)), text).toBeGreaterThanOrEqual(7);
    }
  });

  it('what is written in a colour of its own can be read', () => {
    for (const [theme, least] of [
      [paper, 4.5],
      [dark, 4.5],
      [sun, 7],
    ] as const) {
      for (const text of ['stop', 'accent'])
        for (const surface of ['panel', 'raised'])
          expect(contrast(of(theme, text), of(theme, surface)), `${text} on ${surface}`).toBeGreaterThanOrEqual(least);
      // pressed buttons and messages are the page turned round
      expect(contrast(of(theme, 'raised'), of(theme, 'ink'))).toBeGreaterThanOrEqual(7);
      expect(contrast(of(theme, 'hazardInk'), of(theme, 'hazard'))).toBeGreaterThanOrEqual(7);
    }
  });

  it.each(['positive', 'ground', 'remote', 'factory', 'stop', 'fix', 'note', 'accent', 'ruleStrong', 'symbol'])(
    'what %s marks stands out from the sheet and from panels: 3 to 1 at least',
    (name) => {
      for (const theme of [paper, sun, dark]) {
        // a dark sheet sets a black cable off by its light casing, on which its colour then stands
        if (theme === dark && ['positive', 'ground', 'remote', 'factory'].includes(name)) {
          expect(contrast(of(dark, name), of(dark, 'casing'))).toBeGreaterThanOrEqual(3);
          expect(contrast(of(dark, 'casing'), of(dark, 'sheet'))).toBeGreaterThanOrEqual(3);
          continue;
        }
        for (const surface of ['sheet', 'panel', 'raised']) {
          expect(contrast(of(theme, name), of(theme, surface)), surface).toBeGreaterThanOrEqual(3);
        }
      }
    },
  );

  it('the stripe is black on yellow in every theme, and each theme says which it is to the browser', () => {
    for (const theme of [sun, dark]) {
      for (const name of ['hazard', 'hazardInk']) expect(of(theme, name)).toBe(of(paper, name));
    }
    expect(css).toMatch(/:root \{\n {2}color-scheme: light;/);
    expect(css).toMatch(/:root\[data-theme="dark"\] \{\n {2}color-scheme: dark;/);
  });
});

describe('the stroke of a cable', () => {
  it('grows with its copper, within what reads as a line', () => {
    const strokes = [null, 0.5, 5, 20, 50, 120, 1000].map(strokePx);
    expect(strokes.slice(1)).toEqual([...strokes.slice(1)].sort((a, b) => a - b));
    expect(Math.min(...strokes)).toBeGreaterThanOrEqual(3);
    expect(Math.max(...strokes)).toBe(13);
  });
});
