/** Paper for indoors, sun for glare. A choice of this device, not of the plan. */
export type Theme = 'paper' | 'sun';

const KEY = 'feedrun-theme';

export const themeNow = (): Theme => (document.documentElement.dataset.theme === 'sun' ? 'sun' : 'paper');

/** Shows the page in that theme, now and on later visits where the browser keeps anything. */
export function setTheme(theme: Theme): void {
  document.documentElement.dataset.theme = theme;
  try {
    localStorage.setItem(KEY, theme);
  } catch {
    // a private window keeps nothing; the theme holds until it is closed
  }
}

/** The theme of the last visit. */
export function restoreTheme(): void {
  try {
    if (localStorage.getItem(KEY) === 'sun') document.documentElement.dataset.theme = 'sun';
  } catch {
    // as above
  }
}
