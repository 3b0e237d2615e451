/** What the name of an input ends with in the plan's document, and the unit that stands for. */
const UNITS: readonly (readonly [ending: string, unit: string])[] = [
  ['Ohm', 'Ω'],
  ['Mm2', 'mm²'],
  ['Mm', 'mm'],
  ['Percent', '%'],
  ['Ah', 'Ah'],
  ['A', 'A'],
  ['V', 'V'],
  ['W', 'W'],
  ['F', 'F'],
  ['C', '°C'],
];

/** The unit of an input by its path, where its label names none: 'settings.bodyOhm' -> 'Ω'; null for a share or a count. */
export const inputUnit = (path: string): string | null => UNITS.find(([ending]) => path.endsWith(ending))?.[1] ?? null;
