import type { Figure } from '../../assess/answer.ts';
import { words } from '../../words/answer.ts';
import type { Units } from '../../words/index.ts';

/** A large figure with its unit; a dash where there is none. */
export function figureSaid({ value, unit }: Figure, units: Units): string {
  if (value === null) return words.summary.noFigure;
  if (typeof value === 'string') return units.gauge(value);
  if (unit === 'A') return units.current(value);
  return unit === 'V' ? units.voltage(value) : units.length(value);
}
