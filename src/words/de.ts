/** German as a car electrician speaks it; the parts are those of en.ts, enAnswer.ts and enLater.ts. */
import { act, history } from './de/acts.ts';
import { alternatives } from './de/alternatives.ts';
import { assumption, regulatedWords, trusts } from './de/assumptions.ts';
import { cautions } from './de/cautions.ts';
import { crash } from './de/crash.ts';
import { exampleNames } from './de/exampleNames.ts';
import * as faces from './de/faces.ts';
import { fieldLabels } from './de/fieldLabels.ts';
import * as findings from './de/findings/index.ts';
import { airbagCaution, fittingCautions } from './de/fittingCautions.ts';
import { choices } from './de/fittingChoices.ts';
import * as fittings from './de/fittings.ts';
import { glossary } from './de/glossary.ts';
import { governs, governsRun } from './de/governs.ts';
import { guide } from './de/guide.ts';
import { guideOffer } from './de/guideOffer.ts';
import * as headline from './de/headline.ts';
import * as labels from './de/labels.ts';
import * as laterLabels from './de/laterLabels.ts';
import { messageActs, messages } from './de/messages.ts';
import { openRefused, refused } from './de/open.ts';
import { asProposed, proposing } from './de/propose.ts';
import * as sheetWords from './de/sheets.ts';
import * as shortWords from './de/shorts.ts';
import * as sketch from './de/sketch.ts';
import { sourceLine, sourceNote } from './de/sources.ts';
import { summary } from './de/summary.ts';
import * as whys from './de/why.ts';

export const de = { locale: 'de', ...labels, act, crash, fittings, history, messageActs, messages, sketch };

export const deAnswer = {
  asProposed,
  assumption,
  cautions,
  exampleNames,
  findings,
  fittings: { ...fittings, ...choices },
  governs,
  governsRun,
  guideOffer,
  headline,
  regulatedWords,
  sourceLine,
  summary,
  trusts,
};

export const deLater = {
  ...laterLabels,
  ...faces,
  ...sheetWords,
  ...shortWords,
  airbagCaution,
  alternatives,
  fieldLabels,
  fittingCautions,
  glossary,
  guide,
  openRefused,
  proposing,
  refused,
  sourceNote,
  whys,
};
