import { beforeEach, describe, expect, it } from 'vitest';
import { ACTS } from '../../src/desk/acts/all.ts';
import { actForKey, keyName } from '../../src/desk/keys.ts';
import { PLAN_KEYS_ATTRIBUTE } from '../../src/desk/planKeys.ts';

const press = (key: string, how: KeyboardEventInit = {}) =>
  new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...how });

/** The act that a press of a key on that element asks for, as a listener on the window sees it. */
function actAt(selector: string, key: string, how: KeyboardEventInit = {}, isApple = false): string | null {
  const target = document.querySelector(selector);
  if (target === null) throw new Error(`no ${selector}`);
  let found: string | null = null;
  const listen = (event: KeyboardEvent) => {
    found = actForKey(event, isApple)?.id ?? null;
  };
  window.addEventListener('keydown', listen);
  target.dispatchEvent(press(key, how));
  window.removeEventListener('keydown', listen);
  return found;
}

describe('the acts', () => {
  it('no two claim one key', () => {
    const keys = ACTS.flatMap((act) => act.keys);
    expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
  });

  it('no two have one id', () => {
    const ids = ACTS.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('take no key that moves the focus or presses a control', () => {
    const taken = ACTS.flatMap((act) => act.keys).filter((key) => /(^|\+)(Tab|Enter|Space| )$/.test(key));
    expect(taken).toEqual([]);
  });

  it('have keys that a press can make', () => {
    const plain: Record<string, string> = { Plus: '+' };
    for (const written of ACTS.flatMap((act) => act.keys)) {
      const parts = written.split('+');
      const key = parts.at(-1) ?? '';
      const event = press(plain[key] ?? key, {
        shiftKey: parts.includes('Shift'),
        altKey: parts.includes('Alt'),
        ctrlKey: parts.includes('Control'),
      });
      expect(keyName(event, false)).toBe(written);
    }
  });
});

describe('the name of a key press', () => {
  it('takes Command for Control on Apple keyboards, and not elsewhere', () => {
    expect(keyName(press('z', { metaKey: true }), true)).toBe('Control+z');
    expect(keyName(press('z', { ctrlKey: true }), false)).toBe('Control+z');
    expect(keyName(press('z', { metaKey: true }), false)).toBeNull();
    expect(keyName(press('z', { ctrlKey: true }), true)).toBeNull();
  });

  it('minds Shift on letters and named keys, not on signs that need it', () => {
    expect(keyName(press('Z', { ctrlKey: true, shiftKey: true }), false)).toBe('Shift+Control+z');
    expect(keyName(press('+', { shiftKey: true }), false)).toBe('Plus');
    expect(keyName(press('ArrowUp', { shiftKey: true }), false)).toBe('Shift+ArrowUp');
    // caps lock
    expect(keyName(press('N'), false)).toBe('n');
  });

  it('leaves text being composed alone', () => {
    expect(keyName(press('z', { ctrlKey: true, isComposing: true }), false)).toBeNull();
  });
});

describe('a key press', () => {
  beforeEach(() => {
    document.body.innerHTML = `
      <input id="text" /><input id="check" type="checkbox" /><input id="choice" type="radio" /><textarea></textarea><select></select>
      <div id="edit" contenteditable="true"><b>x</b></div>
      <button id="elsewhere"></button>
      <div id="plan" ${PLAN_KEYS_ATTRIBUTE} tabindex="0">
        <button id="within"></button><input id="field" /><div role="radiogroup"><button id="radio"></button></div>
      </div>
      <dialog open><button id="asked"></button></dialog>`;
  });

  it('with Control works anywhere but in what is typed into', () => {
    for (const at of ['body', '#elsewhere', '#plan', '#within', '#check', '#choice', '#radio', 'select']) {
      expect(actAt(at, 'z', { ctrlKey: true }), at).toBe('undo');
    }
    for (const at of ['#text', 'textarea', '#edit', '#edit b', '#field']) {
      expect(actAt(at, 'z', { ctrlKey: true }), at).toBeNull();
      expect(actAt(at, 'Delete'), at).toBeNull();
      expect(actAt(at, 'Escape'), at).toBeNull();
    }
  });

  it('of an arrow or Delete works on the plan, or where nothing has the focus', () => {
    for (const at of ['body', '#plan', '#within']) {
      expect(actAt(at, 'ArrowLeft'), at).toBe('nudge:ArrowLeft');
      expect(actAt(at, 'ArrowLeft', { altKey: true }), at).toBe('nudge:Alt+ArrowLeft');
      expect(actAt(at, 'Delete'), at).toBe('remove');
    }
    for (const at of ['#elsewhere', '#check', '#choice', '#radio', '#field', 'select'])
      expect(actAt(at, 'ArrowLeft'), at).toBeNull();
  });

  it('of a single character works on the plan alone', () => {
    expect(actAt('#plan', 'n')).toBe('selectNext');
    expect(actAt('#within', 'f')).toBe('place:fuse');
    expect(actAt('body', 'n')).toBeNull();
    expect(actAt('#elsewhere', 'n')).toBeNull();
  });

  it('never takes Tab, Enter or Space', () => {
    for (const key of ['Tab', 'Enter', ' ']) expect(actAt('#plan', key)).toBeNull();
  });

  it('is left to an open dialog', () => {
    expect(actAt('#asked', 'Escape')).toBeNull();
    expect(actAt('#asked', 'z', { ctrlKey: true })).toBeNull();
  });

  it('that someone else has handled is left alone', () => {
    const event = press('Escape');
    event.preventDefault();
    expect(actForKey(event, false)).toBeNull();
  });

  it('held down repeats moving and undoing, not switching', () => {
    expect(actAt('#plan', 'ArrowLeft', { repeat: true })).toBe('nudge:ArrowLeft');
    expect(actAt('#plan', 'z', { ctrlKey: true, repeat: true })).toBe('undo');
    expect(actAt('#plan', 's', { repeat: true })).toBeNull();
    expect(actAt('#plan', 'Delete', { repeat: true })).toBeNull();
  });
});
