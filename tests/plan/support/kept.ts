import { readdirSync, readFileSync } from 'node:fs';

/** Real files of a version, by name: they are kept for ever and never written anew. */
export function keptFiles(version: number): [name: string, text: string][] {
  const folder = new URL(`../../fixtures/plans/v${version}/`, import.meta.url);
  return readdirSync(folder)
    .sort()
    .map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]);
}
