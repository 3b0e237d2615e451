/** What stands beside the finger as text of the page, changed by hand: it moves with every frame. */
import { textIn } from '../look/textIn.ts';
import type { FingerShown } from './fingerShown.ts';
import type { LiveFigure } from './liveFigures.ts';
import { Loupe } from './loupe.ts';
import type { Palette } from './palette.ts';

interface Row {
  readonly element: HTMLElement;
  readonly name: Text;
  readonly value: Text;
  said: LiveFigure;
}

function made<Tag extends keyof HTMLElementTagNameMap>(tag: Tag, className = ''): HTMLElementTagNameMap[Tag] {
  const element = document.createElement(tag);
  if (className !== '') element.className = className;
  return element;
}

export class FingerSheet {
  readonly #list = made('dl', 'sketch-finger');
  readonly #note = made('div', 'sketch-finger-note');
  readonly #rows: Row[] = [];
  readonly #loupe: Loupe | null;
  #noteSaid: string | null = null;
  #look = '';
  #isShown = false;

  /** `surface`: what the loupe magnifies; none while there is none. */
  constructor(
    private readonly host: HTMLElement,
    surface: HTMLElement | null,
    private readonly palette: Palette,
  ) {
    this.#loupe = surface === null ? null : new Loupe(host, surface);
  }

  show(shown: FingerShown | null, isBehind: boolean): void {
    this.#showLoupe(shown);
    if (shown === null || (shown.figures.length === 0 && shown.note === null)) {
      if (this.#isShown) this.#list.remove();
      this.#isShown = false;
      return;
    }
    this.#say(shown.figures, shown.note);
    const { leftPx, topPx } = shown.places.figures;
    this.#list.style.transform = `translate(${leftPx}px, ${topPx}px)`;
    const look = `${shown.widthPx} ${isBehind}`;
    if (look !== this.#look) {
      this.#look = look;
      this.#list.style.width = `${shown.widthPx}px`;
      this.#list.dataset.behind = String(isBehind);
    }
    if (!this.#isShown) this.host.append(this.#list);
    this.#isShown = true;
  }

  /** Takes everything away. */
  clear(): void {
    this.show(null, false);
  }

  #showLoupe(shown: FingerShown | null): void {
    const place = shown?.places.loupe ?? null;
    if (shown?.loupe == null || place === null) this.#loupe?.hide();
    else this.#loupe?.show(place, { ...shown.loupe, palette: this.palette });
  }

  #say(figures: readonly LiveFigure[], note: string | null): void {
    for (const [place, figure] of figures.entries()) {
      const row = this.#rows[place] ?? this.#addRow();
      const { said } = row;
      if (said.name !== figure.name) row.name.data = figure.name;
      if (said.value !== figure.value) row.value.data = figure.value;
      if (said.isHazard !== figure.isHazard) row.element.dataset.hazard = String(figure.isHazard);
      row.said = figure;
    }
    for (const { element } of this.#rows.splice(figures.length)) element.remove();
    if (note === this.#noteSaid) return;
    this.#noteSaid = note;
    this.#note.textContent = note;
    if (note === null) this.#note.remove();
    else this.#list.append(this.#note);
  }

  #addRow(): Row {
    const [element, name, value] = [made('div'), made('dt'), made('dd')];
    element.dataset.hazard = 'false';
    element.append(name, value);
    // the note, where there is one, stays last
    this.#list.insertBefore(element, this.#noteSaid === null ? null : this.#note);
    const row: Row = {
      element,
      name: textIn(name),
      value: textIn(value),
      said: { name: '', value: '', isHazard: false },
    };
    this.#rows.push(row);
    return row;
  }
}
