/** `npm run schema`: writes the JSON Schema of a plan beside the page. */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { planJsonSchemaText } from './planJsonSchema.ts';

const TARGET = fileURLToPath(new URL('../../public/plan.schema.json', import.meta.url));

writeFileSync(TARGET, planJsonSchemaText());
console.log(`Wrote ${TARGET}`);
