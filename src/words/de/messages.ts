/** The short messages at the foot of the page, by the id the desk sends; a refused file has open.ts. */
import type { MessageParams } from '../en/messages.ts';
import { gaugeText } from '../units.ts';

const nameOf = (params: MessageParams): string => String(params.name ?? '');

const clock = (time: number): string =>
  new Intl.DateTimeFormat('de', { dateStyle: 'medium', timeStyle: 'short' }).format(time);

export const messages = {
  removed: (params: MessageParams) => `${nameOf(params)} gelöscht.`,
  joined: ({ name = '', size = '' }: MessageParams) =>
    `${name} gelöscht. Die zwei Leitungen sind wieder eine; Querschnitt wie zuvor: ${size === 'auto' ? 'berechnet' : gaugeText(String(size), ',')}.`,
  exampleCopied: (params: MessageParams) => `Ab jetzt eine eigene Kopie: ${nameOf(params)}.`,
  notKept: () => 'Dieser Browser speichert den Plan nicht. Vor dem Verlassen als Datei speichern.',
  storageFull: () => 'Der Platz des Browsers für diese Seite ist voll. Als Datei speichern, dann Platz schaffen.',
  otherTab: () => 'Ein anderes Fenster hat diesen Plan geändert. Was hier geschieht, wird ein eigener Plan.',
  olderOpened: (params: MessageParams) =>
    `Der neueste gespeicherte Stand war beschädigt. Offen ist der Stand vom ${clock(Number(params.time ?? 0))}.`,
  savedDamaged: () => 'Der gespeicherte Plan war beschädigt. Dafür ist das Beispiel offen.',
  exampleMissing: () => 'Das Beispiel ließ sich nicht laden. Offen ist ein leerer Plan.',
  handMissing: () =>
    'In der Zeichnung lässt sich noch nichts bewegen: Ein Teil der Seite wurde nicht geladen. Was der Finger tut, geht nicht verloren; bei der nächsten Berührung wird es erneut versucht.',
  planDeleted: (params: MessageParams) => `${nameOf(params)} gelöscht.`,
  sheetsFollowed: () => 'Der Umriss wurde auf allen Blättern dieses Fahrzeugs geändert.',
  refused: ({ count = 1 }: MessageParams) => `${count} ${count === 1 ? 'Teil' : 'Teile'} abgelehnt.`,
  fileOpened: (params: MessageParams) => `${nameOf(params)} ist offen.`,
  fileSaved: (params: MessageParams) => `${nameOf(params)} als Datei gespeichert.`,
  fileSavedWithout: ({ name = '', count = 1 }: MessageParams) =>
    count === 1
      ? `${name} als Datei gespeichert, ohne das nur vorgeschlagene Teil.`
      : `${name} als Datei gespeichert, ohne die ${count} nur vorgeschlagenen Teile.`,
};

export const messageActs = { undo: 'Rückgängig', dismiss: 'Ausblenden' } as const;
