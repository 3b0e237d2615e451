/** From a key press to the act it asks for. */
import type { Act } from './acts/act.ts';
import { ACTS } from './acts/all.ts';
import { PLAN_KEYS_ATTRIBUTE } from './planKeys.ts';

const ACT_BY_KEY: ReadonlyMap<string, Act> = new Map(ACTS.flatMap((act) => act.keys.map((key) => [key, act])));

/** Never taken: they move the focus and press the controls. */
const NEVER = new Set(['Tab', 'Enter', ' ']);

/** Inputs that are pressed or slid, not typed into. */
const PRESSED = '[type="checkbox"], [type="radio"], [type="button"], [type="range"], [type="file"], [type="color"]';
/** Fields that are typed into keep every key: their own undo too. */
const TYPING = `input:not(${PRESSED}), textarea, [contenteditable=""], [contenteditable="true"]`;
/** Controls within which arrows and letters have a meaning of their own. */
const OWN_KEYS = [
  'select, input[type="radio"], input[type="range"]',
  ...['tablist', 'radiogroup', 'slider', 'listbox', 'menu', 'spinbutton'].map((role) => `[role="${role}"]`),
].join(', ');

/**
 * The key as the acts write it: modifiers, then the key, as aria-keyshortcuts has it; null for a combination that is
 * left to the browser. Command is Control on Apple keyboards, and the other of the two is none of ours.
 */
export function keyName(event: KeyboardEvent, isApple: boolean): string | null {
  const control = isApple ? event.metaKey : event.ctrlKey;
  const foreign = isApple ? event.ctrlKey : event.metaKey;
  if (foreign || event.isComposing || NEVER.has(event.key)) return null;
  const isCharacter = event.key.length === 1;
  const isLetter = isCharacter && event.key.toLowerCase() !== event.key.toUpperCase();
  // on a sign, Shift is only how the keyboard makes it
  const shift = event.shiftKey && (!isCharacter || isLetter);
  const key = event.key === '+' ? 'Plus' : isCharacter ? event.key.toLowerCase() : event.key;
  return `${shift ? 'Shift+' : ''}${event.altKey ? 'Alt+' : ''}${control ? 'Control+' : ''}${key}`;
}

/** The act a key press asks for, where it was pressed; null when the press is not ours. */
export function actForKey(event: KeyboardEvent, isApple: boolean): Act | null {
  if (event.defaultPrevented) return null;
  const name = keyName(event, isApple);
  const act = name === null ? undefined : ACT_BY_KEY.get(name);
  if (name === null || act === undefined || (event.repeat && act.repeats !== true)) return null;
  return reaches(name, event) ? act : null;
}

/**
 * Keys with Control, and Escape, work anywhere on the page; arrows, Delete and the like where nothing else has the
 * focus, or within the plan; single characters within the plan alone, so that dictated words run nothing.
 */
function reaches(name: string, event: KeyboardEvent): boolean {
  const target = event.target instanceof Element ? event.target : null;
  if (target === null || target === target.ownerDocument.body || target === target.ownerDocument.documentElement) {
    return name.includes('Control+') || event.key.length > 1;
  }
  if (target.closest('dialog[open]') !== null) return false;
  if (target.closest(TYPING) !== null) return false;
  if (name.includes('Control+') || name === 'Escape') return true;
  if (target.closest(OWN_KEYS) !== null) return false;
  return target.closest(`[${PLAN_KEYS_ATTRIBUTE}]`) !== null;
}
