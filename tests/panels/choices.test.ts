import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { choice, choose, onChoice, restoreChoices } from '../../src/look/choices.ts';

const root = document.documentElement;

describe('choices of this device', () => {
  beforeEach(() => {
    localStorage.clear();
    restoreChoices();
  });
  afterEach(() => vi.restoreAllMocks());

  it('begin with paper, the work face and the right hand, and as the browser asks', () => {
    expect([choice('theme'), choice('face'), choice('side'), choice('language'), choice('figures')]).toEqual([
      'paper',
      'work',
      'right',
      'auto',
      'shown',
    ]);
    expect(root.dataset.face).toBe('work');
  });

  it('hold at once where style sheets see them, are told to who listens, and come back on the next visit', () => {
    const heard = vi.fn();
    const stop = onChoice(heard);
    choose('theme', 'dark');
    choose('side', 'left');
    stop();
    choose('face', 'class');
    expect(heard).toHaveBeenCalledTimes(2);
    expect([root.dataset.theme, root.dataset.side, root.dataset.face]).toEqual(['dark', 'left', 'class']);

    delete root.dataset.theme;
    restoreChoices();
    expect([choice('theme'), choice('side'), root.dataset.theme]).toEqual(['dark', 'left', 'dark']);
  });

  it('pass over what was kept and is no choice', () => {
    localStorage.setItem('feedrun-theme', 'neon');
    localStorage.setItem('feedrun-face', '__proto__');
    restoreChoices();
    expect([choice('theme'), choice('face'), root.dataset.theme]).toEqual(['paper', 'work', 'paper']);
  });

  it('hold until the page is closed where the browser keeps nothing', () => {
    const refuse = () => {
      throw new DOMException('refused', 'SecurityError');
    };
    vi.spyOn(Storage.prototype, 'getItem').mockImplementation(refuse);
    vi.spyOn(Storage.prototype, 'setItem').mockImplementation(refuse);
    choose('theme', 'sun');
    expect(choice('theme')).toBe('sun');
    restoreChoices();
    expect([choice('theme'), root.dataset.theme]).toEqual(['sun', 'sun']);
  });
});
