/** Sentences that are put together from parts. */
import { afterEach, describe, expect, it } from 'vitest';
import { words } from '../../src/words/answer.ts';
import { words as full } from '../../src/words/full.ts';
import { speakIn } from '../../src/words/language.ts';

afterEach(() => speakIn('en'));

describe('an act', () => {
  it.each([
    ['move', 'Fuse', 'move Fuse', 'Fuse bewegen'],
    ['accept', 'Fuse', 'accept Fuse', 'Fuse annehmen'],
    ['acceptAll', 'Fuse', 'accept the proposed feed', 'vorgeschlagene Zuleitung annehmen'],
    ['settings', 'Fuse', 'change the settings', 'Einstellungen ändern'],
    ['continue', 'Fuse', 'continue Fuse on another sheet', 'Fuse auf anderem Blatt fortsetzen'],
    ['continue', null, 'continue on another sheet', 'auf anderem Blatt fortsetzen'],
    ['addBend', null, 'add a bend', 'Knick einfügen'],
    ['addBend', 'Fuse', 'add a bend to Fuse', 'Knick einfügen in Fuse'],
    ['unheard', 'Fuse', 'unheard Fuse', 'unheard: Fuse'],
  ])('%s of %s names what it is done to where its words do not say that', async (id, what, english, german) => {
    expect(words.act(id, what)).toBe(english);
    await speakIn('de');
    expect(words.act(id, what)).toBe(german);
  });
});

describe('a refused file', () => {
  it('is no plan as a whole: no place in it is named', async () => {
    const reason = { code: 'notAPlan', where: 'format' };
    expect(full.refused(reason)).toBe('Not opened: it is not a plan of this page. Choose a plan saved from this page.');
    await speakIn('de');
    expect(full.refused(reason)).not.toContain('format');
  });

  it('is told by its place where the fault has one', () => {
    expect(full.refused({ code: 'missingKey', key: 'kind', where: 'fittings[3]', name: 'Rear' })).toBe(
      "Not opened: 'kind' is missing, at fittings[3] (Rear). Open an earlier copy of the file.",
    );
  });
});
