/** English for the answer: it comes beside the page, with what works it out. */
import { assumption, regulatedWords, trusts } from './en/assumptions.ts';
import { cautions } from './en/cautions.ts';
import { exampleNames } from './en/exampleNames.ts';
import * as findings from './en/findings/index.ts';
import { choices } from './en/fittingChoices.ts';
import * as fittings from './en/fittings.ts';
import { governs, governsRun } from './en/governs.ts';
import { guideOffer } from './en/guideOffer.ts';
import * as headline from './en/headline.ts';
import { asProposed } from './en/propose.ts';
import { sourceLine } from './en/sources.ts';
import { summary } from './en/summary.ts';

export const enAnswer = {
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
