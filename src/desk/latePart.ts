/** The file that an import on demand asks for, as the build has written it; undefined where nothing was built. */
const fileOf = (load: () => Promise<unknown>): string | undefined =>
  /import\(\s*["'`]([^"'`]+)/.exec(String(load))?.[1];

/**
 * Loads a part of the page that comes late, and can be asked again where that failed. A browser never asks twice for a
 * module that has once failed to come, until the page is loaded anew; so its file is fetched by itself first, and the
 * module asked for only when that has come.
 */
export async function loadPart<Part>(load: () => Promise<Part>): Promise<Part> {
  const file = fileOf(load);
  if (file !== undefined) {
    const answer = await fetch(new URL(file, import.meta.url));
    if (!answer.ok) throw new Error(`${file}: ${answer.status}`);
    await answer.arrayBuffer();
  }
  return load();
}
