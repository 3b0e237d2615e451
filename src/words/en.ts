/** English for the first look at the page; see enAnswer.ts and enLater.ts for the rest. The measure of a translation. */
import { act, history } from './en/acts.ts';
import { crash } from './en/crash.ts';
import * as fittings from './en/fittings.ts';
import * as labels from './en/labels.ts';
import { messageActs, messages } from './en/messages.ts';
import * as sketch from './en/sketch.ts';

export const en = {
  locale: 'en',
  ...labels,
  act,
  crash,
  fittings,
  history,
  messageActs,
  messages,
  sketch,
};
