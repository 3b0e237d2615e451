/** English for what opens on demand, apart so that the first load does not carry it. */
import * as faces from './en/faces.ts';
import { fieldLabels } from './en/fieldLabels.ts';
import { airbagCaution, fittingCautions } from './en/fittingCautions.ts';
import * as labels from './en/laterLabels.ts';
import { openRefused, refused } from './en/open.ts';
import { sourceNote } from './en/sources.ts';
import * as whys from './en/why.ts';

export const enLater = {
  ...labels,
  ...faces,
  airbagCaution,
  fieldLabels,
  fittingCautions,
  openRefused,
  refused,
  sourceNote,
  whys,
};
