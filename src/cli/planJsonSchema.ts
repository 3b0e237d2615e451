import { toJsonSchema } from '@valibot/to-json-schema';
import {
  conductorSchema,
  fittingSchema,
  outlineSchema,
  PLAN_VERSION,
  planSchema,
  pointSchema,
  runSchema,
  settingsSchema,
  sheetSchema,
  terminalRefSchema,
} from '../plan/schema.ts';

const ABOUT =
  `A Feedrun plan, version ${PLAN_VERSION}. Lengths are metres in the plane of the sheet. Ids are unique in the whole ` +
  'plan; every sheetId, fittingId and terminal names one that the plan holds, and so does every own family of links; a ' +
  'run joins two terminals of its own sheet. Lengths of texts count UTF-16 units.';

/** The text of the published JSON Schema of a plan, made from the schema that plans are opened with. */
export function planJsonSchemaText(): string {
  const { $schema, ...rest } = toJsonSchema(planSchema, {
    target: 'draft-2020-12',
    errorMode: 'throw',
    definitions: {
      point: pointSchema,
      outline: outlineSchema,
      sheet: sheetSchema,
      settings: settingsSchema,
      fitting: fittingSchema,
      terminalRef: terminalRefSchema,
      conductor: conductorSchema,
      run: runSchema,
    },
    overrideAction({ valibotAction, jsonSchema }) {
      // JSON has no number that is not finite, so there is nothing to say
      if (valibotAction.type === 'finite') return jsonSchema;
      // patterns of JSON Schema are read with the 'u' flag anyway; the converter cannot tell
      if (valibotAction.type === 'regex') return { ...jsonSchema, pattern: patternOf(valibotAction) };
      return undefined;
    },
  });
  return `${JSON.stringify({ $schema, title: 'Feedrun plan', description: ABOUT, ...rest }, null, 2)}\n`;
}

function patternOf(action: object): string {
  const pattern = 'requirement' in action && action.requirement instanceof RegExp ? action.requirement : null;
  if (pattern === null || pattern.flags.replace('u', '') !== '') throw new Error('A pattern JSON Schema cannot hold');
  return pattern.source;
}
