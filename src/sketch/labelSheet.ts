/** Labels as text of the page over a pane, changed by hand: a frame of a drag moves a few of them, and touches no other. */
import { textIn } from '../look/textIn.ts';
import type { PlacedLabel } from './labelLayout.ts';

interface Look {
  /** Picked out. */
  selectedId: string | null;
  scale: number;
  /** A gesture is under way: what finds no place now may find one with the next move. */
  isMoving: boolean;
}

/** A text of a label, and what it says: to read that from the page again costs more than to keep it. */
interface Line {
  readonly element: HTMLElement;
  readonly text: Text;
  said: string;
}

interface Shown {
  readonly element: HTMLElement;
  readonly title: Line;
  readonly figures: Line;
  placed: PlacedLabel;
  isSelected: boolean;
  scale: number;
  /** Where it stands in the page already, */
  place: string;
  /** and what of its look is there. */
  look: string;
  /** Of the list in which it stood last. */
  round: number;
  /** Stands in the page, and is not seen. */
  isAway: boolean;
}

function say(line: Line, text: string): void {
  if (line.said === text) return;
  if ((line.said === '') !== (text === '')) line.element.hidden = text === '';
  line.said = text;
  line.text.data = text;
}

function lineOf(className: string): Line {
  const element = document.createElement('span');
  element.className = className;
  element.hidden = true;
  return { element, text: textIn(element), said: '' };
}

function made(): Pick<Shown, 'element' | 'title' | 'figures' | 'place' | 'look'> {
  const element = document.createElement('div');
  element.className = 'sketch-label';
  const [title, figures] = [lineOf('sketch-label-title'), lineOf('sketch-label-figures')];
  element.append(title.element, figures.element);
  return { element, title, figures, place: '', look: '' };
}

/** Writes into the page what of a label is not there already. */
function write(shown: Shown): void {
  const { element, title, figures, placed, isSelected, scale } = shown;
  const { label, xPx, yPx, widthPx } = placed;
  const place = `translate(${xPx}px, ${yPx}px) translate(-50%, -50%)`;
  // most labels stand where they stood: another answer has other figures for them
  if (place !== shown.place) element.style.transform = place;
  shown.place = place;
  const maxWidth = `${widthPx + 12 * scale}px`;
  const look = `${label.kind} ${label.isProposed} ${isSelected} ${maxWidth}`;
  // most labels that move are the same but for their place
  if (look !== shown.look) {
    shown.look = look;
    element.dataset.kind = label.kind;
    element.toggleAttribute('data-proposed', label.isProposed === true);
    element.dataset.selected = String(isSelected);
    element.style.maxWidth = maxWidth;
  }
  // a run is named where it is picked out and in the list: on the sheet its figures suffice
  say(title, label.kind === 'run' ? '' : label.title);
  say(figures, label.figures);
}

/** Out of sight: to take it out of the page and put it there again has all of the page looked at anew. */
function setAway(shown: Shown, isAway: boolean): void {
  if (shown.isAway === isAway) return;
  shown.isAway = isAway;
  shown.element.style.visibility = isAway ? 'hidden' : '';
}

export class LabelSheet {
  readonly #shown = new Map<string, Shown>();
  #list: readonly PlacedLabel[] = [];
  #look: Look = { selectedId: null, scale: 1, isMoving: false };
  #round = 0;

  constructor(private readonly sheet: HTMLElement) {}

  show(list: readonly PlacedLabel[], look: Look): void {
    const { selectedId, scale, isMoving } = look;
    const before = this.#look;
    const isSameLook = selectedId === before.selectedId && scale === before.scale && isMoving === before.isMoving;
    if (list === this.#list && isSameLook) return;
    [this.#list, this.#look] = [list, look];
    this.#round += 1;
    for (const placed of list) {
      const { kind, id, key } = placed.label;
      this.#showOne(key, { placed, isSelected: kind !== 'hazard' && id === selectedId, scale, round: this.#round });
    }
    for (const [key, shown] of this.#shown) {
      if (shown.round === this.#round) continue;
      if (isMoving) {
        setAway(shown, true);
        continue;
      }
      shown.element.remove();
      this.#shown.delete(key);
    }
  }

  #showOne(key: string, now: Pick<Shown, 'placed' | 'isSelected' | 'scale' | 'round'>): void {
    const before = this.#shown.get(key);
    if (before === undefined) {
      const shown = { ...made(), ...now, isAway: false };
      write(shown);
      this.#shown.set(key, shown);
      this.sheet.append(shown.element);
      return;
    }
    const { placed, isSelected, scale } = before;
    Object.assign(before, now);
    setAway(before, false);
    if (placed !== now.placed || isSelected !== now.isSelected || scale !== now.scale) write(before);
  }
}
