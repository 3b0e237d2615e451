/** English for what opens on demand, apart so that the first load does not carry it. */

import { alternatives } from './en/alternatives.ts';
import * as faces from './en/faces.ts';
import { fieldLabels } from './en/fieldLabels.ts';
import { airbagCaution, fittingCautions } from './en/fittingCautions.ts';
import { glossary } from './en/glossary.ts';
import { guide } from './en/guide.ts';
import * as labels from './en/laterLabels.ts';
import { openRefused, refused } from './en/open.ts';
import { proposing } from './en/propose.ts';
import * as sheetWords from './en/sheets.ts';
import * as shortWords from './en/shorts.ts';
import { sourceNote } from './en/sources.ts';
import * as whys from './en/why.ts';

export const enLater = {
  ...labels,
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
