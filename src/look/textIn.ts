/** The one text of an element, to be written by hand: to change it costs less than to put another in its place. */
export function textIn(element: HTMLElement): Text {
  const text = document.createTextNode('');
  element.replaceChildren(text);
  return text;
}
