/** English for the first look at the page, subject by subject; see enLater.ts for the rest. The measure of a translation. */
import { act, history } from './en/acts.ts';
import { assumption, regulatedWords, trusts } from './en/assumptions.ts';
import { cautions } from './en/cautions.ts';
import { crash } from './en/crash.ts';
import * as findings from './en/findings/index.ts';
import * as fittings from './en/fittings.ts';
import { governs, governsRun } from './en/governs.ts';
import * as headline from './en/headline.ts';
import * as labels from './en/labels.ts';
import { messageActs, messages } from './en/messages.ts';
import * as sketch from './en/sketch.ts';
import { sourceLine } from './en/sources.ts';

export const en = {
  locale: 'en',
  ...labels,
  act,
  assumption,
  cautions,
  crash,
  findings,
  fittings,
  governs,
  governsRun,
  headline,
  history,
  messageActs,
  messages,
  regulatedWords,
  sketch,
  sourceLine,
  trusts,
};
