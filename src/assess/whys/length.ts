import { type Why, whyBuilder } from '../../calc/why.ts';
import {
  DRAWN_LEAST_M,
  DRAWN_SHARE,
  drawnLengthOf,
  drawnM,
  drawnUncertaintyM,
  isTaped,
  sheetOf,
} from '../../plan/drawnLength.ts';
import type { Plan, Run } from '../../plan/schema.ts';
import type { Circuit } from '../circuit.ts';
import type { Unprotected } from '../unprotected.ts';
import { aboutInput } from './about.ts';

/** Why of a run's length; the result is 'L'. */
export function lengthWhy(plan: Plan, run: Run): Why {
  const builder = whyBuilder();
  const { tapedM, tapedAs } = run;
  if (tapedM !== null && tapedAs !== 'outdated') {
    const origin = isTaped(run) ? 'measured' : 'drawn';
    builder.input('L', 'm', tapedM, { origin, label: isTaped(run) ? 'tapedLength' : 'sharedLength' });
    return builder.done('L');
  }
  const drawn = drawnLengthOf(plan, run);
  const sheet = sheetOf(plan, run.sheetId);
  builder.input('Lline', 'm', drawn.lineM, { origin: 'drawn' });
  builder.input('kScale', '1', drawn.scale, sheet === undefined ? {} : aboutInput(sheet.scale, `${sheet.id}.scale`));
  builder.input('slack', 'percent', drawn.slackPercent, { origin: 'told' });
  builder.input('rise', 'm', drawn.riseM, { origin: 'told' });
  const line = 'Lline * kScale * (1 + slack / 100) + rise';
  if (tapedM === null) builder.step('L', 'm', line, drawnM(drawn));
  else {
    builder.input('Ltaped', 'm', tapedM, { origin: 'measured', label: 'outdatedLength' });
    builder.step('L', 'm', `max(${line}, Ltaped)`, Math.max(drawnM(drawn), tapedM));
  }
  return builder.done('L');
}

/** Why of a source's unprotected length: the lengths along its greatest way; the result is 'Lunprotected'. */
export function unprotectedWhy({ cables }: Circuit, { greatest }: Unprotected): Why {
  const builder = whyBuilder();
  const terms: string[] = [];
  let drawnSumM = 0;
  const drawn: string[] = [];
  for (const [place, index] of greatest.cables.entries()) {
    const cable = cables[index];
    if (cable === undefined) continue;
    const { lengthM, origin } = cable.length;
    const symbol = `L_${place + 1}`;
    builder.input(symbol, 'm', lengthM, { origin: origin === 'taped' ? 'measured' : 'drawn', label: 'L' });
    terms.push(symbol);
    if (origin === 'drawn') {
      drawn.push(symbol);
      drawnSumM += lengthM;
    }
  }
  builder.step('Lunprotected', 'm', terms.length === 0 ? '0' : terms.join(' + '), greatest.lengthM);
  if (drawn.length > 0) {
    builder.input('kDrawn', '1', DRAWN_SHARE, { origin: 'choice', source: 'feedrunRules' });
    builder.input('leastDrawn', 'm', DRAWN_LEAST_M, { origin: 'choice', source: 'feedrunRules' });
    builder.step('plusMinus', 'm', `max(kDrawn * (${drawn.join(' + ')}), leastDrawn)`, drawnUncertaintyM(drawnSumM));
  }
  return builder.done('Lunprotected');
}
