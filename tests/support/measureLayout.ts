/** What is wrong with how a page is laid out, each a list of lines that name the place. */
export interface LayoutFaults {
  readonly overlapping: string[];
  readonly clipped: string[];
  readonly small: string[];
  readonly crowded: string[];
  /** Words that a line break parts where no hyphen may be. */
  readonly torn: string[];
  readonly sideways: string[];
}

interface Wanted {
  /** The least width and height of a control, CSS px; where the page has big fingers, the second. */
  readonly leastTargetPx: { readonly fine: number; readonly big: number };
  /** The least way from one control to the next, CSS px. */
  readonly leastGapPx: number;
  readonly within?: string | undefined;
}

/**
 * Measures the page as it stands. Runs inside the page, so it uses nothing from outside itself.
 *
 * Looked at are the visible controls (and for clipping every element with text of its own). While a dialog is
 * open only what is in it is looked at: it lies over the page, and goes before that is reached; `inert` parts are left out likewise. `within` names
 * what lies over the page without being a dialog: then only that is looked at.
 */
export function measureLayout({ leastTargetPx, leastGapPx, within }: Wanted): LayoutFaults {
  /** Layout rounds to device pixels; a fault is more than that. */
  const SLACK_PX = 1;
  const CONTROLS = [
    ...['button', 'a[href]', 'input:not([type=hidden])', 'select', 'textarea', 'summary'],
    ...[
      'button',
      'link',
      'tab',
      'checkbox',
      'radio',
      'switch',
      'option',
      'menuitem',
      'slider',
      'spinbutton',
      'combobox',
    ].map((role) => `[role=${role}]`),
  ].join(',');
  interface Box {
    readonly left: number;
    readonly top: number;
    readonly right: number;
    readonly bottom: number;
  }
  type Reach = 'seen' | 'scrolled away' | 'cut off';

  const viewport: Box = { left: 0, top: 0, right: document.documentElement.clientWidth, bottom: window.innerHeight };
  const scope: ParentNode = document.querySelector(within ?? 'dialog[open]') ?? document.body;

  const boxOf = (element: Element): Box => element.getBoundingClientRect();
  const meet = (a: Box, b: Box): Box => ({
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  });
  const isEmpty = (box: Box): boolean => box.right - box.left <= SLACK_PX || box.bottom - box.top <= SLACK_PX;
  const nameOf = (element: Element): string => {
    const text = element.getAttribute('aria-label') ?? element.getAttribute('name') ?? element.textContent ?? '';
    const role = element.getAttribute('role');
    const label = text.trim().replace(/\s+/g, ' ').slice(0, 60);
    return `${element.tagName.toLowerCase()}${role ? `[${role}]` : ''} '${label}'`;
  };
  const describe = (element: Element, box: Box): string =>
    `${nameOf(element)} at ${Math.round(box.left)},${Math.round(box.top)} ` +
    `${Math.round(box.right - box.left)}x${Math.round(box.bottom - box.top)}`;

  /** Wholly transparent things count: they still catch the finger. */
  const isThere = (element: Element): boolean =>
    element.closest('[inert]') === null &&
    element.checkVisibility({ visibilityProperty: true, contentVisibilityAuto: true });

  /** Things for screen readers alone (clipped to a pixel) are not laid out for the eye. */
  const isForTheEye = (element: Element): boolean => isThere(element) && !isEmpty(boxOf(element));

  const holdsFixed = (style: CSSStyleDeclaration): boolean =>
    style.transform !== 'none' || style.filter !== 'none' || /paint|layout|strict|content/.test(style.contain);

  /** The box around an element to which its overflow is clipped (inside its border). */
  const insideOf = (element: Element): Box => {
    const { left, top } = boxOf(element);
    const x = left + element.clientLeft;
    const y = top + element.clientTop;
    return { left: x, top: y, right: x + element.clientWidth, bottom: y + element.clientHeight };
  };

  /** The part of an element left to see by every box around it, and why there is no more of it. */
  const visiblePart = (element: Element): { part: Box; reach: Reach } => {
    let part = boxOf(element);
    let reach: Reach = 'seen';
    let position = getComputedStyle(element).position;
    const clip = (to: Box, scrollsX: boolean, scrollsY: boolean) => {
      const cutX = part.left < to.left - SLACK_PX || part.right > to.right + SLACK_PX;
      const cutY = part.top < to.top - SLACK_PX || part.bottom > to.bottom + SLACK_PX;
      if ((cutX && !scrollsX) || (cutY && !scrollsY)) reach = 'cut off';
      else if ((cutX || cutY) && reach === 'seen') reach = 'scrolled away';
      part = meet(part, to);
    };
    for (let around = element.parentElement; around && around !== document.body; around = around.parentElement) {
      const style = getComputedStyle(around);
      const holds =
        position === 'fixed'
          ? holdsFixed(style)
          : position !== 'absolute' || style.position !== 'static' || holdsFixed(style);
      if (!holds) continue;
      position = style.position;
      if (style.overflowX === 'visible' && style.overflowY === 'visible') continue;
      const scrolls = (overflow: string) => overflow === 'auto' || overflow === 'scroll';
      clip(insideOf(around), scrolls(style.overflowX), scrolls(style.overflowY));
      // wholly scrolled away inside: what lies further out clips the scrolling box, not this
      if (isEmpty(part)) return { part, reach };
    }
    const rootStyle = getComputedStyle(document.documentElement);
    const bodyStyle = getComputedStyle(document.body);
    const hides = (overflow: string) => overflow === 'hidden' || overflow === 'clip';
    const pageScrollsY = position !== 'fixed' && !hides(rootStyle.overflowY) && !hides(bodyStyle.overflowY);
    clip(viewport, false, pageScrollsY);
    return { part, reach };
  };

  /** What a finger can hit for a control: its own box and the boxes of its labels. */
  const targetOf = (control: Element): Box => {
    const labels = control instanceof HTMLInputElement ? [...(control.labels ?? [])] : [];
    return labels.map(boxOf).reduce<Box>(
      (all, box) => ({
        left: Math.min(all.left, box.left),
        top: Math.min(all.top, box.top),
        right: Math.max(all.right, box.right),
        bottom: Math.max(all.bottom, box.bottom),
      }),
      boxOf(control),
    );
  };

  /** A link inside a sentence is as high as its line. */
  const isInText = (control: Element): boolean =>
    control.tagName === 'A' && getComputedStyle(control).display === 'inline';

  const hasOwnText = (element: Element): boolean =>
    [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && (node.textContent ?? '').trim() !== '');

  /** Text wider than its box that is not shortened on purpose (with three dots). Fields scroll their own text. */
  const isTextCut = (element: Element): boolean => {
    if (/^(INPUT|TEXTAREA|SELECT|OPTION)$/.test(element.tagName)) return false;
    const style = getComputedStyle(element);
    if (style.display.startsWith('inline') && element.clientWidth === 0) return false;
    const scrolls = /auto|scroll/.test(style.overflowX + style.overflowY);
    if (scrolls || style.textOverflow === 'ellipsis' || style.webkitLineClamp !== 'none') return false;
    const tooWide = element.scrollWidth > element.clientWidth + SLACK_PX;
    const tooHigh = style.overflowY !== 'visible' && element.scrollHeight > element.clientHeight + SLACK_PX;
    return tooWide || tooHigh;
  };

  const controls = [...scope.querySelectorAll(CONTROLS)].filter(isThere);
  const seen = controls.filter(isForTheEye).map((control) => ({ control, ...visiblePart(control) }));

  const overlapping: string[] = [];
  const inSight = seen.filter(({ part }) => !isEmpty(part));
  inSight.forEach((one, index) => {
    for (const two of inSight.slice(index + 1)) {
      if (one.control.contains(two.control) || two.control.contains(one.control)) continue;
      if (isEmpty(meet(one.part, two.part))) continue;
      overlapping.push(`${describe(one.control, one.part)} and ${describe(two.control, two.part)}`);
    }
  });

  /**
   * Pressed by mistake it changes nothing: cells of a table that can be asked why, words that can be asked what, fields
   * that are left again as they were.
   */
  const onlyTells = (control: Element): boolean =>
    control.matches('.figure, .figure-large, .row-name, .term, .finding-press, summary, a[href]') ||
    control.matches('input[type=text], .keypad-open');
  const gapOf = (a: Box, b: Box): number =>
    Math.max(a.left - b.right, b.left - a.right, a.top - b.bottom, b.top - a.bottom);
  const crowded: string[] = [];
  inSight.forEach((one, index) => {
    for (const two of inSight.slice(index + 1)) {
      if (one.control.contains(two.control) || two.control.contains(one.control)) continue;
      if (onlyTells(one.control) && onlyTells(two.control)) continue;
      const gapPx = gapOf(one.part, two.part);
      if (gapPx < 0 || gapPx >= leastGapPx - SLACK_PX / 2) continue;
      crowded.push(`${gapPx.toFixed(1)} px: ${describe(one.control, one.part)} and ${describe(two.control, two.part)}`);
    }
  });

  const clipped = [
    ...seen.filter(({ reach }) => reach === 'cut off').map(({ control }) => describe(control, boxOf(control))),
    ...[...scope.querySelectorAll('*')]
      .filter((element) => hasOwnText(element) && isForTheEye(element) && isTextCut(element))
      .map((element) => `text of ${describe(element, boxOf(element))}`),
  ];

  /** No word of any language that we speak is longer; a name without a space may be. */
  const LONGEST_WORD = 32;
  const tornIn = (element: Element): string[] => {
    const range = document.createRange();
    return [...element.childNodes].flatMap((node) => {
      if (node.nodeType !== Node.TEXT_NODE) return [];
      return [...(node.textContent ?? '').matchAll(/[^\s/–-]+/g)].flatMap(({ 0: word, index }) => {
        const parts = word.split('\u00ad');
        if (word.length - parts.length >= LONGEST_WORD) return [];
        range.setStart(node, index);
        range.setEnd(node, index + word.length);
        const lines = new Set([...range.getClientRects()].map(({ top }) => Math.round(top)));
        return lines.size > parts.length ? [word] : [];
      });
    });
  };
  const torn = [...scope.querySelectorAll('*')]
    .filter((element) => hasOwnText(element) && isForTheEye(element))
    .flatMap((element) => tornIn(element).map((word) => `'${word}' of ${describe(element, boxOf(element))}`));

  const leastPx = document.querySelector('[data-fingers="big"]') === null ? leastTargetPx.fine : leastTargetPx.big;
  const small = controls
    .filter((control) => !isInText(control))
    .map((control) => ({ control, target: targetOf(control) }))
    .filter(({ target }) => {
      if (isEmpty(target)) return false;
      const least = leastPx - SLACK_PX / 2;
      return target.right - target.left < least || target.bottom - target.top < least;
    })
    .map(({ control, target }) => describe(control, target));

  const overhangPx = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  const beyond =
    overhangPx <= SLACK_PX
      ? []
      : [...document.body.querySelectorAll('*')].filter(
          (element) => isForTheEye(element) && boxOf(element).right > viewport.right + SLACK_PX,
        );
  // a strip that is meant to scroll sideways hides its other overflow; a panel that scrolls both ways is too narrow
  const panels = [...scope.querySelectorAll('*')].filter((element) => {
    const { overflowX, overflowY } = getComputedStyle(element);
    const scrollsBoth = /auto|scroll/.test(overflowX) && /auto|scroll/.test(overflowY);
    const isField = /^(INPUT|TEXTAREA|SELECT)$/.test(element.tagName);
    return scrollsBoth && !isField && isForTheEye(element) && element.scrollWidth > element.clientWidth + SLACK_PX;
  });
  const sideways = [
    ...(overhangPx > SLACK_PX ? [`the page scrolls sideways by ${overhangPx} px`] : []),
    ...beyond.map((element) => `beyond the right edge: ${describe(element, boxOf(element))}`),
    ...panels.map((element) => `scrolls sideways inside: ${describe(element, boxOf(element))}`),
  ];
  return { overlapping, clipped, small, crowded, torn, sideways };
}
